#include "support/JobFixture.h"

#include "job/Readers.h"
#include "response/GuitarResponse.h"

#include <algorithm>
#include <cmath>
#include <iostream>

namespace presetsTest
{
using namespace coldiron;

TEST_CASE ("Every shipped preset reads without a fault and says what it is")
{
    const auto presets = support::shipped();
    Diagnostics diagnostics;
    Library library (presets, diagnostics);
    size_t count = 0;
    for (const char* kind : { "pickup", "switch", "taper", "guitar", "rewire" })
    {
        const std::string folder = kind == std::string ("switch") ? "switches" : std::string (kind) + "s";
        for (const auto& name : presets.list (folder))
        {
            INFO (folder << "/" << name);
            ++count;
            const auto resolved = library.resolve (kind, name);
            REQUIRE (resolved.has_value());
            REQUIRE (resolved->json.find ("name") != nullptr);
            CHECK_FALSE (resolved->json.find ("name")->text.empty());
            if (kind == std::string ("pickup"))
                readPickup (resolved->json, diagnostics);
            else if (kind == std::string ("switch"))
                readSwitch (resolved->json, diagnostics);
            else if (kind == std::string ("taper"))
                readTaper (name, library);
            else if (kind == std::string ("guitar"))
                CHECK (readGuitar (*resolved, library).has_value());
            else
            {
                const auto info = readRewireInfo (*resolved, library);
                REQUIRE (info.has_value());
                CHECK_FALSE (info->gives.empty());
                CHECK_FALSE (info->costs.empty());
                CHECK_FALSE (info->wish.empty());
                CHECK_FALSE (info->needs.empty());
            }
        }
    }
    for (const auto& fault : diagnostics)
        UNSCOPED_INFO (fault.text());
    CHECK (diagnostics.empty());
    CHECK (count >= 30);
    std::cout << "presets read: " << count << "\n";
}

namespace
{
struct Peak
{
    double hz, db;
};

/** The pickup as it is used most: its coils so that their strings add, 500k volume and tone with 22 nF, 500 pF, 1M. */
Peak loadedPeak (const Pickup& pickup)
{
    Harness harness;
    Part part { "p", PickupPart { pickup, 50.0 }, {}, {} };
    harness.addPart (std::move (part));
    harness.addPart ({ "v", PotPart { 500e3, {}, {}, false, false, 0.2 }, {}, {} });
    harness.addPart ({ "t", PotPart { 500e3, {}, {}, false, false, 0.2 }, {}, {} });
    harness.addPart ({ "c", CapacitorPart { 22e-9, 0.1 }, {}, {} });
    harness.addPart ({ "j", JackPart {}, {}, {} });
    std::string last;
    for (const auto& coil : pickup.coils)
    {
        if (coil.stringSign() == 0)
            continue;
        const auto in = "p." + coil.name + (coil.stringSign() > 0 ? ".start" : ".finish");
        const auto out = "p." + coil.name + (coil.stringSign() > 0 ? ".finish" : ".start");
        const auto isInside = [&] (const auto& joint) { return "p." + joint[0] == last || "p." + joint[1] == last; };
        const bool joined = ! last.empty() && std::any_of (pickup.inside.begin(), pickup.inside.end(), isInside);
        if (last.empty())
            harness.solder ({ in, "v.3" });
        else if (! joined)
            harness.solder ({ last, in });
        last = out;
    }
    harness.solder ({ last, "ground" });
    harness.solder ({ "v.1", "ground" });
    harness.solder ({ "v.2", "j.tip" });
    harness.solder ({ "t.1", "v.3" });
    harness.solder ({ "t.2", "c.1" });
    harness.solder ({ "c.2", "ground" });
    StringSet strings { { { "E2", 82.41, 650.0 } }, { true } };
    const GuitarResponse response (harness, {}, { 500e-12, 1e6, 0.0 }, strings);
    REQUIRE_FALSE (response.isSilent());
    Peak best { 0.0, -300.0 };
    const double reference = std::abs (response.unisonResponse (200.0));
    for (double hz = 200.0; hz < 12000.0; hz *= 1.005)
        if (const double db = 20.0 * std::log10 (std::abs (response.unisonResponse (hz)) / reference); db > best.db)
            best = { hz, db };
    return best;
}
}

// Articles on pickups give peaks of 0 to 12 dB where a bare coil would give 16 dB; loaded peaks by construction: common
// practice of the trade, no source.
TEST_CASE ("Pickups peak at 0 to 12 dB into 500k pots, a 500 pF cable and 1M, and where their kind does")
{
    const std::map<std::string, std::pair<double, double>> ranges {
        { "single-coil", { 3500, 4500 } },
        { "single-coil-reverse", { 3500, 4500 } },
        { "humbucker-moderate", { 2600, 3200 } },
        { "humbucker-hot", { 1900, 2400 } },
        { "humbucker-moderate-two-lead", { 2600, 3200 } },
        { "humbucker-hot-two-lead", { 1900, 2400 } },
    };
    const auto presets = support::shipped();
    Diagnostics diagnostics;
    Library library (presets, diagnostics);
    for (const auto& name : presets.list ("pickups"))
    {
        const auto pickup = readPickup (library.resolve ("pickup", name)->json, diagnostics);
        bool heard = false;
        for (const auto& coil : pickup.coils)
            heard = heard || coil.stringSign() != 0;
        if (! heard)
            continue; // a dummy coil
        const auto peak = loadedPeak (pickup);
        INFO (name << " peaks " << peak.db << " dB at " << peak.hz << " Hz");
        CHECK (peak.db >= 0.0);
        CHECK (peak.db <= 12.0);
        if (const auto range = ranges.find (name); range != ranges.end())
        {
            CHECK (peak.hz >= range->second.first);
            CHECK (peak.hz <= range->second.second);
        }
    }
}

TEST_CASE ("A coupling that no coils can have is refused")
{
    // n coils with one k between any two: eigenvalues 1 - k and 1 + (n - 1) k, both above 0 [calc: the matrix of ones].
    const auto with = [] (int coils, const std::string& coupling)
    {
        std::string text = "{ \"coldiron\": \"job 1\", \"guitar\": { \"scale_mm\": 650, \"strings\": [\"E2\"], \"parts\": { "
                           "\"jack\": { \"jack\": \"mono\" }, \"p\": { \"bridge_mm\": 50, \"pickup\": {\n\"coupling\": "
                           + coupling + ",\n\"coils\": {";
        for (int i = 0; i < coils; ++i)
            text += std::string (i > 0 ? "," : "") + " \"c" + std::to_string (i) + "\": { \"dcr\": \"4k\", \"inductance\": 2 }";
        return support::faultsOf (text
                                  + " } } } }, \"wires\": [[\"p.c0.start\", \"jack.tip\"], [\"p.c0.finish\", \"ground\"]] } }");
    };
    CHECK (with (2, "-0.95").empty());
    CHECK (with (3, "-0.49").empty());
    CHECK (with (4, "-0.33").empty());
    CHECK (with (8, "0.95").empty());
    CHECK (support::has (with (3, "-0.5"), 2, { "3 coils cannot oppose each other so much", "more than -0.5" }));
    CHECK (support::has (with (4, "-0.34"), 2, { "4 coils", "more than -0.333" }));
    CHECK (support::has (with (2, "1"), 2, { "\"coupling\"", "from -0.95 to 0.95" }));
    CHECK (support::has (with (2, "-1"), 2, { "\"coupling\"", "from -0.95 to 0.95" }));
}
}
