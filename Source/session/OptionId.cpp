#include "session/Bench.h"

namespace coldiron
{
std::string letterOf (Tag tag)
{
    return tag >= 1 && tag <= maxTag ? std::string (1, static_cast<char> ('A' + tag - 1)) : std::string();
}

Tag tagOf (const std::string& letter)
{
    return letter.size() == 1 && letter[0] >= 'A' && letter[0] <= 'H' ? letter[0] - 'A' + 1 : asRecorded;
}
}
