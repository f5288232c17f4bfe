#include "response/Figures.h"
#include "response/Responses.h"
#include "response/SourceResponses.h"

#include <catch2/catch.hpp>

#include <array>
#include <iostream>

namespace volumeAndToneTest
{
using namespace coldiron;
using namespace coldiron::support;

// Ordinary or independent volume against tone on the input or the output side of the volume. The sayings are common
// practice of the trade, no source; where circuit theory differs the numbers stand.
namespace
{
/** Tone on the input side: at lug 3 with the pickup (ordinary). `Input` is the pickup's side, `output` the jack's. */
Harness volumeAndTone (bool independent, bool toneOnOutput)
{
    Harness harness;
    harness.addPart (humbucker ("bridge"));
    harness.addPart (pot ("volume"));
    harness.addPart (pot ("tone"));
    harness.addPart (capacitor ("cap", 22e-9));
    harness.addPart (jack());
    const std::string in = independent ? "volume.2" : "volume.3", out = independent ? "volume.3" : "volume.2";
    harness.solder ({ "bridge.north.start", in });
    harness.solder ({ "bridge.north.finish", "bridge.south.finish" });
    harness.solder ({ "bridge.south.start", "volume.case", "ground" });
    harness.solder ({ "volume.1", "volume.case" });
    harness.solder ({ out, "jack.tip" });
    harness.solder ({ "tone.1", toneOnOutput ? out : in });
    harness.solder ({ "tone.2", "cap.1" });
    harness.solder ({ "cap.2", "ground" });
    return harness;
}

struct KnobStep
{
    double knob, level, clarity;
};

/** Level at 500 Hz re knob 10, and clarity of pink strings. */
std::array<KnobStep, 5> steps (bool independent, bool toneOnOutput)
{
    std::array<KnobStep, 5> all {};
    const auto harness = volumeAndTone (independent, toneOnOutput);
    double open = 0.0;
    size_t i = 0;
    for (const double knob : { 10.0, 8.0, 5.0, 2.0, 0.0 })
    {
        Setting setting;
        setting.knobs["volume"] = knob;
        const GuitarResponse response = voiceOf (harness, setting);
        const double level = db (response.unisonResponse (500.0));
        const CircuitConfig config { harness, setting, {}, sixStrings() };
        if (i == 0)
            open = level;
        all[i++] = { knob, level - open, Clarity (config, {}).db (config).value_or (-999.0) };
    }
    return all;
}
}

TEST_CASE ("the two by two of volumes and tones")
{
    std::array<std::array<KnobStep, 5>, 4> table;
    const char* names[] = { "ordinary, tone on input", "ordinary, tone on output", "independent, tone on input",
                            "independent, tone on output" };
    std::cout
        << "Volume knob:                    10            8            5            2            0   (level dB / clarity dB)\n";
    for (int row = 0; row < 4; ++row)
    {
        table[row] = steps (row >= 2, row % 2 == 1);
        std::printf ("%-28s", names[row]);
        for (const auto& step : table[row])
            std::printf ("%6.1f/%5.1f ", step.level, step.clarity);
        std::printf ("\n");
    }
    std::fflush (stdout);
    const auto &ordinaryIn = table[0], &ordinaryOut = table[1], &independentIn = table[2], &independentOut = table[3];

    // At 10 all four are one circuit but for the ohm of the wiper's end.
    for (const auto& row : table)
        CHECK (row[0].clarity == Approx (ordinaryIn[0].clarity).margin (0.05));

    // "With the tone on the output side rolling the volume down loses less treble": so with ordinary volumes.
    for (const size_t knob : { 1, 2, 3 })
        CHECK (ordinaryOut[knob].clarity > ordinaryIn[knob].clarity - 0.01);

    // "Independent volumes change nothing in how the pot works": not so. The level stays up and the treble goes sooner.
    for (const size_t knob : { 1, 2, 3 })
    {
        CHECK (independentIn[knob].level > ordinaryIn[knob].level + 3.0);
        CHECK (independentIn[knob].clarity < ordinaryIn[knob].clarity - 3.0);
        CHECK (independentOut[knob].clarity < ordinaryOut[knob].clarity - 2.5);
    }

    // At 0 the ordinary volume shorts the jack, the independent one the pickup: either is as good as silent.
    for (const auto& row : table)
        CHECK (row[4].level < -60.0);
}

TEST_CASE ("in the middle position independent volumes do not mute, ordinary ones do")
{
    // Common practice of the trade, no source.
    CircuitConfig config { fourKnobs(), {}, {}, sixStrings() };
    config.setting.levers["selector"] = "both";
    const auto mutes = [] (const CircuitConfig& s)
    {
        std::vector<bool> answers;
        for (const auto& volume : volumeFigures (s))
        {
            REQUIRE (volume.mutesOthers.has_value());
            answers.push_back (*volume.mutesOthers);
        }
        return answers;
    };
    CHECK (mutes (config) == std::vector<bool> { true, true });

    CircuitConfig independent = config;
    for (const std::string pot : { "neck-volume", "bridge-volume" })
        independent.harness.swapLugs (pot + ".2", pot + ".3");
    CHECK (mutes (independent) == std::vector<bool> { false, false });

    // The same as levels: what is left of the neck when the bridge's volume stands at 0.
    const auto left = [] (CircuitConfig s)
    {
        const double open = sourceResponses (s.response(), 500.0).norm();
        s.setting.knobs["bridge-volume"] = 0.0;
        return db (sourceResponses (s.response(), 500.0).norm() / open);
    };
    std::cout << "Bridge volume at 0 in the middle position leaves " << left (config) << " dB with ordinary volumes, "
              << left (independent) << " dB with independent ones\n";
    CHECK (left (config) < -60.0);
    CHECK (left (independent) > -6.0);

    // Asked from another position of the switch the answer is the same: it looks where both are heard.
    config.setting.levers["selector"] = "bridge";
    CHECK (mutes (config) == std::vector<bool> { true, true });
}

TEST_CASE ("only volumes are volumes")
{
    CHECK (volumeKnobs (fourKnobs(), {}) == std::vector<std::string> { "neck-volume", "bridge-volume" });
    CHECK (volumeKnobs (volumeAndTone (true, true), {}) == std::vector<std::string> { "volume" });
}
}
