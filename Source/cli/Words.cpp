#include "cli/Words.h"

#include <algorithm>
#include <cctype>

namespace coldiron::cli
{
std::string shellWord (const std::string& text)
{
    const bool plain = ! text.empty() && text.front() != '-'
                       && std::all_of (text.begin(), text.end(),
                                       [] (unsigned char c) {
                                           return std::isalnum (c) != 0 || c >= 0x80
                                                  || std::string ("_-./+:,%@=").find (static_cast<char> (c)) != std::string::npos;
                                       });
    if (plain)
        return text;
    std::string quoted = text.starts_with ("-") ? "./'" : "'"; // else it would be read as an option
    for (const char c : text)
        quoted += c == '\'' ? std::string ("'\\''") : std::string (1, c);
    return quoted + "'";
}
}
