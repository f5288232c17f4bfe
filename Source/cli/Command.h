#pragma once

#include "job/Job.h"
#include "takes/TakeFile.h"

#include <functional>
#include <stdexcept>
#include <string>
#include <vector>

namespace CLI
{
class App; // only the commands themselves include all of it
}

namespace coldiron::cli
{
inline constexpr int exitOk = 0, exitBadJob = 1, exitUsage = 2; ///< exit codes, fixed: scripts rely on them

/** The job, a take or a file is wrong: the message has been made for people, one line. Ends the command with 1. */
struct JobDiagnostic : std::runtime_error
{
    using std::runtime_error::runtime_error;
};

/** The command was asked for something that does not exist. Ends the command with 2. */
struct UsageError : std::runtime_error
{
    using std::runtime_error::runtime_error;
};

/** What every command understands. */
struct Common
{
    std::vector<std::string> presetFolders; ///< --presets DIR, first wins
    PresetFolders presets() const;
};

/** What a command leaves for main() to run after parsing; returns the exit code. */
using Action = std::function<int()>;

void addCheck (CLI::App&, Common&, Action&);
void addResponse (CLI::App&, Common&, Action&);
void addRender (CLI::App&, Common&, Action&);
void addCompare (CLI::App&, Common&, Action&);
void addOhms (CLI::App&, Common&, Action&);
void addSpice (CLI::App&, Common&, Action&);
void addPresets (CLI::App&, Common&, Action&);
void addFit (CLI::App&, Common&, Action&);
void addCard (CLI::App&, Common&, Action&);
void addNew (CLI::App&, Common&, Action&);
void addOffer (CLI::App&, Common&, Action&);
void addWorkOrder (CLI::App&, Common&, Action&);

/** Adds --presets to a command. */
void addPresetFolders (CLI::App&, Common&);

/** Reads a job; warnings go to stderr. All faults go to stderr, one a line, and throw JobDiagnostic with an empty message. */
Job openJob (const std::string& path, const Common&);

/** The option of that letter. @throws UsageError listing those there are */
const Option& optionOf (const Job&, const std::string& letter);

/** Asks a job for one string alone; an empty name changes nothing. @throws UsageError listing the strings there are */
void askOnly (Job&, const std::string& stringName);

/** Whether the letter asks for the take's own harness and setting. */
bool isRecorded (const std::string& letter);

/** What the option is compared with: its take, or the guitar as it is where the job has none. */
CircuitConfig recordedFor (const Job&, const Option*);

/** Writes a file whole or not at all; "-" is standard output. @throws JobDiagnostic, WriteError */
void writeWhole (const std::string& path, const std::string& text);

/** printf into a string. */
[[gnu::format (printf, 1, 2)]] std::string format (const char* form, ...);
}
