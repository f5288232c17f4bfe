// Clarity against what the trade says of volumes, bleeds, pots: common practice of the trade, no source. The reference
// values were computed beforehand from these circuits [calc], each with a take of its own.
#include "support/Catalogue.h"

#include "response/Clarity.h"
#include "response/Hum.h"
#include "response/Volumes.h"
#include "support/PluckedString.h"
#include "support/PluckedStringPhrases.h"

#include <array>
#include <iostream>

namespace clarityTest
{
using namespace coldiron;

namespace
{
/** Pickups as they were when the references were computed, whatever the shipped ones are today. */
const std::string hot = R"({ "coupling": 0.15, "coils": {
    "north": { "dcr": "7k", "inductance": 3, "capacitance": "160p", "loss": [ { "inductance": 0.8, "resistance": "100k" } ], "magnet": "north", "wound": "clockwise", "offset_mm": 9 },
    "south": { "dcr": "7k", "inductance": 3, "capacitance": "160p", "loss": [ { "inductance": 0.8, "resistance": "100k" } ], "magnet": "south", "wound": "clockwise", "offset_mm": -9 } } })";
const std::string moderate = R"({ "coupling": 0.15, "coils": {
    "north": { "dcr": "4.1k", "inductance": 1.6, "capacitance": "180p", "loss": [ { "inductance": 0.5, "resistance": "60k" } ], "magnet": "north", "wound": "clockwise", "offset_mm": 9 },
    "south": { "dcr": "4.1k", "inductance": 1.6, "capacitance": "180p", "loss": [ { "inductance": 0.5, "resistance": "60k" } ], "magnet": "south", "wound": "clockwise", "offset_mm": -9 } } })";
const std::string soapbar =
    R"({ "coils": { "coil": { "dcr": "8k", "inductance": 5, "capacitance": "110p", "loss": [ { "inductance": 1.2, "resistance": "90k" } ],
    "magnet": "north", "wound": "clockwise" } } })";
const std::string singleCoil =
    R"({ "coils": { "coil": { "dcr": "6.2k", "inductance": 2.2, "capacitance": "110p", "loss": [ { "inductance": 0.3, "resistance": "120k" } ],
    "magnet": "north", "wound": "clockwise" } } })";

/** A pickup at the bridge into volume and tone; the single coil of a three-single guitar has no tone there. */
struct Reference
{
    std::string name, pickup, potOhms;
    bool twoCoils, hasTone;
    double scaleMm;
    std::string runs;          ///< of wire, where the guitar has them
    std::array<double, 4> at5; ///< ordinary, bleed of a capacitor beside a resistor, bare capacitor, independent: dB re knob 10

    std::string guitar() const
    {
        const std::string start = twoCoils ? "bridge.north.start" : "bridge.coil.start",
                          finish = twoCoils ? "bridge.south.start" : "bridge.coil.finish";
        std::string text = R"({ "coldiron": "guitar 1", "name": "Reference", "scale_mm": )" + std::to_string (scaleMm)
                           + R"(, "strings": ["E2", "A2", "D3", "G3", "B3", "E4"], "parts": { "bridge": { "pickup": )" + pickup
                           + R"(, "bridge_mm": 44 }, "volume": { "pot": ")" + potOhms + R"(", "taper": "log-15" },)";
        if (hasTone)
            text += R"("tone": { "pot": ")" + potOhms + R"(", "taper": "log-15" }, "cap": { "capacitor": "22n" },)";
        text += R"("jack": { "jack": "mono" } }, "wires": [ [")" + start + R"(", "volume.3"], [")" + finish
                + R"(", "volume.case", "ground"], ["volume.1", "volume.case"], ["volume.2", "jack.tip"])";
        if (twoCoils)
            text += R"(, ["bridge.north.finish", "bridge.south.finish"])";
        if (hasTone)
            text += R"(, ["tone.1", "volume.3"], ["tone.2", "cap.1"], ["cap.2", "tone.case", "ground"])";
        return text + " ]" + (runs.empty() ? "" : ", \"runs\": " + runs) + " }";
    }
};

const std::array<Reference, 4> references {
    { { "hot humbucker", hot, "500k", true, true, 628.65, "", { -1.9, -0.1, 5.1, -14.7 } },
      { "moderate humbucker", moderate, "500k", true, true, 628.65, "", { -4.7, -0.3, 5.3, -15.2 } },
      { "soapbar",
        soapbar,
        "500k",
        false,
        true,
        628.65,
        R"([ { "at": "jack.tip", "mm": 950, "per_metre": "150p" } ])",
        { -3.8, -0.3, 5.4, -16.7 } },
      { "single coil", singleCoil, "250k", false, false, 647.7, "", { -4.2, 1.0, 6.5, -12.1 } } }
};

