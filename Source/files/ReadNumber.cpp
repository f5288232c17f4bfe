#include "files/ReadNumber.h"

#include <charconv>
#include <locale>
#include <sstream>
#include <string>

namespace coldiron
{
namespace
{
bool isDigit (char c) { return c >= '0' && c <= '9'; }

const char* pastDigits (const char* at, const char* last)
{
    while (at != last && isDigit (*at))
        ++at;
    return at;
}

/** The end of what looks like a number; first where nothing does. */
const char* pastNumber (const char* first, const char* last)
{
    const char* at = first != last && *first == '-' ? first + 1 : first;
    const char* whole = at;
    at = pastDigits (at, last);
    auto digits = at - whole;
    if (at != last && *at == '.')
    {
        const char* behindPoint = pastDigits (at + 1, last);
        digits += behindPoint - (at + 1);
        at = behindPoint;
    }
    if (digits == 0)
        return first;
    if (at != last && (*at == 'e' || *at == 'E'))
    {
        const char* exponent = at + 1;
        if (exponent != last && (*exponent == '+' || *exponent == '-'))
            ++exponent;
        if (const char* end = pastDigits (exponent, last); end != exponent)
            at = end;
    }
    return at;
}
}

NumberEnd readNumberByStream (const char* first, const char* last, double& number)
{
    const char* end = pastNumber (first, last);
    if (end == first)
        return nullptr;
    std::istringstream stream (std::string (first, end));
    stream.imbue (std::locale::classic());
    double value = 0.0;
    if (! (stream >> value))
        return nullptr;
    number = value;
    return end;
}

NumberEnd readNumber (const char* first, const char* last, double& number)
{
#if defined(__cpp_lib_to_chars)
    if (pastNumber (first, last) == first) // it reads "inf" and "nan"
        return nullptr;
    const auto [end, error] = std::from_chars (first, last, number);
    return error == std::errc() ? end : nullptr;
#else
    return readNumberByStream (first, last, number);
#endif
}
}
