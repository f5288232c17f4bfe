#pragma once

#include "job/Job.h"

#include <string>
#include <vector>

namespace coldiron
{
/** A file that is read and must never be written over. */
struct KeptFile
{
    std::filesystem::path file;
    std::string what; ///< to people: "the job itself"
};

/** The job's file, all its takes, the impulse response it names, and another one. */
std::vector<KeptFile> keptFiles (const Job&, const std::filesystem::path& impulse = {});

/** Asked before anything is written. The same file is the same by whatever name: through links of both kinds (device and
    inode), and by its path where it is not there yet.
    @returns why not, one line without the target's name in front; empty: it is none of them */
std::string whyKept (const std::filesystem::path& target, const std::vector<KeptFile>&);
}
