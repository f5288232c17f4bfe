#include "support/Fft.h"
#include "support/Ngspice.h"
#include "support/OracleNetlist.h"
#include "support/Truth.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

namespace coldiron::support
{
namespace
{
constexpr size_t tapsAt48 = 16384; // a third of a second: the slowest tone control has died away long before

/** Impulse response of a coil's way to the input, from its response at the bins of one FFT; what comes before time
    zero stands at the end. The band ends softly, so nothing rings. */
std::vector<double> impulseResponse (const std::vector<std::complex<double>>& response, double sampleRate)
{
    std::vector<std::complex<double>> bins (response.size() + 1);
    bins[0] = response[0].real();
    for (size_t i = 0; i < response.size(); ++i)
    {
        const double share = 0.5 * static_cast<double> (i + 1) / static_cast<double> (response.size()); // of the rate
        const double hz = share * sampleRate;
        const double into = std::clamp ((hz - 16000.0) / (0.48 * sampleRate - 16000.0), 0.0, 1.0);
        bins[i + 1] = response[i] * 0.5 * (1.0 + std::cos (std::numbers::pi * into));
    }
    return signalOf (bins);
}

/** Adds the bins of a signal sent through an impulse response. */
void addHeard (std::vector<std::complex<double>>& sum, const std::vector<double>& signal, const std::vector<double>& impulse,
               double gain)
{
    const size_t n = 2 * (sum.size() - 1), half = impulse.size() / 2;
    std::vector<double> wrapped (n, 0.0);
    for (size_t i = 0; i < half; ++i)
    {
        wrapped[i] = impulse[i];
        wrapped[n - half + i] = impulse[half + i];
    }
    const auto bins = spectrumOf (signal, n), filter = spectrumOf (wrapped, n);
    for (size_t i = 0; i < bins.size(); ++i)
        sum[i] += gain * bins[i] * filter[i];
}

/** Below -160 dB at every frequency: a coil that is switched off. */
bool isUnheard (const std::vector<std::complex<double>>& response)
{
    return std::all_of (response.begin(), response.end(), [] (const auto& h) { return std::abs (h) < 1e-8; });
}
}

std::vector<double> throughHarness (const Harness& harness, const Setting& setting, const Load& load,
                                    const std::vector<std::vector<double>>& emfs, double sampleRate)
{
    const auto places = coilPlaces (harness);
    if (places.size() != emfs.size())
        throw std::invalid_argument ("throughHarness: one EMF for each coil");
    const auto taps = powerOfTwoAtLeast (static_cast<size_t> (tapsAt48 * sampleRate / 48000.0));
    const size_t frames = emfs.front().size();
    std::vector<std::complex<double>> sum (powerOfTwoAtLeast (frames + taps) / 2 + 1);
    for (size_t k = 0; k < places.size(); ++k)
    {
        OracleOptions alone;
        alone.onlyCoil = static_cast<int> (k);
        const OracleNetlist netlist (harness, setting, load, alone);
        if (netlist.shorted)
            return std::vector<double> (frames, 0.0);
        if (netlist.coils.at (k) != places[k].pickup + "." + places[k].coil)
            throw std::logic_error ("throughHarness: coils in another order");
        const auto answer = Ngspice::acLinear (netlist.lines, { "tip" }, static_cast<int> (taps / 2),
                                               sampleRate / static_cast<double> (taps), 0.5 * sampleRate);
        if (! isUnheard (answer.values[0]))
            addHeard (sum, emfs[k], impulseResponse (answer.values[0], sampleRate), places[k].drive);
    }
    auto heard = signalOf (sum);
    heard.resize (frames);
    return heard;
}
}
