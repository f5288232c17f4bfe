// The take card: which takes a guitar needs, and a page that needs nothing from outside.
#include "paper/TakeCard.h"
#include "response/PickupsHeard.h"

#include <catch2/catch.hpp>

#include <iostream>
#include <set>

namespace takeCardTest
{
using namespace coldiron;

namespace
{
PresetFolders shippedHere() { return PresetFolders { { std::filesystem::path (COLDIRON_SOURCE) / "presets" } }; }

Guitar guitarNamed (const std::string& name)
{
    Diagnostics diagnostics;
    auto guitar = readGuitar (name, shippedHere(), diagnostics);
    REQUIRE (guitar.has_value());
    return *guitar;
}
}

TEST_CASE ("A take is planned for each pickup of every guitar that can be heard alone, and it is so")
{
    int guitars = 0, alone = 0, pickups = 0;
    for (const auto& name : shippedHere().list ("guitars"))
    {
        INFO (name);
        const auto guitar = guitarNamed (name);
        const auto plans = takePlans (guitar);
        REQUIRE_FALSE (plans.empty());
        std::set<std::set<std::string>> seen;
        StringSet strings;
        strings.strings = guitar.strings;
        strings.played.assign (guitar.strings.size(), true);
        for (const auto& plan : plans)
        {
            INFO (plan.words);
            CHECK (seen.insert (plan.pickups).second);
            CHECK (pickupsHeard ({ guitar.harness, plan.setting, {}, strings }) == plan.pickups);
            alone += plan.pickups.size() == 1 ? 1 : 0;
        }
        pickups += static_cast<int> (candidates ("pickup", guitar.harness).size());
        ++guitars;
    }
    std::cout << "take cards: " << guitars << " guitars, " << alone << " of " << pickups << " pickups heard alone\n";
    CHECK (alone >= pickups - 3); // those that no switch and no volume parts
}

TEST_CASE ("A guitar with a switch says its positions, one with two volumes turns one down")
{
    const auto toggle = takePlans (guitarNamed ("two-humbuckers-four-knobs"));
    REQUIRE (toggle.size() == 3);
    CHECK (toggle[0].words == "selector to neck");
    CHECK (toggle[1].words == "selector to bridge");
    CHECK (toggle[2].words == "selector to both");
    const auto bass = takePlans (guitarNamed ("bass-two-single-coils"));
    REQUIRE (bass.size() == 3);
    CHECK (bass[0].words.find ("volume to 0") != std::string::npos);
    CHECK (takePlans (guitarNamed ("one-humbucker")).front().words == "as it stands");
}

TEST_CASE ("The page has what a player must know, nothing from outside, and no text runs into its tags")
{
    const auto guitar = guitarNamed ("two-humbuckers-four-knobs");
    const auto html = takeCardHtml (guitar, "A <title> & \"quotes\"", "Too dark");
    for (const char* words :
         { "All knobs at 10", "low riff", "let them ring", "high up the neck", "muted", "5 seconds, both hands",
           "5 seconds, hands off", "selector to both", "A &lt;title&gt; &amp; &quot;quotes&quot;", "Too dark", "DI", "E2", "E4",
           "\xe2\x88\x92"
           "12 dBFS" })
    {
        INFO (words);
        CHECK (html.find (words) != std::string::npos);
    }
    for (const char* outside : { "http:", "https:", "<script", "<title> &", "src=", "@import", "url(" })
    {
        INFO (outside);
        CHECK (html.find (outside) == std::string::npos);
    }
    CHECK (html == takeCardHtml (guitar, "A <title> & \"quotes\"", "Too dark"));
}

TEST_CASE ("A bassist is not asked for chords; touch has its three answers")
{
    // Common practice of the trade, no source.
    const auto bass = takeCardHtml (guitarNamed ("bass-two-single-coils"), "", ""),
               guitar = takeCardHtml (guitarNamed ("one-humbucker"), "", "");
    CHECK (bass.find ("chord") == std::string::npos);
    CHECK (guitar.find ("open chords") != std::string::npos);
    for (const char* words :
         { "falls: shielding or a bad cable screen", "rises or crackles: missing string ground", "follows turning: magnetic" })
        CHECK (bass.find (words) != std::string::npos);
}
}
