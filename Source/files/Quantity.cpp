#include "files/Quantity.h"

#include "files/ReadNumber.h"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace coldiron
{
namespace
{
constexpr size_t longestGuessed = 100;

struct Prefix
{
    const char* text;
    int power;
};

constexpr Prefix prefixes[] = { { "", 0 },          { "p", -12 }, { "n", -9 }, { "u", -6 }, { "\xc2\xb5", -6 },
                                { "\xce\xbc", -6 }, { "m", -3 },  { "k", 3 },  { "M", 6 },  { "G", 9 } };

size_t editDistance (const std::string& a, const std::string& b)
{
    std::vector<size_t> row (b.size() + 1);
    for (size_t j = 0; j <= b.size(); ++j)
        row[j] = j;
    for (size_t i = 1; i <= a.size(); ++i)
    {
        size_t diagonal = row[0];
        row[0] = i;
        for (size_t j = 1; j <= b.size(); ++j)
        {
            const size_t above = row[j];
            row[j] = std::min ({ row[j - 1] + 1, above + 1, diagonal + (a[i - 1] == b[j - 1] ? 0 : 1) });
            diagonal = above;
        }
    }
    return row.back();
}
}

std::optional<double> parseQuantity (const std::string& text)
{
    const auto digits =
        std::find_if (text.begin(), text.end(), [] (char c) { return ! std::isspace (static_cast<unsigned char> (c)); });
    const char* first = text.data() + (digits - text.begin());
    const char* last = text.data() + text.size();
    double number = 0.0;
    const NumberEnd end = readNumber (first, last, number);
    if (end == nullptr)
        return std::nullopt;
    std::string rest (end, last);
    rest.erase (std::remove_if (rest.begin(), rest.end(), [] (char c) { return c == ' '; }), rest.end());
    for (const auto& prefix : prefixes)
        if (rest == prefix.text)
        {
            // Read again with the power in the exponent, so that "4.1k" is the double nearest to 4100.
            if (prefix.power == 0)
                return number;
            std::string whole (first, end);
            const auto e = whole.find_first_of ("eE");
            int power = prefix.power;
            if (e != std::string::npos)
                return number * std::pow (10.0, power);
            whole += "e" + std::to_string (power);
            readNumber (whole.data(), whole.data() + whole.size(), number);
            return number;
        }
    return std::nullopt;
}

std::string quantityText (double value)
{
    static constexpr struct
    {
        double size;
        const char* prefix;
    } steps[] = { { 1e9, "G" },  { 1e6, "M" },  { 1e3, "k" },  { 1.0, "" },
                  { 1e-3, "m" }, { 1e-6, "u" }, { 1e-9, "n" }, { 1e-12, "p" } };
    double scaled = value;
    const char* prefix = "";
    for (const auto& step : steps)
        if (std::abs (value) >= (step.size == 1.0 ? 0.01 : step.size * 0.99999999)) // 0.5, not 500m: people write it so
        {
            scaled = value / step.size;
            prefix = step.prefix;
            break;
        }
    char buffer[40];
    const auto end = std::to_chars (buffer, buffer + sizeof buffer, scaled, std::chars_format::general, 9).ptr;
    return std::string (buffer, end) + prefix;
}

std::string nearest (const std::string& name, const std::vector<std::string>& candidates)
{
    if (name.size() > longestGuessed) // the time grows with the length, and nobody mistypes so much
        return {};
    std::string best;
    size_t bestDistance = std::max<size_t> (2, name.size() / 3) + 1;
    for (const auto& candidate : candidates)
    {
        const auto distance = editDistance (name, candidate);
        if (distance < bestDistance)
        {
            bestDistance = distance;
            best = candidate;
        }
    }
    return best;
}

std::string listed (const std::vector<std::string>& names, size_t most)
{
    std::string text;
    for (size_t i = 0; i < std::min (most, names.size()); ++i)
        text += (i == 0 ? "" : ", ") + names[i];
    return names.size() > most ? text + ", and " + std::to_string (names.size() - most) + " more" : text;
}
}
