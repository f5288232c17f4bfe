#include "metering/NoiseFloor.h"

#include <unsupported/Eigen/FFT>

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>

namespace coldiron
{
namespace
{
constexpr double pauseRangeDb = 4.0, leastPauseSeconds = 0.25, leastBelowPlayingDb = 20.0;
constexpr double tiny = 1e-18; ///< mean square: -180 dB, under what 24 bits and any converter give

double inDb (double power) { return 10.0 * std::log10 (std::max (power, 1e-30)); }

/** One stretch of the take: power by third octave, and of all bands together. */
struct Stretch
{
    std::vector<double> bands;
    double whole = 0.0;
};

std::vector<double> bandCentres (double sampleRate)
{
    std::vector<double> hz;
    for (int band = -13; band <= 12; ++band)
        if (const double centre = 1000.0 * std::pow (10.0, band / 10.0); centre * std::pow (10.0, 0.05) < 0.48 * sampleRate)
            hz.push_back (centre);
    return hz;
}

size_t windowFor (double sampleRate)
{
    size_t window = 256;
    while (static_cast<double> (window) < 0.08 * sampleRate)
        window *= 2;
    return window;
}

double median (std::vector<double> values)
{
    const auto middle = values.begin() + static_cast<std::ptrdiff_t> (values.size() / 2);
    std::nth_element (values.begin(), middle, values.end());
    return *middle;
}
}

struct NoiseFloorMeter::Impl
{
    const double rate;
    const size_t window = windowFor (rate), most;
    std::vector<double> hz = bandCentres (rate), shape = std::vector<double> (window), piece = shape;
    std::vector<long> bandOf; ///< by bin of the transform
    double energy = 0.0;
    Eigen::FFT<double> fft;
    std::vector<std::complex<double>> bins;
    std::vector<std::vector<float>> held; ///< from the beginning of the stretch at hand
    std::vector<Stretch> stretches;
    size_t seen = 0, stride = 1; ///< stretches begun; every stride-th of them is kept

    explicit Impl (double sampleRate)
        : rate (sampleRate), most (static_cast<size_t> (600.0 * 2.0 * rate / static_cast<double> (window)) + 2)
    {
        for (size_t i = 0; i < window; ++i)
        {
            shape[i] =
                0.5 - 0.5 * std::cos (2.0 * std::numbers::pi * (static_cast<double> (i) + 0.5) / static_cast<double> (window));
            energy += shape[i] * shape[i];
        }
        fft.SetFlag (Eigen::FFT<double>::HalfSpectrum);
        for (size_t k = 0; k <= window / 2; ++k)
            bandOf.push_back (
                k == 0 ? -1
                       : std::lround (10.0
                                      * std::log10 (static_cast<double> (k) * rate / static_cast<double> (window) / hz.front())));
    }

