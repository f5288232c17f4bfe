#include "support/JobFixture.h"

#include "files/Quantity.h"
#include "job/Fields.h"

#include <cmath>
#include <fstream>
#include <regex>
#include <sstream>

namespace fieldsTest
{
using namespace coldiron;

/** The lines of presets/README.md from a heading to the next section. */
std::vector<std::string> section (const std::string& heading)
{
    std::ifstream stream (std::filesystem::path (COLDIRON_SOURCE) / "presets" / "README.md");
    std::vector<std::string> lines;
    bool isInside = false;
    for (std::string line; std::getline (stream, line);)
    {
        if (isInside && line.starts_with ("## "))
            break;
        isInside = isInside || line.starts_with (heading);
        if (isInside)
            lines.push_back (line);
    }
    return lines;
}

/** As the file writes them; T is a prefix there too. */
double number (std::string text)
{
    const bool isTera = text.back() == 'T';
    if (isTera)
        text.pop_back();
    return parseQuantity (text).value_or (-1e99) * (isTera ? 1e12 : 1.0);
}

bool isSame (double a, double b) { return std::abs (a - b) <= 1e-9 * std::abs (b); }

const std::regex& range()
{
    static const std::regex is (R"((-?[0-9.]*[0-9][pnumkMGT]?)\.\.(-?[0-9.]*[0-9][pnumkMGT]?))");
    return is;
}

bool saysRange (const std::string& line, const Field& field)
{
    for (std::sregex_iterator at (line.begin(), line.end(), range()), end; at != end; ++at)
        if (isSame (number ((*at)[1]), field.least) && isSame (number ((*at)[2]), field.most))
            return true;
    return false;
}

bool saysUnit (const std::string& line, const std::string& unit)
{
    return unit.empty() || std::regex_search (line, std::regex ("(^|[ (|])" + unit + "($|[ ,;)|.])"));
}

bool saysStandard (const std::string& line, const Field& field)
{
    if (field.isNeeded || std::isnan (field.standard))
        return true;
    static const std::regex digits ("-?[0-9.]*[0-9][pnumkMGT]?");
    const auto rest = std::regex_replace (line, range(), "");
    for (std::sregex_iterator at (rest.begin(), rest.end(), digits), end; at != end; ++at)
        if (isSame (number (at->str()), field.standard))
            return true;
    return false;
}

TEST_CASE ("presets/README.md says every number's key, unit, range and standard as the readers hold them")
{
    size_t count = 0;
    for (const auto& table : fieldTables())
    {
        const auto lines = section (table.heading);
        INFO (table.heading);
        REQUIRE (! lines.empty());
        for (const auto& field : table.fields)
        {
            INFO (table.shape << ": " << field.key << " [" << field.unit << "] " << field.least << ".." << field.most);
            ++count;
            const bool isSaid = std::any_of (lines.begin(), lines.end(),
                                             [&] (const std::string& line)
                                             {
                                                 const std::string key = field.key;
                                                 return (line.find ("`" + key + "`") != std::string::npos
                                                         || line.find ("\"" + key + "\"") != std::string::npos)
                                                        && saysRange (line, field) && saysUnit (line, field.unit)
                                                        && saysStandard (line, field);
                                             });
            CHECK (isSaid);
        }
    }
    CHECK (count > 25);
}

TEST_CASE ("A field holds its ends and no more, and no field's standard is outside it")
{
    for (const auto& table : fieldTables())
        for (const auto& field : table.fields)
        {
            INFO (table.shape << ": " << field.key);
            CHECK (field.least < field.most);
            CHECK (field.holds (field.least));
            CHECK (field.holds (field.most));
            CHECK_FALSE (field.holds (std::nextafter (field.least, -1e300)));
            CHECK_FALSE (field.holds (std::nextafter (field.most, 1e300)));
            CHECK_FALSE (field.holds (std::nan ("")));
            CHECK ((std::isnan (field.standard) || field.holds (field.standard)));
        }
}
}
