#include "wording/OfferWords.h"

#include <catch2/catch.hpp>

#include <set>

namespace offerWordsTest
{
using namespace coldiron;
using namespace coldiron::wording;
using Reason = OfferRefusal::Reason;

TEST_CASE ("why it is not offered, in one line")
{
    CHECK (offerRefusal ({ Reason::toBeNamed, "value", "value", {}, {} })
           == "say which value in the job: \"value\" asks for a value");
    CHECK (offerRefusal ({ Reason::noneLeft, "other", "pickup", {}, {} }) == "the guitar has no pickup left for \"other\"");
    CHECK (offerRefusal ({ Reason::noPart, {}, "tone", {}, {} }) == "the guitar has no tone for it");
    CHECK (offerRefusal ({ Reason::onePartAlone, {}, "volume", {}, {} }) == "the guitar has only one volume");
    CHECK (offerRefusal ({ Reason::noControl, "blade", {}, {}, {} }) == "there is no control \"blade\" on it");
    CHECK (offerRefusal ({ Reason::noPosition, "blade", {}, "both", {} }) == "the switch \"blade\" has no position \"both\"");
    CHECK (offerRefusal ({ Reason::neverAlone, {}, {}, {}, { "bridge", "neck" } })
           == "no position of its switches has just bridge, neck on");
    CHECK (offerRefusal ({ Reason::stillMutes, "neck-volume", {}, {}, {} })
           == "the neck-volume at 0 would still mute the other pickup");
    std::set<std::string> all;
    for (int reason = 0; reason <= static_cast<int> (Reason::stillMutes); ++reason)
    {
        const auto words = offerRefusal ({ static_cast<Reason> (reason), "a", "b", {}, { "c" } });
        INFO (words);
        CHECK (words.size() > 12);
        CHECK (words.back() != '.');
        all.insert (words);
    }
    CHECK (all.size() == static_cast<size_t> (Reason::stillMutes) + 1); // none says what another says
}

TEST_CASE ("what a rewire's reader says is said of the guitar")
{
    const auto said = [] (const std::string& message) { return offerRefusal ({ Reason::rewire, {}, {}, message, {} }); };
    CHECK (said ("\"Split\" cannot be done: it needs four leads (bridge.north.start: a pickup has coil.start, coil.finish)")
           == "it needs four leads");
    CHECK (
        said ("step 2 of \"Split\", move a to b (split.json:7): neck-tone.out: neither lug 2 nor lug 3 leads to the jack, so ...")
        == "it needs another volume, and neck-tone is none");
    CHECK (said ("step 1 of \"Swap\", replace neck: neck.north.start is in use, and the new part has no point of that name; say")
           == "the new part has other leads than neck; name one of the same kind");
    CHECK (said ("") == "it cannot be done here");
}

TEST_CASE ("a candidate's name without a guitar")
{
    StarterCandidate candidate;
    candidate.name = "{pickup}, coils in parallel";
    candidate.asks = { { "pickup", "pickup" } };
    CHECK (candidateName (candidate) == "the pickup, coils in parallel");
}
}
