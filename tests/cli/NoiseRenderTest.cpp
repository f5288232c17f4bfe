// Hum and hiss end to end: what `render` adds to a take, measured on its files.
#include "Run.h"

#include <catch2/catch.hpp>
#include <sndfile.h>

#include <cmath>
#include <iostream>

namespace noiseRenderTest
{
using namespace coldiron::support;

namespace
{
constexpr int rate = 48000, seconds = 10;
constexpr double amplitude = 0.1; ///< of the take, a 997 Hz sine

double rms (const std::vector<float>& samples)
{
    double sum = 0.0;
    for (const double s : samples)
        sum += s * s;
    return std::sqrt (sum / static_cast<double> (samples.size()));
}

double db (double ratio) { return 20.0 * std::log10 (ratio); }

/** Coils alone on the jack, no pots, no cable. `coils`: objects of a pickup; `wires`: chains; `turns`: of the south coil. */
std::string bareJob (const std::string& pickup, const std::string& wires, const std::string& cable = "0")
{
    return R"({ "coldiron": "job 1", "title": "Bare coils", "guitar": { "coldiron": "guitar 1", "name": "Bare coils", "scale_mm": 647.7,
      "strings": ["E2"], "parts": { "bridge": { "pickup": { "coldiron": "pickup 1", "name": "Bare", "coils": { )"
           + pickup + R"( } }, "bridge_mm": 44 },
      "jack": { "jack": "mono" } }, "wires": [ )"
           + wires + R"( ] },
      "recording": { "cable": ")"
           + cable + R"(", "input": { "resistance": 1e12, "capacitance": 0 } },
      "takes": [ { "file": "sine.wav" } ], "options": { "A": { "name": "The same" } } })";
}

std::string twoCoils (double turns, const std::string& southOhms = "4k")
{
    return R"("north": { "dcr": "4k", "inductance": 2, "magnet": "north", "turns": 5000 }, "south": { "dcr": ")" + southOhms
           + R"(", "inductance": )" + (southOhms == "4k" ? "2" : "3.3171") + R"(, "magnet": "south", "turns": )"
           + std::to_string (turns) + " }";
}

const std::string series =
    R"(["bridge.north.start", "jack.tip"], ["bridge.north.finish", "bridge.south.finish"], ["bridge.south.start", "ground"])";
const std::string parallel =
    R"(["bridge.north.start", "jack.tip"], ["bridge.north.finish", "ground"], ["bridge.south.finish", "jack.tip"], ["bridge.south.start", "ground"])";
const std::string split =
    R"(["bridge.north.start", "jack.tip"], ["bridge.north.finish", "bridge.south.finish", "ground"], ["bridge.south.start", "ground"])";

/** What render adds with these arguments to a take that stays as it is. */
std::vector<float> added (const std::string& job, const std::vector<std::string>& arguments)
{
    const Fixture fixture;
    std::vector<float> sine (static_cast<size_t> (rate) * seconds);
    for (size_t i = 0; i < sine.size(); ++i)
        sine[i] = static_cast<float> (amplitude * std::sin (2.0 * M_PI * 997.0 * static_cast<double> (i) / rate));
    writeAudio (fixture.path ("sine.wav"), sine, 1, rate, SF_FORMAT_WAV | SF_FORMAT_FLOAT);
    fixture.write ("job.json", job);
    std::vector<std::string> all { "render", fixture.path ("job.json"), "--out", fixture.path ("out"), "--option", "recorded" };
    all.insert (all.end(), arguments.begin(), arguments.end());
    const auto ran = run (all);
    INFO (ran.err);
    REQUIRE (ran.exitCode == 0);
    auto wet = readAudio (fixture.path ("out/now.wav")).samples;
    REQUIRE (wet.size() == sine.size());
    for (size_t i = 0; i < wet.size(); ++i)
        wet[i] -= sine[i];
    return wet;
}

double humDb (const std::string& job, std::vector<std::string> more = {})
{
    more.insert (more.end(), { "--hum", "0" });
    return db (rms (added (job, more)));
}
}

