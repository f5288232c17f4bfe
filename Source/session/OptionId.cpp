#include "session/OptionId.h"

#include "job/Job.h"

namespace coldiron
{
std::string letterOf (OptionId id)
{
    return id == asRecorded ? std::string() : std::string (1, static_cast<char> ('A' + numberOf (id) - 1));
}

OptionId optionOf (const std::string& letter)
{
    return letter.size() == 1 && letter[0] >= 'A' && letter[0] <= 'H' ? optionAt (letter[0] - 'A' + 1) : asRecorded;
}

const Harness& harnessOf (const Job& job, OptionId id)
{
    const auto* option = id == asRecorded ? nullptr : job.find (letterOf (id));
    return option != nullptr ? option->harness : job.guitar.harness;
}

const Harness& harnessBefore (const Job& job, OptionId id)
{
    const auto* option = id == asRecorded ? nullptr : job.find (letterOf (id));
    return option != nullptr ? option->guitar.harness : job.guitar.harness;
}
}