Job jobOf (const std::string& guitar, const std::string& rewires, const std::string& knobs)
{
    Diagnostics diagnostics;
    auto job = readJobText (R"({ "coldiron": "job 1", "guitar": )" + guitar + R"(, "options": { "A": { "name": "A", "rewires": [)"
                                + rewires + R"(], "setting": {)" + knobs + "} } } }",
                            "/", support::shipped(), diagnostics);
    for (const auto& fault : diagnostics)
        UNSCOPED_INFO (fault.text());
    REQUIRE (job.has_value());
    return std::move (*job);
}

CircuitConfig optionOf (const Reference& reference, const std::string& rewire, double knob)
{
    const auto job = jobOf (reference.guitar(), rewire, "\"volume\": " + std::to_string (knob));
    return job.optionConfig (job.options.front());
}

double at (const Clarity& clarity, const CircuitConfig& config) { return clarity.db (config).value_or (-999.0); }

/** What the strings of a played phrase give through the pickup at 10. */
Spectrum takeThrough (const CircuitConfig& config, double scaleMm, const support::Phrase& phrase)
{
    std::vector<std::vector<double>> distances;
    const GuitarResponse heard = config.response();
    for (const auto& ear : heard.coilPositions())
        distances.push_back (ear.distanceMm);
    const auto emfs = support::pluckedEmfs (support::pluckedGuitar (scaleMm), phrase, distances, 48000.0);
    std::vector<float> sum (emfs.front().size(), 0.0f);
    for (const auto& emf : emfs)
        for (size_t i = 0; i < sum.size(); ++i)
            sum[i] += static_cast<float> (emf[i]);
    auto spectrum = takeSpectrum ({ sum }, 48000.0);
    const GuitarResponse response = config.response();
    for (size_t i = 0; i < spectrum.hz.size(); ++i)
        spectrum.power[i] *= std::norm (response.unisonResponse (spectrum.hz[i]));
    return spectrum;
}

const std::array<std::string, 4> wirings {
    "", R"({ "use": "treble-bleed-parallel", "pot": "volume", "cap": "1n", "resistor": "150k" })",
    R"({ "use": "treble-bleed-cap", "pot": "volume", "cap": "1n" })", R"({ "use": "independent-volumes", "pot": "volume" })"
};
}

namespace
{
struct Sayings
{
    int settings = 0, duller = 0, bleeds = 0, clearer = 0;
};

/** "An ordinary volume turned down is duller", "a bleed with a resistor keeps it clearer", at knobs 8 to 2 of each guitar's heard volumes. */
Sayings countSayings (const std::vector<std::string>& guitars)
{
    Sayings count;
    for (const auto& name : guitars)
    {
        const auto now = jobOf ("\"" + name + "\"", "", "").recordedConfig (-1);
        const Clarity clarity (now, {});
        std::string knob;
        for (const auto& volume : volumeFigures (now))
            if (volume.heard && knob.empty())
                knob = volume.knob;
        REQUIRE_FALSE (knob.empty());
        std::array<CircuitConfig, 3> sides { now, now, now };
        for (size_t i = 1; i < 3; ++i)
            sides[i] = [&]
            {
                const auto job = jobOf ("\"" + name + "\"",
                                        std::string (R"({ "use": "treble-bleed-)") + (i == 1 ? "parallel" : "series")
                                            + R"(", "pot": ")" + knob + "\" }",
                                        "");
                return job.optionConfig (job.options.front());
            }();
        const double open = at (clarity, now);
        std::string line;
        for (double value = 8.0; value >= 2.0; value -= 1.0)
        {
            for (auto& config : sides)
                config.setting.knobs[knob] = value;
            const double ordinary = at (clarity, sides[0]) - open;
            ++count.settings;
            count.duller += ordinary < 0.0 ? 1 : 0;
            for (size_t i = 1; i < 3; ++i)
            {
                ++count.bleeds;
                count.clearer += at (clarity, sides[i]) - open > ordinary ? 1 : 0;
            }
            char text[60];
            std::snprintf (text, sizeof text, " %.1f/%+.1f/%+.1f", ordinary, at (clarity, sides[1]) - open,
                           at (clarity, sides[2]) - open);
            line += text;
        }
        std::cout << name << ", " << knob << " 8 to 2:" << line << "\n";
    }
    return count;
}
}

