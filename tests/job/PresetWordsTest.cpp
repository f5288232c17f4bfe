// The words of presets are the trade's: common practice of the trade, no source.
#include "support/JobFixture.h"

#include <algorithm>
#include <cctype>

namespace presetWordsTest
{
using namespace coldiron;

namespace
{
/** Every text a person reads: all but the names that are searched for and the steps. */
void collect (const Json& json, std::vector<std::string>& texts)
{
    static const std::vector<std::string> forPeople {
        "name", "about", "gives", "costs", "says", "needs", "else", "title", "wish"
    };
    for (const auto& [key, value] : json.members)
    {
        const bool read = std::find (forPeople.begin(), forPeople.end(), key) != forPeople.end();
        if (read && value.kind == Json::Kind::text)
            texts.push_back (value.text);
        if (read)
            for (const auto& item : value.items)
                if (item.kind == Json::Kind::text)
                    texts.push_back (item.text);
        if (key != "also_called" && key != "steps")
            collect (value, texts);
    }
    for (const auto& item : json.items)
        collect (item, texts);
}
}

TEST_CASE ("Presets speak as a shop does", "[words]")
{
    static const std::vector<std::string> ours { "for good",     "side by side",           "stand on",
                                                 "stands on",    "stands in line",         "one after the other",
                                                 "softer",       "give or take",           "without muting",
                                                 "cancel",       "reach along the string", "aslant",
                                                 "turns the hum" };
    int read = 0, screws = 0;
    for (const auto& entry : std::filesystem::recursive_directory_iterator (std::filesystem::path (COLDIRON_SOURCE) / "presets"))
    {
        if (entry.path().extension() != ".json")
            continue;
        std::ifstream stream (entry.path());
        const std::string text ((std::istreambuf_iterator<char> (stream)), {});
        Json json;
        Diagnostics diagnostics;
        REQUIRE (parseJson (text, entry.path().string(), json, diagnostics));
        std::vector<std::string> texts;
        collect (json, texts);
        for (auto words : texts)
        {
            std::transform (words.begin(), words.end(), words.begin(),
                            [] (unsigned char c) { return static_cast<char> (std::tolower (c)); });
            ++read;
            screws += words.find ("(screw)") != std::string::npos || words.find ("(slug)") != std::string::npos;
            for (const auto& own : ours)
            {
                INFO (entry.path().filename() << ": " << words);
                CHECK (words.find (own) == std::string::npos);
            }
        }
    }
    CHECK (read > 300);
    CHECK (screws > 10);
}
}
