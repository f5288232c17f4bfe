#include "metering/Spectrum.h"

#include <unsupported/Eigen/FFT>

#include <cmath>
#include <complex>
#include <numbers>

namespace coldiron
{
namespace
{
constexpr int meterBandsPerOctave = 24;
constexpr double lowestMeterHz = 20.0;

size_t spectrumWindow (double sampleRate)
{
    size_t window = 256;
    while (static_cast<double> (window) < 0.3 * sampleRate)
        window *= 2;
    return window;
}
}

struct SpectrumMeter::Impl
{
    const double rate;
    const size_t window = spectrumWindow (rate);
    Eigen::FFT<double> fft;
    std::vector<double> piece = std::vector<double> (window), shape = piece, sums = std::vector<double> (window / 2 + 1, 0.0);
    std::vector<std::complex<double>> bins;
    std::vector<std::vector<float>> held; ///< from the beginning of the window at hand, less than a window long

    explicit Impl (double sampleRate) : rate (sampleRate)
    {
        fft.SetFlag (Eigen::FFT<double>::HalfSpectrum);
        for (size_t i = 0; i < window; ++i)
            shape[i] =
                0.5 - 0.5 * std::cos (2.0 * std::numbers::pi * (static_cast<double> (i) + 0.5) / static_cast<double> (window));
    }

    /** The windows that begin at every half window from 0 up to end; what lacks of the last counts as silence. */
    void take (const std::vector<float>& samples, size_t end)
    {
        for (size_t from = 0; from < end; from += window / 2)
        {
            for (size_t i = 0; i < window; ++i)
                piece[i] = from + i < samples.size() ? shape[i] * static_cast<double> (samples[from + i]) : 0.0;
            fft.fwd (bins, piece);
            for (size_t k = 0; k < sums.size(); ++k)
                sums[k] += std::norm (bins[k]);
        }
    }
};

SpectrumMeter::SpectrumMeter (double sampleRate) : impl (std::make_unique<Impl> (sampleRate)) {}
SpectrumMeter::~SpectrumMeter() = default;
SpectrumMeter::SpectrumMeter (SpectrumMeter&&) noexcept = default;
SpectrumMeter& SpectrumMeter::operator= (SpectrumMeter&&) noexcept = default;

void SpectrumMeter::add (const std::vector<std::vector<float>>& channels)
{
    impl->held.resize (channels.size());
    for (size_t c = 0; c < channels.size(); ++c)
    {
        auto& held = impl->held[c];
        held.insert (held.end(), channels[c].begin(), channels[c].end());
        const size_t step = impl->window / 2,
                     whole = held.size() < impl->window ? 0 : ((held.size() - impl->window) / step + 1) * step;
        impl->take (held, whole);
        held.erase (held.begin(), held.begin() + static_cast<std::ptrdiff_t> (whole));
    }
}

Spectrum SpectrumMeter::spectrum()
{
    for (auto& held : impl->held)
    {
        impl->take (held, held.size());
        held.clear();
    }
    const auto& sums = impl->sums;
    Spectrum spectrum;
    double total = 0.0;
    for (size_t k = 1; k < sums.size(); ++k)
    {
        const double hz = static_cast<double> (k) * impl->rate / static_cast<double> (impl->window);
        const double band = std::round (meterBandsPerOctave * std::log2 (hz / lowestMeterHz));
        if (band < 0.0 || hz > 0.45 * impl->rate)
            continue;
        const double centre = lowestMeterHz * std::exp2 (band / meterBandsPerOctave);
        if (spectrum.hz.empty() || centre > spectrum.hz.back())
        {
            spectrum.hz.push_back (centre);
            spectrum.power.push_back (0.0);
        }
        spectrum.power.back() += sums[k];
        total += sums[k];
    }
    return total > 0.0 ? spectrum : Spectrum {};
}

Spectrum takeSpectrum (const std::vector<std::vector<float>>& channels, double sampleRate)
{
    SpectrumMeter meter (sampleRate);
    meter.add (channels);
    return meter.spectrum();
}
}
