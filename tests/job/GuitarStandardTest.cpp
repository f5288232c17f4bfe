// Every shipped guitar as it stands in a shop: its runs of wire, its pickups where they are, its positions counted from the
// bridge. Common practice of the trade, no source; places from memory.
#include "support/Rewired.h"

namespace guitarStandardTest
{
using namespace coldiron;
using namespace coldiron::support;

namespace
{
/** The frequency where one pickup's plain response is highest, 500 Hz to 8 kHz. */
double peakHz (const Guitar& guitar, const Setting& setting)
{
    const auto response = configOf (guitar, guitar.harness, setting).response();
    double best = 0.0, at = 0.0;
    for (double hz = 500.0; hz < 8000.0; hz *= 1.0005)
        if (const double level = std::abs (response.unisonResponse (hz)); level > best)
        {
            best = level;
            at = hz;
        }
    return at;
}
}

TEST_CASE ("Every guitar has its runs of wire, between 10 and 300 pF behind each pickup", "[standard]")
{
    for (const auto& guitar : allGuitars (shipped().list ("guitars")))
    {
        INFO (guitar.preset);
        double sum = 0.0;
        std::set<std::string> ownLeads;
        for (const auto& run : guitar.harness.runs())
        {
            sum += run.farads;
            if (guitar.harness.partOf (run.at).as<PickupPart>() != nullptr)
                ownLeads.insert (splitPoint (run.at).first);
        }
        std::set<std::string> pickups;
        for (const auto& part : guitar.harness.parts())
            if (part.as<PickupPart>() != nullptr)
                pickups.insert (part.name);
        CHECK (ownLeads == pickups);
        CHECK (sum > 10e-12);
        CHECK (sum < 500e-12);
    }
}

TEST_CASE ("Wire brings the four-knob guitar's resonance down by a tenth", "[standard]")
{
    // Reckoned beforehand for this guitar with the usual 5 m of cable: 1992 Hz without its runs, 1789 Hz with them.
    Diagnostics diagnostics;
    const auto bare = readJobText (R"({ "coldiron": "job 1", "guitar": { "like": "two-humbuckers-four-knobs", "runs": [] } })",
                                   "/", shipped(), diagnostics);
    REQUIRE (bare.has_value());
    Setting bridge;
    bridge.levers["selector"] = "bridge";
    CHECK (peakHz (bare->guitar, bridge) == Approx (1992.0).margin (15.0));
    CHECK (peakHz (guitarOf ("two-humbuckers-four-knobs"), bridge) == Approx (1789.0).margin (20.0));
}

TEST_CASE ("Numbered positions count from the bridge", "[standard]")
{
    int counted = 0;
    for (const auto& guitar : allGuitars (shipped().list ("guitars")))
        for (const auto& control : controls (guitar.harness))
            if (control.positions.size() > 2 && control.positions.front() == "1")
            {
                INFO (guitar.preset);
                Setting setting;
                setting.levers[control.name] = "1";
                CHECK (heard (guitar, guitar.harness, setting) == std::set<std::string> { "bridge" });
                ++counted;
            }
    CHECK (counted == 3);
}

TEST_CASE ("A split-coil pickup stands at about 136 mm at its middle, a bridge pickup within 30 to 100", "[standard]")
{
    int splitCoils = 0;
    for (const auto& guitar : allGuitars (shipped().list ("guitars")))
        for (const auto& part : guitar.harness.parts())
            if (const auto* pickup = part.as<PickupPart>())
            {
                INFO (guitar.preset << " " << part.name);
                if (pickup->pickup.coils.front().name == "low")
                {
                    ++splitCoils;
                    CHECK (pickup->bridgeMm == Approx (136.0).margin (3.0));
                }
                else if (part.name == "bridge")
                {
                    CHECK (pickup->bridgeMm >= 30.0);
                    CHECK (pickup->bridgeMm <= 100.0);
                }
            }
    CHECK (splitCoils == 3);
}
}
