#pragma once

#include "session/OptionId.h"

#include <filesystem>
#include <functional>
#include <memory>
#include <string>

namespace coldiron
{
class JobEditor;
class TakeExport;
class Takes;
struct Job;
struct RenderPlan;
struct SharedState;

/** A text that can be saved, made when it is. */
struct TextExport
{
    std::string fileName; ///< proposed
    std::function<std::string()> make;
};

/** What is written of the job for others: drawings, tables, sounds. */
class Exports
{
public:
    Exports (SharedState&, const JobEditor&, const Takes&);
    ~Exports(); ///< stops a rendering within a block

    TextExport drawing (OptionId) const;  ///< SVG
    TextExport ohmTable (OptionId) const; ///< CSV, with the controls as they stand
    TextExport netlist (OptionId) const;  ///< for a circuit simulator, likewise
    TextExport takeCard() const;          ///< HTML

    /** Whole or not at all. @throws std::exception with why in words, also where the target is a file of the job's own */
    void write (const std::filesystem::path& target, const TextExport&) const;

    /** What is written where all versions are exported as sound: as they stand now. Empty: the job has no take. */
    RenderPlan renderPlan (bool levelsMatched) const;

    /** Renders that plan into a folder, on a thread of its own; one at a time. */
    void startRendering (bool levelsMatched, const std::filesystem::path& folder);
    const TakeExport* rendering() const { return running.get(); } ///< nullptr: none
    void endRendering();

private:
    SharedState& shared;
    const JobEditor& editor;
    const Takes& takes;
    std::unique_ptr<TakeExport> running;

    std::string fileName (const std::string& what, const std::string& ending) const;
    std::shared_ptr<const Job> jobNow() const;
};
}
