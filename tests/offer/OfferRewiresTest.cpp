// Rewires offered for a guitar: each is heard at the setting it comes with, or says in one line why it is not for it.
#include "support/Catalogue.h"

#include "offer/OfferWish.h"
#include "offer/OptionText.h"
#include "wording/OfferWords.h"

#include <algorithm>
#include <cmath>
#include <iostream>

namespace offerRewiresTest
{
using namespace coldiron;

namespace
{
Guitar guitarOf (const std::string& name) { return support::allGuitars ({ name }).front(); }

RewireOffer offerOn (const std::string& rewire, const std::string& guitar, const Setting& from = {})
{
    Diagnostics diagnostics;
    const auto info = readRewireInfo (rewire, support::shipped(), diagnostics);
    REQUIRE (info.has_value());
    return offerRewire (*info, guitarOf (guitar), from, {}, support::shipped());
}

Job jobWith (const std::string& guitar, const StarterOption& option)
{
    const auto text = withOptions ("{ \"coldiron\": \"job 1\", \"guitar\": \"" + guitar + "\" }", { option });
    REQUIRE (text.has_value());
    Diagnostics diagnostics;
    auto job = readJobText (text->text, "/", support::shipped(), diagnostics);
    for (const auto& fault : diagnostics)
        UNSCOPED_INFO (fault.text());
    REQUIRE (job.has_value());
    return *job;
}

std::string whyNotOn (const std::string& rewire, const std::string& guitar)
{
    return wording::offerRefusal (offerOn (rewire, guitar).refusal.value());
}
}

TEST_CASE ("Every rewire on every guitar is an option that a job holds, or says why not in one line")
{
    int fits = 0, heard = 0, refused = 0;
    for (const auto& guitar : support::shipped().list ("guitars"))
        for (const auto& rewire : support::shipped().list ("rewires"))
        {
            INFO (rewire << " on " << guitar);
            const auto offer = offerOn (rewire, guitar);
            CHECK (offer.option.has_value() != offer.refusal.has_value());
            if (! offer.option)
            {
                ++refused;
                const auto why = wording::offerRefusal (offer.refusal.value());
                INFO (why);
                CHECK (why.size() > 10);
                CHECK (why.find ('\n') == std::string::npos);
                CHECK (why.find (".json") == std::string::npos);
                continue;
            }
            ++fits;
            heard += offer.heard ? 1 : 0;
            const auto job = jobWith (guitar, *offer.option);
            REQUIRE (job.options.size() == 1);
            CHECK_FALSE (job.options.front().harness.sameAs (job.guitar.harness));
        }
    std::cout << fits << " rewires fit, " << heard << " of them heard at the setting offered, " << refused
              << " refused with a reason\n";
    CHECK (fits > 500);
    CHECK (heard > fits * 9 / 10);
}

TEST_CASE ("An option comes with a setting at which it is heard")
{
    const auto pull = offerOn ("split-shorted", "two-humbuckers-four-knobs");
    REQUIRE (pull.option.has_value());
    CHECK (pull.option->setting.levers.at (pull.option->rewires.front().second.at ("pot") + "-pull") == "up");

    // Common practice of the trade, no source: a treble bleed does nothing with the volume all the way up.
    const auto bleed = offerOn ("treble-bleed-parallel", "one-humbucker");
    REQUIRE (bleed.option.has_value());
    CHECK (bleed.option->setting.knobs.at ("volume") == 5.0);

    // A rewire of a pickup that is off is heard with that pickup on.
    Setting neck;
    neck.levers["selector"] = "neck";
    const auto bridge = offerRewire (
        *[]
        {
            Diagnostics f;
            return readRewireInfo ("pot-value", support::shipped(), f);
        }(),
        guitarOf ("two-humbuckers-four-knobs"), neck, {}, support::shipped());
    REQUIRE (bridge.option.has_value());
    CHECK (bridge.option->rewires.front().second.at ("pot").starts_with ("neck-")); // the pickup that is on goes first
}

TEST_CASE ("What is done to a tone is offered on a tone, and a refusal speaks of the guitar")
{
    const auto noLoad = offerOn ("tone-no-load", "one-humbucker");
    REQUIRE (noLoad.option.has_value());
    CHECK (noLoad.option->rewires.front().second.at ("pot") == "tone");
    CHECK (whyNotOn ("split-shorted", "three-single-coils").find ("cannot be done") == std::string::npos);
    CHECK (whyNotOn ("split-shorted", "three-single-coils").find (".start") == std::string::npos);
    CHECK (whyNotOn ("split-shorted", "three-single-coils").find ("leads") != std::string::npos);
    CHECK (whyNotOn ("master-volume", "one-humbucker").find ("volume") != std::string::npos);
    CHECK (whyNotOn ("pickup-swap", "three-single-coils").find ("other leads") != std::string::npos);
}

TEST_CASE ("A wish in words finds sets, another name finds its rewire, on this guitar")
{
    Diagnostics diagnostics;
    const auto humbuckers = guitarOf ("two-humbuckers-four-knobs"), twoLead = guitarOf ("two-humbuckers-two-lead");
    const auto dark = offerForWish ("It's too dark", humbuckers, {}, {}, support::shipped(), diagnostics);
    REQUIRE (dark.sets.size() == 1);
    CHECK (dark.sets.front().starter.preset == "brighter");
    CHECK (dark.options().size() == 3);

    // A client says more than the set does; the words that are known find it.
    const auto stage =
        offerForWish ("It hums badly on stage, and the singer complains", humbuckers, {}, {}, support::shipped(), diagnostics);
    CHECK (stage.match == WordMatch::some);
    REQUIRE (stage.sets.size() == 1);
    CHECK (stage.sets.front().starter.preset == "quieter");

    const auto split = offerForWish ("coil-split", humbuckers, {}, {}, support::shipped(), diagnostics);
    CHECK (split.match == WordMatch::exact);
    CHECK (split.sets.empty());
    for (const auto& rewire : split.rewires)
        CHECK (rewire.info.preset.find ("split") != std::string::npos);
    REQUIRE_FALSE (split.options().empty());
    CHECK (split.options().front().rewires.front().first == "split-shorted"); // what starter sets name goes first

    const auto none = offerForWish ("coil-split", twoLead, {}, {}, support::shipped(), diagnostics);
    CHECK (none.options().empty());
    for (const auto& rewire : none.rewires)
        CHECK (wording::offerRefusal (rewire.refusal.value()).find ("leads")
               != std::string::npos); // it is the two leads that are in the way

    CHECK (offerForWish ("a parrot", humbuckers, {}, {}, support::shipped(), diagnostics).match == WordMatch::none);
    CHECK (diagnostics.empty());
}
}
