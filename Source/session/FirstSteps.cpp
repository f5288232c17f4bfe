#include "session/FirstSteps.h"

#include "session/Session.h"

namespace coldiron
{

MainView sightOf (const Session& session, bool drawingOpen, bool guitarPicked)
{
    MainView sight;
    sight.heard = session.monitor.heard();
    sight.options = session.options.ids();
    sight.hums = session.noise.humDb() > -80.0;
    const auto picture = session.takes.picture();
    sight.isPlaying = session.transport.isPlaying();
    sight.drawingOpen = drawingOpen;
    sight.guitarPicked = guitarPicked;
    const auto job = session.jobEditor.job();
    sight.hasTake = picture != nullptr ? picture->fault.empty() : ! job->takes.empty(); // or on its way from disk
    for (const auto& part : job->guitar.harness.parts())
        if (const auto* pickup = part.as<PickupPart>())
            sight.ohmsKnown = sight.ohmsKnown || pickup->pickup.known != Provenance::assumed;
    const auto setting = session.controls.setting (sight.heard);
    for (const auto& control : session.controls.of (sight.heard))
        if (control.isKnob() && control.name.find ("volume") != std::string::npos)
            sight.volumes.push_back (setting.knob (control.name));
    return sight;
}

FirstSteps::FirstSteps (const MainView& sight) : atStep (sight), last (sight)
{
    now = sight.hasTake && sight.options.size() > 1 ? Step::hearFirst : Step::pickGuitar;
}

bool FirstSteps::isDone (const MainView& sight) const
{
    switch (now)
    {
    case Step::hearFirst: return ! sight.options.empty() && sight.heard == sight.options[0];
    case Step::raiseHum: return sight.hums;
    case Step::hearSecond: return sight.options.size() < 2 || sight.heard == sight.options[1];
    case Step::turnVolume: return sight.heard == atStep.heard && sight.volumes != atStep.volumes;
    case Step::openDrawing: return sight.drawingOpen;
    case Step::pickGuitar: return sight.guitarPicked;
    case Step::typeOhms: return sight.ohmsKnown || sight.hasTake;
    case Step::dropTake: return sight.hasTake;
    case Step::starterSet: return sight.options.size() >= 3;
    case Step::done: return false;
    }
    return false;
}

void FirstSteps::enter (Step step)
{
    now = step;
    atStep = last;
}

bool FirstSteps::see (const MainView& sight)
{
    const auto before = now;
    last = sight;
    if (now == Step::turnVolume && sight.heard != atStep.heard)
        atStep = sight; // another option's volumes
    if (now < Step::pickGuitar && sight.guitarPicked)
        enter (Step::typeOhms); // ahead of the line
    while (now != Step::done && isDone (sight))
        enter (static_cast<Step> (static_cast<int> (now) + 1));
    return now != before;
}

void FirstSteps::skip()
{
    if (now != Step::done)
        enter (static_cast<Step> (static_cast<int> (now) + 1));
    see (MainView (last));
}

std::string FirstSteps::words (bool inHost) const
{
    const auto letter = [&] (size_t i) { return i < last.options.size() ? letterOf (last.options[i]) : std::string ("a tag"); };
    switch (now)
    {
    case Step::hearFirst:
        return (inHost           ? std::string ("Click the tag, or press ")
                : last.isPlaying ? std::string ("Press ")
                                 : std::string ("Press Space to play, then "))
               + letter (0) + ": the same take through another wiring.";
    case Step::raiseHum: return "Raise the mains hum (R), then press " + letter (1) + ".";
    case Step::hearSecond: return "Press " + letter (1) + ": does it hum?";
    case Step::turnVolume: return "Turn the volume: drag the number, or K and the arrows.";
    case Step::openDrawing: return "Press W: the wiring, changed wires marked.";
    case Step::pickGuitar: return "Now your guitar: pick its picture.";
    case Step::typeOhms: return "Type up to three ohm readings, one for each pickup. Or go on.";
    case Step::dropTake: return "Drop a dry take of it on this window, or open one.";
    case Step::starterSet: return "Take a starter set: three options that answer a wish.";
    case Step::done: break;
    }
    return {};
}

std::string FirstSteps::actWords() const
{
    switch (now)
    {
    case Step::openDrawing: return "Wiring";
    case Step::pickGuitar: return "Your guitar";
    case Step::typeOhms: return "Take in";
    case Step::dropTake: return "Open a take";
    case Step::starterSet: return "Starter sets";
    default: return {};
    }
}

std::filesystem::path demoJob (const PresetFolders& presets)
{
    std::error_code ignored;
    for (const auto& folder : presets.folders())
        for (const char* place : { "demo", "build/demo" })
        {
            const auto demo = folder.parent_path() / place;
            const auto job = demo / "hum-1-bridge-pickup.json";
            if (std::filesystem::is_regular_file (job, ignored)
                && std::filesystem::is_regular_file (demo / "demo-take.wav", ignored))
                return job;
        }
    return {};
}
}