    void take (size_t from)
    {
        if (seen++ % stride != 0)
            return;
        if (stretches.size() == most)
        {
            for (size_t i = 0; 2 * i < stretches.size(); ++i)
                std::swap (stretches[i], stretches[2 * i]);
            stretches.resize ((stretches.size() + 1) / 2);
            stride *= 2;
            if ((seen - 1) % stride != 0)
                return;
        }
        // A bin's share of the mean square, both sides of the spectrum, all channels meant.
        const double scale = 2.0 / (static_cast<double> (window) * energy * static_cast<double> (held.size()));
        Stretch stretch;
        stretch.bands.assign (hz.size(), 0.0);
        for (const auto& channel : held)
        {
            for (size_t i = 0; i < window; ++i)
                piece[i] = shape[i] * static_cast<double> (channel[from + i]);
            fft.fwd (bins, piece);
            for (size_t k = 1; k + 1 < bins.size(); ++k)
                if (const long band = bandOf[k]; band >= 0 && band < static_cast<long> (hz.size()))
                    stretch.bands[static_cast<size_t> (band)] += scale * std::norm (bins[k]);
        }
        for (double band : stretch.bands)
            stretch.whole += band;
        stretches.push_back (std::move (stretch));
    }
};

NoiseFloorMeter::NoiseFloorMeter (double sampleRate) : impl (sampleRate >= 8000.0 ? std::make_unique<Impl> (sampleRate) : nullptr)
{
}
NoiseFloorMeter::~NoiseFloorMeter() = default;
NoiseFloorMeter::NoiseFloorMeter (NoiseFloorMeter&&) noexcept = default;
NoiseFloorMeter& NoiseFloorMeter::operator= (NoiseFloorMeter&&) noexcept = default;

void NoiseFloorMeter::add (const std::vector<std::vector<float>>& channels)
{
    if (impl == nullptr || channels.empty())
        return;
    impl->held.resize (channels.size());
    for (size_t c = 0; c < channels.size(); ++c)
        impl->held[c].insert (impl->held[c].end(), channels[c].begin(), channels[c].end());
    size_t from = 0;
    for (; from + impl->window <= impl->held.front().size(); from += impl->window / 2)
        impl->take (from);
    for (auto& channel : impl->held)
        channel.erase (channel.begin(), channel.begin() + static_cast<std::ptrdiff_t> (from));
}

double NoiseFloor::noiseDb() const
{
    if (! isKnown)
        return -300.0;
    double quiet = 0.0, loud = 0.0;
    for (size_t i = 0; i < hz.size(); ++i)
    {
        quiet += noise[i];
        loud += playing[i];
    }
    return inDb (quiet) - inDb (loud);
}

NoiseFloor NoiseFloorMeter::floor()
{
    NoiseFloor floor;
    if (impl == nullptr || impl->held.empty())
        return floor;
    const double sampleRate = impl->rate;
    const size_t window = impl->window, channels = impl->held.size();
    floor.hz = impl->hz;
    auto& stretches = impl->stretches;
    if (stretches.size() < 4)
        return floor;
    std::sort (stretches.begin(), stretches.end(), [] (const Stretch& a, const Stretch& b) { return a.whole < b.whole; });

    floor.playing.assign (floor.hz.size(), 0.0);
    const size_t half = stretches.size() / 2;
    double playingWhole = 0.0;
    for (size_t i = half; i < stretches.size(); ++i)
        for (size_t b = 0; b < floor.hz.size(); ++b)
        {
            floor.playing[b] += stretches[i].bands[b] / static_cast<double> (stretches.size() - half);
            playingWhole += stretches[i].bands[b] / static_cast<double> (stretches.size() - half);
        }

    const auto live = std::find_if (stretches.begin(), stretches.end(), [] (const Stretch& s) { return s.whole > tiny; });
    floor.isSilent = live != stretches.begin();
    // The lowest twentieth of what is left is taken for the bottom: one stretch alone may be a lucky one.
    const auto left = static_cast<size_t> (stretches.end() - live);
    if (left < 4)
        return floor;
    const double bottom = (live + static_cast<std::ptrdiff_t> (left / 20))->whole;
    const auto end =
        std::find_if (live, stretches.end(), [&] (const Stretch& s) { return inDb (s.whole) > inDb (bottom) + pauseRangeDb; });
    const auto pauses = static_cast<size_t> (end - live);

    floor.pauseSeconds = static_cast<double> (pauses * impl->stride + 1) * 0.5 * static_cast<double> (window) / sampleRate;
    floor.isKnown =
        ! floor.isSilent && floor.pauseSeconds >= leastPauseSeconds && inDb (bottom) < inDb (playingWhole) - leastBelowPlayingDb;

    for (size_t b = 0; b < floor.hz.size(); ++b)
    {
        std::vector<double> here;
        for (auto stretch = live; stretch != end; ++stretch)
            here.push_back (stretch->bands[b]);
        // The median of a chi-squared value is under its mean: (1 - 2/(9 k))^3, k two for every bin, and a Hann window
        // leaves two thirds of them independent.
        const double bins = floor.hz[b] * 0.2316 * static_cast<double> (window) / sampleRate; // 10^0.05 - 10^-0.05
        const double freedom = std::max (2.0, 2.0 * bins / 1.5) * static_cast<double> (channels);
        floor.noise.push_back (median (here) / std::pow (1.0 - 2.0 / (9.0 * freedom), 3.0));
    }
    return floor;
}

NoiseFloor measureNoiseFloor (const std::vector<std::vector<float>>& channels, double sampleRate)
{
    NoiseFloorMeter meter (sampleRate);
    meter.add (channels);
    return meter.floor();
}
}
