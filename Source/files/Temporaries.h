#pragma once

#include <filesystem>
#include <string>

#include <sys/types.h>

// The files that are written beside their targets and then take their names. All are called alike, `.coldiron-` and
// sixteen random hex digits and `.part`, and each is held by a lock (flock) as long as its writer lives: the system lets
// go of a dead writer's lock, so whoever writes in that folder next knows what is litter and what is not, also after a
// restart of the machine and for writers on other machines.

namespace coldiron
{
struct Temporary
{
    std::filesystem::path path;
    int descriptor = -1; ///< open for writing, locked
};

/** Makes a new file that nobody can have put there before, follows no link, and removes the litter of dead writers from
    the folder (once a folder and process). @throws std::system_error */
Temporary makeTemporary (const std::filesystem::path& folder, mode_t mode);

/** Removes one that will not be used. The descriptor stays the caller's. */
void removeTemporary (const std::filesystem::path&);

/** It has taken its target's name: a signal need not remove it any more. */
void releaseTemporary (const std::filesystem::path&);

bool isTemporaryName (const std::string& fileName);

/** Removes the temporaries in a folder whose writers are dead. What cannot be opened or locked is left alone. */
void sweepTemporaries (const std::filesystem::path& folder);

/** Removes every temporary this process is writing. Async-signal-safe, for the handler of a signal that ends it. */
void removeAllTemporaries() noexcept;
}
