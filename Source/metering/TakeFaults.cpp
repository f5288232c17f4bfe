#include "metering/TakeFaults.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
constexpr float nearFullScale = 0.985f;
constexpr double quietPeakDb = -30.0, noisyDb = -45.0, darkDb = -48.0, sidesDb = 1.0, sidesAlike = 0.98;

constexpr float evenTop = 0.9999f; ///< of the peak: a take turned down after it was clipped

double bandDb (const NoiseFloor& floor, double fromHz, double toHz)
{
    double sum = 0.0;
    for (size_t b = 0; b < floor.playing.size(); ++b)
        if (floor.hz[b] >= fromHz && floor.hz[b] <= toHz)
            sum += floor.playing[b];
    return 10.0 * std::log10 (std::max (sum, 1e-30));
}
}

void TakeFaultMeter::addChannel (Tops& t, const std::vector<float>& channel)
{
    for (const float sample : channel)
    {
        const float size = std::abs (sample);
        peak = std::max (peak, size);
        t.length = t.length > 0 && sample == t.last ? t.length + 1 : 1;
        t.last = sample;
        t.nearFull += t.length == 3 && size >= nearFullScale ? 1 : 0;
        if (t.length == 6 && size >= evenTop * peak)
            ++t.even[size];
    }
}

void TakeFaultMeter::add (const std::vector<std::vector<float>>& channels)
{
    tops.resize (channels.size());
    for (size_t c = 0; c < channels.size(); ++c)
        addChannel (tops[c], channels[c]);
    for (auto& t : tops)
        t.even.erase (t.even.begin(), t.even.lower_bound (evenTop * peak));
    if (channels.size() == 2)
        for (size_t i = 0; i < channels[0].size(); ++i)
        {
            const double l = channels[0][i], r = channels[1][i];
            left += l * l;
            right += r * r;
            both += l * r;
        }
}

int TakeFaultMeter::clippedPlaces() const
{
    int places = 0;
    for (const auto& t : tops)
    {
        int lower = 0;
        for (auto run = t.even.lower_bound (evenTop * peak); run != t.even.end(); ++run)
            lower += run->second;
        places = std::max (places, t.nearFull > 0 ? t.nearFull : peak > 0.01f && lower >= 3 ? lower : 0);
    }
    return places;
}

TakeFault TakeFaultMeter::howSidesDiffer() const
{
    using Sides = TakeFault::Sides;
    const auto found = [] (Sides sides, double db = 0.0) { return TakeFault { TakeFault::Kind::sidesDiffer, 0, db, sides }; };
    if (tops.size() != 2)
        return found (Sides::alike);
    const double apart = 10.0 * std::log10 (std::max (left, 1e-30) / std::max (right, 1e-30));
    if (std::abs (apart) > 60.0)
        return found (apart > 0.0 ? Sides::rightSilent : Sides::leftSilent);
    const double alike = both / std::sqrt (std::max (left * right, 1e-60));
    if (alike < -sidesAlike)
        return found (Sides::upsideDown);
    if (alike < sidesAlike)
        return found (Sides::differ);
    return std::abs (apart) > sidesDb ? found (Sides::louder, std::abs (apart)) : found (Sides::alike);
}

std::vector<TakeFault> TakeFaultMeter::faults (const NoiseFloor& floor) const
{
    using Kind = TakeFault::Kind;
    if (peak < 1e-6f)
        return { { Kind::silent } };

    std::vector<TakeFault> found;
    if (const int places = clippedPlaces(); places > 0)
        found.push_back ({ Kind::clipped, places });
    if (const double peakDb = 20.0 * std::log10 (static_cast<double> (peak)); peakDb < quietPeakDb)
        found.push_back ({ Kind::tooQuiet, 0, peakDb });
    if (const double noise = floor.noiseDb(); floor.isKnown && noise > noisyDb)
        found.push_back ({ Kind::noisy, 0, noise });
    if (! floor.playing.empty())
        if (const double treble = bandDb (floor, 2450.0, 8000.0) - bandDb (floor, 195.0, 1010.0); treble < darkDb)
            found.push_back ({ Kind::dark, 0, treble });
    if (const auto how = howSidesDiffer(); how.sides != TakeFault::Sides::alike)
        found.push_back (how);
    return found;
}

std::vector<TakeFault> takeFaults (const std::vector<std::vector<float>>& channels, double, const NoiseFloor& floor)
{
    TakeFaultMeter meter;
    meter.add (channels);
    return meter.faults (floor);
}
}
