#pragma once

#include "job/Job.h"

#include <string>
#include <vector>

namespace coldiron::wording
{
/** What a new job begins with. */
struct NewJob
{
    std::string title, wish;        ///< for people; may be empty
    Guitar guitar;                  ///< of a preset
    Setting setting;                ///< where the controls stood in the takes
    std::vector<std::string> takes; ///< files, relative to the job; none: a take to be filled in is written as a comment
};

/** A job's text with comments that name every control of the guitar, its positions and what they are, and what to do next. It reads
    back as a job without faults. */
std::string newJobText (const NewJob&);

/** A name for people from a take's or a job's file: "Walnut guitar" from "walnut-guitar.json". */
std::string titleFrom (const std::filesystem::path&);
}
