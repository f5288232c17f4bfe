#pragma once

#include <array>
#include <span>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

namespace coldiron::wording
{
/** How many different {names} a sentence has; less than 0 where a brace is left open. */
constexpr int placesIn (std::string_view sentence)
{
    std::array<std::string_view, 16> seen;
    int count = 0;
    for (size_t at = sentence.find ('{'); at != std::string_view::npos; at = sentence.find ('{', at + 1))
    {
        const size_t end = sentence.find ('}', at);
        if (end == std::string_view::npos || count == static_cast<int> (seen.size()))
            return -1;
        const auto name = sentence.substr (at + 1, end - at - 1);
        bool isNew = true;
        for (int i = 0; i < count; ++i)
            isNew = isNew && seen[static_cast<size_t> (i)] != name;
        if (isNew)
            seen[static_cast<size_t> (count++)] = name;
    }
    return count;
}

/** A sentence for people with a {name} wherever a value goes. The values are given in the order in which the names come
    up first, and each name may come up again; that their number is right is checked while compiling. */
template <typename... Values>
class Sentence
{
public:
    consteval Sentence (const char* sentence) : text (sentence)
    {
        if (placesIn (sentence) != static_cast<int> (sizeof...(Values)))
            throw "a sentence needs one value for each of its {names}";
    }

    const std::string_view text;
};

/** Puts the values where their names stand. What a value says is taken as it is, braces and all. */
std::string filled (std::string_view sentence, std::span<const std::string> values);

inline std::string shown (std::string value) { return value; }
std::string shown (int value);

/** A sentence for a person. Every word that this room has to say passes through here, whole sentences with their names
    in them, so that this is the one place where another language would be looked up. */
template <typename... Values>
std::string say (Sentence<std::type_identity_t<Values>...> sentence, const Values&... values)
{
    const std::array<std::string, sizeof...(Values)> texts { shown (values)... };
    return filled (sentence.text, texts);
}

/** "a", "a and b", "a, b and c"; beyond `most`: "a, b, c and 2 more". */
std::string listOf (const std::vector<std::string>& names, size_t most = ~size_t (0));

/** The first letter large, where it is one of a to z. */
std::string capitalised (std::string text);

/** "neck-volume" as a person reads it: "neck volume". */
std::string plainName (std::string partName);

/** A number with so many decimals and a hyphen for minus: "-1.5". */
std::string decimals (double value, int digits);

/** A number with so many significant digits at most: 4 of 4712.3 is "4712". */
std::string significant (double value, int digits);

/** To the nearest whole number. */
int rounded (double value);
}
