#include "files/Printable.h"

#include <cstdint>
#include <cstdio>

namespace coldiron
{
namespace
{
/** One character of UTF-8 (RFC 3629). @returns its length in bytes; 0: no character begins here */
size_t decode (const std::string& text, size_t at, std::uint32_t& character)
{
    const auto byte = [&] (size_t i) { return i < text.size() ? static_cast<unsigned char> (text[i]) : 0u; };
    const auto first = byte (at);
    const size_t length = first < 0x80                    ? 1
                          : first >= 0xc2 && first < 0xe0 ? 2
                          : first >= 0xe0 && first < 0xf0 ? 3
                          : first >= 0xf0 && first < 0xf5 ? 4
                                                          : 0;
    if (length == 0 || at + length > text.size())
        return 0;
    character = length == 1 ? first : first & (0xffu >> (length + 1));
    for (size_t i = 1; i < length; ++i)
    {
        if ((byte (at + i) & 0xc0) != 0x80)
            return 0;
        character = character << 6 | (byte (at + i) & 0x3f);
    }
    const bool tooShort = (length == 3 && character < 0x800) || (length == 4 && character < 0x10000);
    return tooShort || character > 0x10ffff || (character >= 0xd800 && character < 0xe000) ? 0 : length;
}

bool steers (std::uint32_t c)
{
    return c < 0x20 || (c >= 0x7f && c < 0xa0) // C0, DEL, C1
           || (c >= 0x2028 && c <= 0x202e)     // line and paragraph separators, embeddings, overrides
           || (c >= 0x2066 && c <= 0x2069);    // isolates
}

std::string escaped (std::uint32_t value)
{
    char text[16];
    std::snprintf (text, sizeof text, "\\u%04x", static_cast<unsigned> (value));
    return text;
}

std::string madeSafe (const std::string& text, bool keepLines)
{
    std::string result;
    for (size_t at = 0; at < text.size();)
    {
        std::uint32_t character = 0;
        const auto length = decode (text, at, character);
        if (length == 0)
            result += escaped (static_cast<unsigned char> (text[at]));
        else if (steers (character) && ! (keepLines && (character == '\n' || character == '\t')))
            result += escaped (character);
        else
            result.append (text, at, length);
        at += length == 0 ? 1 : length;
    }
    return result;
}
}

std::string printable (const std::string& text) { return madeSafe (text, false); }
std::string printableLines (const std::string& text) { return madeSafe (text, true); }

std::string shortened (const std::string& text, size_t bytes)
{
    if (text.size() <= bytes)
        return text;
    while (bytes > 0 && (text[bytes] & 0xc0) == 0x80)
        --bytes;
    return text.substr (0, bytes);
}
}