TEST_CASE ("hum in rendered audio: split, series, parallel, turns that differ")
{
    // 997 Hz, so one coil at 0 dB hums as loud as the take itself (ITU-R BS.1770: the K curve is 0 dB there).
    const double oneCoil = humDb (bareJob (twoCoils (5000.0), split));
    CHECK (oneCoil == Approx (db (amplitude / std::sqrt (2.0))).margin (0.02));
    // Turns given as equal are heard 2 % unlike: 20 log10 (0.02) = -33.98 dB in series, and half of that in parallel [calc].
    CHECK (humDb (bareJob (twoCoils (5000.0), series)) - oneCoil == Approx (-33.98).margin (0.02));
    CHECK (humDb (bareJob (twoCoils (5000.0), parallel)) - oneCoil == Approx (-40.0).margin (0.02));

    // Turns that differ by delta leave 20 log10 (delta): 1, 2, 5 %: -40.00, -33.98, -26.02 dB of one coil's hum [calc].
    for (const auto& [turns, expected] : { std::pair { 5050.0, -40.00 }, { 5100.0, -33.98 }, { 5250.0, -26.02 } })
    {
        const double left = humDb (bareJob (twoCoils (turns), series)) - oneCoil;
        std::cout << "Rendered hum of a series humbucker with " << turns << " turns against 5000: " << left
                  << " dB of one coil's\n";
        CHECK (left == Approx (expected).margin (0.02));
    }

    // 4.1k with 6.8k coils in parallel leave -12 dB at 100 Hz [calc: (6.8 - 4.1)/(6.8 + 4.1) = -12.12 dB]; here 4k with
    // 6.6342k and inductances in the same ratio, so at every harmonic.
    CHECK (humDb (bareJob (twoCoils (5000.0, "6634.2"), parallel)) - oneCoil == Approx (-12.12).margin (0.03));
}

TEST_CASE ("the facing angle takes the hum along by its cosine, buzz keeps its level and adds harmonics")
{
    const std::string job = bareJob (twoCoils (5000.0), split);
    const double facing = humDb (job);
    CHECK (humDb (job, { "--facing", "60" }) - facing == Approx (db (0.5)).margin (0.01));
    CHECK (humDb (job, { "--facing", "45" }) - facing == Approx (db (std::sqrt (0.5))).margin (0.01));
    for (const float s : added (job, { "--hum", "0", "--facing", "90" }))
        REQUIRE (std::abs (s) < 1.3e-7f);                                    // a step of 24 bits
    CHECK (humDb (job, { "--buzz", "1" }) == Approx (facing).margin (0.02)); // shares of the same rms

    // More of it lies above the 13th harmonic: the first difference, a high-pass, says so.
    const auto steep = [&] (const std::string& buzz)
    {
        auto hum = added (job, { "--hum", "0", "--buzz", buzz });
        for (size_t i = hum.size() - 1; i > 0; --i)
            hum[i] -= hum[i - 1];
        return db (rms (hum));
    };
    CHECK (steep ("1") > steep ("0") + 6.0);
}

TEST_CASE ("hiss in rendered audio is 4kTR")
{
    // v = sqrt (4 k T R B), k = 1.380649e-23 J/K (SI); 10 kohm over 24 kHz at 293.15 K. Playing counts as 0.1 V rms, and
    // the take's own rms stands for it; the amplifier lifts the hiss by 80 dB.
    const double perVolt = amplitude / std::sqrt (2.0) / 0.1 * 1e4;
    const std::string coil = R"("coil": { "dcr": "10k", "inductance": "100u" })",
                      direct = R"(["bridge.coil.start", "jack.tip"], ["bridge.coil.finish", "ground"])";
    const double resistor = rms (added (bareJob (coil, direct), { "--hiss", "80" })) / perVolt;
    const double expected = std::sqrt (4.0 * 1.380649e-23 * 293.15 * 10e3 * 24e3);
    std::cout << "Rendered hiss of 10 kohm: " << 1e6 * resistor << " uV, expected " << 1e6 * expected << " uV\n";
    CHECK (db (resistor / expected) == Approx (0.0).margin (0.05)); // 480000 samples: 0.01 dB of chance

    // 600 pF across any R over the whole band at 293.15 K: sqrt (k T / C) = 2.59723 uV. Across 1 Mohm 24 kHz hold
    // 2/pi atan (24 kHz / 265 Hz) of its power.
    const std::string million = R"("coil": { "dcr": "1M", "inductance": "100u" })";
    const double capacitor = rms (added (bareJob (million, direct, "600p"), { "--hiss", "80" })) / perVolt;
    const double share = std::atan (24e3 * 2.0 * M_PI * 1e6 * 600e-12) * 2.0 / M_PI;
    CHECK (1e6 * capacitor == Approx (2.59723 * std::sqrt (share)).epsilon (0.01));

    // A tenth of the gain is a tenth of the hiss.
    const double less = rms (added (bareJob (coil, direct), { "--hiss", "60" })) / perVolt;
    CHECK (db (less / resistor) == Approx (-20.0).margin (0.01));
}
}
