#include "wording/Say.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace coldiron::wording
{
std::string filled (std::string_view sentence, std::span<const std::string> values)
{
    std::vector<std::string_view> names;
    std::string text;
    size_t from = 0;
    for (size_t at = sentence.find ('{'); at != std::string_view::npos; at = sentence.find ('{', from))
    {
        const size_t end = sentence.find ('}', at);
        if (end == std::string_view::npos)
            break;
        const auto name = sentence.substr (at + 1, end - at - 1);
        auto known = std::find (names.begin(), names.end(), name);
        if (known == names.end())
            known = names.insert (names.end(), name);
        text += sentence.substr (from, at - from);
        if (const auto place = static_cast<size_t> (known - names.begin()); place < values.size())
            text += values[place];
        from = end + 1;
    }
    return text.append (sentence.substr (from));
}

std::string shown (int value) { return std::to_string (value); }

std::string listOf (const std::vector<std::string>& names, size_t most)
{
    if (names.empty())
        return {};
    const bool tooMany = names.size() > most;
    std::string text = names.front();
    for (size_t i = 1; i < (tooMany ? most : names.size() - 1); ++i)
        text = say ("{names}, {next}", text, names[i]);
    if (tooMany)
        return say ("{names} and {count} more", text, static_cast<int> (names.size() - most));
    return names.size() == 1 ? text : say ("{names} and {last}", text, names.back());
}

std::string capitalised (std::string text)
{
    if (! text.empty() && text[0] >= 'a' && text[0] <= 'z')
        text[0] = static_cast<char> (text[0] - 'a' + 'A');
    return text;
}

std::string plainName (std::string partName)
{
    std::replace (partName.begin(), partName.end(), '-', ' ');
    return partName;
}

std::string decimals (double value, int digits)
{
    char text[64];
    std::snprintf (text, sizeof text, "%.*f", digits, value);
    return text;
}

std::string significant (double value, int digits)
{
    char text[64];
    std::snprintf (text, sizeof text, "%.*g", digits, value);
    return text;
}

int rounded (double value) { return static_cast<int> (std::lround (value)); }
}
