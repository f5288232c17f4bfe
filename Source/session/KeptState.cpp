#include "session/KeptState.h"

#include <algorithm>
#include <cmath>

namespace coldiron::kept
{
double numberIn (const JobTree& tree, const char* key, double low, double high, double otherwise)
{
    const auto found = tree.find (key);
    if (found == tree.end() || ! found->is_number())
        return otherwise;
    const double value = found->get<double>();
    return std::isfinite (value) ? std::clamp (value, low, high) : otherwise;
}

std::string textIn (const JobTree& tree, const char* key)
{
    const auto found = tree.find (key);
    return found != tree.end() && found->is_string() ? found->get<std::string>() : std::string();
}

bool flagIn (const JobTree& tree, const char* key)
{
    const auto found = tree.find (key);
    return found != tree.end() && found->is_boolean() && found->get<bool>();
}
}
