// A rewire changes what it says and nothing else: what it does not say is taken from the part it replaces.
#include "support/Rewired.h"

#include "job/FirstArguments.h"

namespace defaultsOfTest
{
using namespace coldiron;
using namespace coldiron::support;

namespace
{
const PotPart& pot (const Harness& harness, const std::string& name) { return *harness.find (name)->as<PotPart>(); }
}

TEST_CASE ("Another taper, a no-load tone, a blend and a master keep the value of the pot they replace", "[defaults]")
{
    const auto guitar = guitarOf ("two-single-coils"); // 250k, log-15
    auto harness = rewired (guitar, { { "pot-taper", { { "pot", "neck-volume" } } } });
    CHECK (pot (harness, "neck-volume").ohms == 250e3);
    CHECK (pot (harness, "neck-volume").taper.name == "linear");

    harness = rewired (guitar, { { "tone-no-load", { { "pot", "neck-tone" } } } });
    CHECK (pot (harness, "neck-tone").ohms == 250e3);
    CHECK (pot (harness, "neck-tone").taper.name == "log-15");
    CHECK (pot (harness, "neck-tone").noLoad);

    const Arguments both { { "first", "neck-volume" }, { "second", "bridge-volume" } };
    harness = rewired (guitar, { { "blend", both } });
    CHECK (pot (harness, "neck-volume").ohms == 250e3);
    CHECK (pot (harness, "bridge-volume").ohms == 250e3);
    harness = rewired (guitar, { { "master-volume", both } });
    CHECK (pot (harness, "master").ohms == 250e3);
    CHECK (pot (rewired (guitarOf ("two-humbuckers-four-knobs"), { { "master-volume", both } }), "master").ohms == 500e3);
}

TEST_CASE ("What is not said of a replaced part stays: taper, direction, no-load, shaft, tolerance", "[defaults]")
{
    const auto left = guitarOf ("one-humbucker-left-handed");
    auto harness = rewired (left, { { "pot-value", { { "pot", "volume" } } } });
    CHECK (pot (harness, "volume").ohms == 1e6);
    CHECK (pot (harness, "volume").turnedOver);
    CHECK (pot (harness, "volume").taper.name == "log-15");

    const auto linear = rewired (left, { { "pot-taper", { { "pot", "volume" } } }, { "pot-value", { { "pot", "volume" } } } });
    CHECK (pot (linear, "volume").taper.name == "linear");
    // Said last, taken from what stands there then.
    const auto million = rewired (left, { { "pot-value", { { "pot", "volume" } } }, { "pot-taper", { { "pot", "volume" } } } });
    CHECK (pot (million, "volume").ohms == 1e6);

    const auto bass = guitarOf ("bass-blend");
    harness = rewired (bass, { { "pot-value", { { "pot", "blend-neck" }, { "value", "250k" } } } });
    CHECK (pot (harness, "blend-neck").shaft == "blend");
    CHECK (pot (harness, "blend-neck").rest == 5.0);
    CHECK (pot (harness, "blend-neck").taper.name == "blend-second");

    const auto own = [] (const std::string& part)
    {
        Diagnostics diagnostics;
        const auto job = readJobText (
            R"({ "coldiron": "job 1", "guitar": { "like": "one-humbucker", "parts": { "cap": { "capacitor": "22n", "tolerance": 0.02 } } },
 "options": { "A": { "rewires": [ { "use": "tone-cap-value", "cap": "cap" } ] } } })",
            "/", shipped(), diagnostics);
        REQUIRE (job.has_value());
        return job->options.front().harness.find (part)->as<CapacitorPart>()->tolerance;
    };
    CHECK (own ("cap") == 0.02);
}

TEST_CASE ("A default taken from the guitar is in the words, and what is said goes before it", "[defaults]")
{
    const auto guitar = guitarOf ("two-single-coils");
    Diagnostics diagnostics;
    const auto use = fillRewire ("blend", { { "first", "neck-volume" }, { "second", "bridge-volume" } }, guitar.harness,
                                 shipped(), diagnostics);
    REQUIRE (use.has_value());
    CHECK (use->arguments.at ("value") == "250k");
    const auto told = fillRewire ("blend", { { "first", "neck-volume" }, { "second", "bridge-volume" }, { "value", "500k" } },
                                  guitar.harness, shipped(), diagnostics);
    REQUIRE (told.has_value());
    CHECK (told->arguments.at ("value") == "500k");
    const auto info = readRewireInfo ("pot-taper", shipped(), diagnostics);
    REQUIRE (info.has_value());
    CHECK (firstArguments (*info, guitar.harness, {}).at ("value") == "250k");
}

TEST_CASE ("A default of a part that is not there, or that has no value, is told", "[defaults]")
{
    const auto guitar = guitarOf ("two-single-coils");
    CHECK (whyRefused (guitar, { { "pot-taper", { { "pot", "volume" } } } })
               .find ("\"pot\" asks for a pot and \"volume\" is none of this guitar")
           != std::string::npos);
    const auto diagnostics = faultsOf (R"({ "coldiron": "job 1", "guitar": "two-single-coils", "options": { "A": { "rewires": [
 { "use": { "coldiron": "rewire 1", "name": "Own", "asks": { "switch": "switch", "value": "value" }, "defaults": { "value": { "of": "{switch}" } },
   "steps": [ { "fit": "x", "as": { "pot": "{value}" } } ] }, "switch": "selector" } ] } } })");
    REQUIRE (diagnostics.size() == 1);
    CHECK (has (diagnostics, 2, { "say \"value\"" }));
}
}
