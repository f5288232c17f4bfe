#pragma once

#include "job/Job.h"
#include "session/OptionId.h"

#include <filesystem>
#include <string>

namespace coldiron
{
class Session;

/** What the line of the first minutes goes by: what the person has done, read from the session. */
struct MainView
{
    OptionId heard = asRecorded;
    std::vector<OptionId> options;
    bool hums = false, hasTake = false, isPlaying = false;
    bool drawingOpen = false;    ///< said by the window
    bool guitarPicked = false;   ///< said by the window: a job was begun on a guitar of the person's choice
    bool ohmsKnown = false;      ///< a pickup is more than assumed
    std::vector<double> volumes; ///< where the volumes of the option heard stand
};

MainView sightOf (const Session&, bool drawingOpen, bool guitarPicked);

/** One line that says what to do next, and goes on by what the person does. With a take it begins at listening, without
    one at the person's own guitar: there is nothing to hear yet. */
class FirstSteps
{
public:
    enum class Step {
        hearFirst,
        raiseHum,
        hearSecond,
        turnVolume,
        openDrawing,
        pickGuitar,
        typeOhms,
        dropTake,
        starterSet,
        done
    };

    explicit FirstSteps (const MainView&);

    /** @returns whether the line has changed */
    bool see (const MainView&);
    Step step() const { return now; }
    std::string words (bool inHost) const;
    std::string actWords() const; ///< for a button that does it; empty: the keys do
    void skip();                  ///< this one is not wanted

private:
    Step now = Step::hearFirst;
    MainView atStep, last;

    bool isDone (const MainView&) const;
    void enter (Step);
};

/** A demo job whose take is on disk, as scripts/demo leaves it, beside the presets or in the build; empty: there is none. */
std::filesystem::path demoJob (const PresetFolders&);
}
