#pragma once

#include <compare>
#include <cstddef>
#include <ostream>
#include <string>
#include <vector>

namespace coldiron
{
/** One place that solder can hold: a terminal of a part ("neck.north.start"), or a point of no part: "strings", the
    bridge's ground wire, and "ground", the jack's sleeve whatever the jack is called.

    Any text makes one; whether it exists is asked of a Harness. A text is taken apart here and nowhere else: files, the
    command line and what is typed go through parse() where they come in. Ordered and printed as the text. */
class SolderPoint
{
public:
    SolderPoint() = default; ///< none: empty()
    SolderPoint (const std::string& part, const std::string& terminal);

    /** A name that stands in the code. */
    template <size_t size>
    SolderPoint (const char (&literal)[size]) : SolderPoint (parse (literal))
    {
    }

    /** Conversions for the layers that still speak in text. */
    SolderPoint (const std::string& text) : SolderPoint (parse (text)) {}
    operator const std::string&() const { return whole; }

    static SolderPoint parse (std::string text);
    static SolderPoint ground() { return { "ground" }; }
    static SolderPoint strings() { return { "strings" }; }

    const std::string& text() const { return whole; }
    std::string part() const { return whole.substr (0, partSize); } ///< empty for `strings` and `ground`
    std::string terminal() const;                                   ///< "2", "north.start"; empty where there is none
    bool isOf (const std::string& partName) const { return whole.compare (0, partSize, partName) == 0 && partSize > 0; }
    bool empty() const { return whole.empty(); }

    bool operator== (const SolderPoint& other) const { return whole == other.whole; }
    std::strong_ordering operator<=> (const SolderPoint& other) const { return whole.compare (other.whole) <=> 0; }
    friend std::ostream& operator<< (std::ostream& stream, const SolderPoint& point) { return stream << point.whole; }

private:
    std::string whole;
    size_t partSize = 0;
};

/** Points or names of points as text, for files and people. */
template <typename Points>
std::vector<std::string> textsOf (const Points& points)
{
    std::vector<std::string> texts;
    for (const auto& point : points)
        texts.push_back (point.text());
    return texts;
}
}