TEST_CASE ("An ordinary volume turned down is duller, a bleed keeps it clearer", "[clarity]")
{
    // Common practice of the trade, no source.
    const auto guitars = countSayings ({ "one-humbucker", "two-humbuckers-four-knobs", "two-humbuckers-two-knobs",
                                         "two-soapbars-four-knobs", "two-mini-humbuckers", "three-single-coils",
                                         "two-single-coils", "humbucker-single-single", "two-humbuckers-five-positions" });
    std::cout << "nine guitars: duller in " << guitars.duller << " of " << guitars.settings << ", bleed clearer in "
              << guitars.clearer << " of " << guitars.bleeds << "\n";
    CHECK (guitars.duller == guitars.settings);
    CHECK (guitars.clearer >= guitars.bleeds - 1);

    // Of basses those with an ordinary volume; two volumes with the pickups on the wipers only part the pickups.
    const auto basses =
        countSayings ({ "bass-split-coil", "bass-5-split-coil", "bass-one-humbucker", "bass-short-scale-two-humbuckers" });
    std::cout << "four basses: duller in " << basses.duller << " of " << basses.settings << ", bleed clearer in "
              << basses.clearer << " of " << basses.bleeds << "\n";
    CHECK (basses.duller == basses.settings);
    CHECK (basses.clearer >= basses.bleeds - 1);
}

TEST_CASE ("Clarity of the reference circuits at knob 5", "[clarity]")
{
    for (const auto& reference : references)
    {
        const auto open = optionOf (reference, "", 10.0);
        std::vector<std::pair<std::string, Spectrum>> takes {
            { "pink", {} }, { "song", takeThrough (open, reference.scaleMm, support::demoSong()) }
        };
        if (std::getenv ("COLDIRON_SHOW") != nullptr)
            for (const auto& phrase : support::guitarPhrases())
                takes.emplace_back (phrase.name, takeThrough (open, reference.scaleMm, phrase));
        for (const auto& [name, take] : takes)
        {
            const Clarity clarity (open, take);
            std::printf ("%-20s %-14s", reference.name.c_str(), name.c_str());
            std::array<double, 4> change {};
            for (size_t i = 0; i < wirings.size(); ++i)
            {
                change[i] =
                    at (clarity, optionOf (reference, wirings[i], 5.0)) - at (clarity, optionOf (reference, wirings[i], 10.0));
                std::printf (" %6.2f (%+.2f)", change[i], change[i] - reference.at5[i]);
            }
            std::printf ("\n");

            // Sign and order hold for any playing: ordinary duller, a bleed as at 10, a bare capacitor too bright, independent dullest.
            INFO (reference.name << ", " << name);
            CHECK (change[0] < -1.0);
            CHECK (std::abs (change[1]) < 1.5);
            CHECK (change[2] > 4.0);
            CHECK (change[3] < change[0] - 5.0);
            if (name != "pink")
                continue;
            // What was played for the references is not known: pink strings come within 0.3 dB of the hot humbucker's, of the
            // others' within 0.7 (independent volumes of the single coil are farthest).
            const double margin = reference.name == "hot humbucker" ? 0.3 : 0.7;
            for (size_t i = 0; i < change.size(); ++i)
                CHECK (change[i] == Approx (reference.at5[i]).margin (margin));
        }
    }
}

TEST_CASE ("Clarity at knob 10: what lets a dark guitar be brighter", "[clarity]")
{
    // The references, two-humbucker guitar, dB re as it is: [calc], as above.
    const auto job = jobOf (references[0].guitar(), "", "");
    const auto now = job.recordedConfig (-1);
    const Clarity clarity (now, {});
    struct Row
    {
        std::string rewire, setting;
        double db;
    };
    for (const auto& row :
         { Row { R"({ "use": "pot-value", "pot": "volume", "value": "1M" })", "", 1.2 },
           Row { R"({ "use": "tone-no-load", "pot": "tone" })", "", 2.6 },
           Row { R"({ "use": "straight-through", "pickup": "bridge", "pot": "volume" })", R"("volume-pull": "up")", 6.9 } })
    {
        INFO (row.rewire);
        const auto rewired = jobOf (references[0].guitar(), row.rewire, row.setting);
        CHECK (at (clarity, rewired.optionConfig (rewired.options.front())) - at (clarity, now) == Approx (row.db).margin (0.3));
    }
}

TEST_CASE ("The single coil that hum is told against is the shipped one", "[hum]")
{
    const auto single = support::allGuitars ({ "three-single-coils" }).front();
    const auto* bridge = single.harness.find ("bridge")->as<PickupPart>();
    REQUIRE (bridge != nullptr);
    CHECK (bridge->pickup.coils.front().turns == singleCoilTurns);
}
}
