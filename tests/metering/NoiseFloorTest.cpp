#include "response/Figures.h"
#include "response/Responses.h"
#include "response/ThermalNoise.h"

#include <catch2/catch.hpp>

namespace noiseTest
{
using namespace coldiron;
using namespace coldiron::support;

TEST_CASE ("thermal noise of a resistor and of an RC")
{
    // v = sqrt (4 k T R B), k = 1.380649e-23 J/K exactly (SI): 10 kohm, 20 kHz, 290 K give 1.78972 uV.
    const double resistor = thermalNoise ([] (double) { return std::complex<double> (10e3); }, 1e-3, 20000.0, 290.0);
    CHECK (1e6 * resistor == Approx (1.78972).epsilon (1e-4));

    // 600 pF across any R over the whole band at 293.15 K: sqrt (k T / C) = 2.59723 uV.
    for (const double ohms : { 10e3, 220e3 })
    {
        const auto network = [ohms] (double hz) { return ohms / std::complex<double> (1.0, 2.0 * M_PI * hz * ohms * 600e-12); };
        CHECK (1e6 * thermalNoise (network, 1e-2, 1e10) == Approx (2.59723).epsilon (1e-4));
    }
}

TEST_CASE ("the same through a circuit of ours")
{
    // A coil whose inductance is nothing is a resistor: with a volume at 10 and 600 pF of cable, again sqrt (k T / C).
    const auto harness = oneVolumeOneTone (single ("bridge", 8e3, 0.0, 0.0), 500e3, "bridge.coil.start", "bridge.coil.finish");
    const Load cable { 600e-12, 1e12, 0.0 };
    Setting closed;
    closed.knobs["tone"] = 10.0;
    const GuitarResponse response = voiceOf (harness, closed, cable);
    const double hiss = thermalNoise ([&] (double hz) { return response.outputImpedance (hz); }, 20.0, 1e9);
    // The 22 nF of the tone take no part in the noise of the tip beyond Re Z; equipartition at the cable's 600 pF holds.
    CHECK (1e6 * hiss == Approx (2.59723).epsilon (2e-3));
}

TEST_CASE ("hiss of a harness follows Re Z")
{
    CircuitConfig config { seriesHumbucker(), {}, {}, sixStrings() };
    const auto open = computeFigures (config, config);
    CHECK (open.hissUv > 1.0); // 8 kohm alone would give 1.6 uV over 20 kHz
    CHECK (open.hissUv < 20.0);
    CircuitConfig down = config;
    down.setting.knobs["volume"] = 0.0;
    CHECK (computeFigures (config, down).hissUv < 0.1 * open.hissUv); // the jack is shorted by the wiper's ohm
}
}
