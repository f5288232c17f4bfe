// Starter sets: each wish on every shipped guitar gives options that a job can hold, or says why not.
#include "support/Catalogue.h"

#include "offer/Starter.h"
#include "response/Figures.h"
#include "wording/OfferWords.h"

#include <algorithm>
#include <iostream>

namespace starterTest
{
using namespace coldiron;

namespace
{
std::vector<Starter> allStarters()
{
    std::vector<Starter> starters;
    for (const auto& name : support::shipped().list ("starters"))
    {
        Diagnostics diagnostics;
        auto starter = readStarter (name, support::shipped(), diagnostics);
        for (const auto& fault : diagnostics)
            UNSCOPED_INFO (fault.text());
        REQUIRE (starter.has_value());
        starters.push_back (std::move (*starter));
    }
    return starters;
}

Guitar guitarOf (const std::string& name) { return support::allGuitars ({ name }).front(); }

StarterOffer offerOn (const std::string& starter, const std::string& guitar, const Setting& from = {}, size_t most = 3)
{
    Diagnostics diagnostics;
    const auto read = readStarter (starter, support::shipped(), diagnostics);
    REQUIRE (read.has_value());
    return offerStarter (*read, guitarOf (guitar), from, {}, support::shipped(), most);
}

std::string optionJson (const StarterOption& option)
{
    std::string text = "{ \"name\": \"" + option.name + "\", \"rewires\": [";
    for (size_t i = 0; i < option.rewires.size(); ++i)
    {
        text += std::string (i == 0 ? "" : ",") + " { \"use\": \"" + option.rewires[i].first + "\"";
        for (const auto& [ask, value] : option.rewires[i].second)
            text += ", \"" + ask + "\": \"" + value + "\"";
        text += " }";
    }
    text += "], \"setting\": {";
    std::string comma;
    for (const auto& [name, value] : option.setting.knobs)
        text += std::exchange (comma, ",") + " \"" + name + "\": " + std::to_string (value);
    for (const auto& [name, value] : option.setting.levers)
        text += std::exchange (comma, ",") + " \"" + name + "\": \"" + value + "\"";
    return text + " } }";
}

std::optional<Job> jobOf (const std::string& guitar, const StarterOffer& offer)
{
    std::string text = "{ \"coldiron\": \"job 1\", \"guitar\": \"" + guitar + "\", \"options\": {";
    for (size_t i = 0; i < offer.options.size(); ++i)
        text += std::string (i == 0 ? "" : ",") + " \"" + std::string (1, static_cast<char> ('A' + i))
                + "\": " + optionJson (offer.options[i]);
    Diagnostics diagnostics;
    auto job = readJobText (text + " } }", "/", support::shipped(), diagnostics);
    for (const auto& fault : diagnostics)
        UNSCOPED_INFO (fault.text());
    return job;
}

/** The promise, by the figures that the table and the tags show. */
void checkPromise (const Starter& starter, const Job& job, const Option& option)
{
    const auto now = job.recordedConfig (-1);
    const auto figures = computeFigures (now, job.optionConfig (option));
    CHECK_FALSE (figures.silent);
    const auto asItIs = computeFigures (now, now);
    if (starter.proof == StarterProof::quieter)
        CHECK ((figures.hum.playingDb < -19.9 || figures.hum.playingDb < asItIs.hum.playingDb - 0.9));
    if (starter.proof == StarterProof::brighter)
        CHECK ((figures.clarityDb.value_or (-999.0) > 0.99
                || (figures.clarityDb.value_or (-999.0) > -1.01
                    && figures.resonance.cornerHz.value_or (40000.0) > 1.25 * asItIs.resonance.cornerHz.value_or (40000.0))));
    if (starter.proof == StarterProof::independent)
        for (const auto& volume : figures.volumes)
            CHECK_FALSE (volume.mutesOthers.value_or (false));
    CHECK (option.rewires.size() + option.setting.levers.size() + option.setting.knobs.size() > 0);
}
}

TEST_CASE ("Each wish on every guitar gives options or says why not")
{
    const auto starters = allStarters();
    std::vector<std::string> wishes;
    std::map<std::string, std::set<std::string>> used;
    for (const auto& starter : starters)
    {
        wishes.push_back (starter.wish);
        int filled = 0, some = 0, none = 0, refused = 0;
        for (const auto& guitar : support::shipped().list ("guitars"))
        {
            INFO (starter.preset << " on " << guitar);
            const auto offer = offerStarter (starter, guitarOf (guitar), {}, {}, support::shipped());
            const auto whole = offerStarter (starter, guitarOf (guitar), {}, {}, support::shipped(), 100);
            CHECK (whole.options.size() + whole.refused.size() == starter.candidates.size()); // nothing is passed over in silence
            REQUIRE (offer.options.size() <= 3);
            for (const auto& [candidate, refusal] : whole.refused)
            {
                const auto name = wording::candidateName (candidate), why = wording::offerRefusal (refusal);
                INFO (name << ": " << why);
                CHECK (why.size() > 12);
                CHECK (why.find (".json") == std::string::npos); // said of the guitar, not of a file
                CHECK (name.find ('{') == std::string::npos);
                ++refused;
            }
            const auto job = jobOf (guitar, offer);
            REQUIRE (job.has_value());
            REQUIRE (job->options.size() == offer.options.size());
            for (const auto& option : job->options)
            {
                INFO (option.letter << " " << option.name);
                checkPromise (starter, *job, option);
                CHECK (option.name.find ('{') == std::string::npos);
                CHECK (option.name.size() < 48);
            }
            for (const auto& option : whole.options)
                for (const auto& [preset, arguments] : option.rewires)
                    used[starter.preset].insert (preset);
            (offer.options.size() == 3 ? filled : offer.options.empty() ? none : some)++;
            if (std::getenv ("COLDIRON_SHOW") != nullptr)
                for (const auto& option : offer.options)
                    std::cout << starter.preset << " | " << guitar << " | " << option.name << "\n";
        }
        std::cout << starter.name << ": three options on " << filled << " guitars, fewer on " << some << ", none and why on "
                  << none << "; " << refused << " candidates refused, each with a reason\n";
        CHECK (filled > 0);
        std::set<std::string> named; // every candidate can be used on some guitar: else it is no candidate
        for (const auto& candidate : starter.candidates)
            for (const auto& rewire : candidate.rewires)
                named.insert (rewire.preset);
        CHECK (used[starter.preset] == named);
    }
    std::sort (wishes.begin(), wishes.end());
    CHECK (wishes == std::vector<std::string> { "brighter", "clear when turned down", "independent", "more voices", "quieter" });
}

TEST_CASE ("What a set offers is what the trade would say")
{
    // Two coils wound opposite cancel hum in parallel where turns and impedance are equal; wound alike they add.
    // [calc] sign of the hum EMF: winding alone. The middle coil of this guitar is reverse wound.
    const auto quieter = offerOn ("quieter", "three-single-coils");
    REQUIRE (quieter.options.size() == 3);
    CHECK (quieter.options[0].rewires.empty());
    CHECK (quieter.options[0].setting.levers.at ("blade") == "neck-middle");

    // Common practice of the trade, no source: a humbucker with two leads cannot be split or set in parallel.
    const auto brighter = offerOn ("brighter", "two-humbuckers-two-lead");
    REQUIRE_FALSE (brighter.options.empty());
    int fourLeads = 0;
    for (const auto& [candidate, why] : brighter.refused)
        fourLeads += wording::offerRefusal (why).find ("four leads") != std::string::npos ? 1 : 0;
    CHECK (fourLeads >= 2);
    for (const auto& option : brighter.options)
        for (const auto& [preset, arguments] : option.rewires)
            CHECK (preset.find ("split") == std::string::npos);

    // One volume has nothing to be independent of.
    const auto independent = offerOn ("independent", "one-humbucker");
    CHECK (independent.options.empty());
    for (const auto& [candidate, why] : independent.refused)
    {
        CHECK (why.reason == OfferRefusal::Reason::onePartAlone);
        CHECK (wording::offerRefusal (why) == "the guitar has only one volume");
    }
    // On these the pickups are on the wipers already: turning them round would lose it.
    CHECK (offerOn ("independent", "bass-two-single-coils").options.empty());
    CHECK (offerOn ("independent", "two-humbuckers-four-knobs").options.front().rewires.size() == 2);
}

TEST_CASE ("A set takes the pickup that is on")
{
    Setting neck;
    neck.levers["selector"] = "neck";
    Setting bridge;
    bridge.levers["selector"] = "bridge";
    CHECK (offerOn ("brighter", "two-humbuckers-four-knobs", neck).options.front().rewires.front().second.at ("pickup")
           == "neck");
    const auto offer = offerOn ("brighter", "two-humbuckers-four-knobs", bridge);
    CHECK (offer.options.front().rewires.front().second.at ("pickup") == "bridge");
    CHECK (offer.options.front().rewires.front().second.at ("pot") == "bridge-volume"); // and the knob beside it
}

TEST_CASE ("A starter set that is wrong says where")
{
    support::Folder folder;
    const auto tried = [&] (const std::string& text, int line, const std::vector<std::string>& words)
    {
        folder.write ("starters/mine.json", text);
        const auto presets = support::shipped().behind (folder.path);
        Diagnostics diagnostics;
        CHECK_FALSE (readStarter ("mine", presets, diagnostics).has_value());
        CHECK (support::has (diagnostics, line, words));
    };
    tried ("{ \"coldiron\": \"starter 1\", \"name\": \"Mine\" }", 1, { "candidates" });
    tried ("{ \"coldiron\": \"starter 1\",\n \"proof\": \"nicer\", \"candidates\": [ { \"name\": \"x\" } ] }", 2,
           { "proof", "brighter" });
    tried ("{ \"coldiron\": \"starter 1\", \"candidates\": [\n { \"name\": \"x\", \"asks\": { \"a\": \"pickle\" } } ] }", 2,
           { "pickle", "pickup" });
    tried (
        "{ \"coldiron\": \"starter 1\", \"candidates\": [\n { \"name\": \"x\", \"rewires\": [ { \"use\": \"parallell\" } ] } ] }",
        2, { "parallel" });
    tried ("{ \"coldiron\": \"starter 1\", \"candidates\": [\n { \"name\": \"x\",\n \"rewires\": [ { \"use\": \"parallel\", "
           "\"pot\": \"a\" } ] } ] }",
           3, { "pot", "pickup" });
    tried ("{ \"coldiron\": \"starter 1\", \"candidates\": [\n { \"name\": \"x\", \"settings\": { } } ] }", 2,
           { "settings", "setting" });
}
}
