#pragma once

#include <map>
#include <string>

namespace coldiron
{
/** A rewire and what fills its asks, as written in a job. */
struct RewireChoice
{
    std::string preset;
    std::map<std::string, std::string> arguments;
};
}
