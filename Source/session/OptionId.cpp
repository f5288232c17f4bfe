#include "session/OptionId.h"

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
}
