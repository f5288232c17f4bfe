#pragma once

#include "Run.h"

#include <map>

#include <sys/types.h>

namespace coldiron::support
{
/** What a command is run under. */
struct Circumstances
{
    std::string standardOutput {};                     ///< a file to open for it; empty: it is caught
    int descriptor = -1;                               ///< an open one for it instead; stays the caller's
    std::map<std::string, std::string> environment {}; ///< added to ours
    bool asNobody = false;                             ///< without the rights of root, where we have them
    long mostFileBytes = -1;                           ///< a disk that is full from there on [bytes]
};

/** What a command did, and what it took. */
struct Attempt : Ran
{
    int signal = 0;          ///< that ended it; 0: none did
    double cpuSeconds = 0.0; ///< of its own, so that a busy machine does not count
    double megabytes = 0.0;  ///< most memory at one time

    bool hung() const;                            ///< a guard had to end it
    std::vector<std::string> diagnostics() const; ///< lines on standard error that are not notes
};

/** Begins a command. To be ended by finish(), once. */
class Running
{
public:
    Running (const std::vector<std::string>& arguments, const Circumstances& = {});
    pid_t id() const { return child; }
    Attempt finish();

private:
    std::filesystem::path folder; ///< of what it says
    pid_t child = -1;
};

Attempt attempt (const std::vector<std::string>& arguments, const Circumstances& = {});

/** Names, kinds, sizes and times of all that is in a folder: equal when nothing was written or left behind. */
std::vector<std::string> snapshot (const std::filesystem::path& folder);

/** Whether a text shows on a terminal as what it is: valid UTF-8, no control characters but ends of lines. */
bool isPlain (const std::string& text);

/** Whether the files of this test can be reached without the rights of root; a reason to skip what asks for it. */
std::string whyNobodyCannotRun();
}
