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

std::string rounded (double value) { return std::to_string (std::lround (value)); }

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

/** Empty: one signal on both sides. */
std::string TakeFaultMeter::howSidesDiffer() const
{
    if (tops.size() != 2)
        return {};
    const double apart = 10.0 * std::log10 (std::max (left, 1e-30) / std::max (right, 1e-30));
    if (std::abs (apart) > 60.0)
        return apart > 0.0 ? "the right side is silent" : "the left side is silent";
    const double alike = both / std::sqrt (std::max (left * right, 1e-60));
    if (alike < -sidesAlike)
        return "one side is upside down";
    if (alike < sidesAlike)
        return "the sides differ";
    return std::abs (apart) > sidesDb ? "one side is " + rounded (std::abs (apart)) + " dB louder" : "";
}

std::vector<TakeFault> TakeFaultMeter::diagnostics (const NoiseFloor& floor) const
{
    using Kind = TakeFault::Kind;
    std::vector<TakeFault> diagnostics;
    if (peak < 1e-6f)
        return { { Kind::silent, "silent", "Nothing was recorded. Check the cable, the input chosen and the guitar's volume." } };

    if (const int places = clippedPlaces(); places > 0)
        diagnostics.push_back (
            { Kind::clipped, "clipped in " + std::to_string (places) + (places == 1 ? " place" : " places"),
              "What was cut off there is gone, and every option repeats the crackle brighter or duller. Turn the input down "
              "until the hardest stroke stays under -6 dBFS, and play it again." });
    if (const double peakDb = 20.0 * std::log10 (static_cast<double> (peak)); peakDb < quietPeakDb)
        diagnostics.push_back ({ Kind::tooQuiet, "quiet, peaks at \xe2\x88\x92" + rounded (-peakDb) + " dBFS",
                                 "Noise comes up with the take when it is turned up to playing level. Raise the input by about "
                                     + rounded (-12.0 - peakDb) + " dB." });
    if (const double noise = floor.noiseDb(); floor.isKnown && noise > noisyDb)
        diagnostics.push_back (
            { Kind::noisy, "noisy, " + rounded (-noise) + " dB under the playing",
              "Every brighter option lifts this noise, and a quiet wiring cannot show how quiet it is. Record away from screens, "
              "chargers and dimmers, and louder." });
    if (! floor.playing.empty())
        if (const double treble = bandDb (floor, 2450.0, 8000.0) - bandDb (floor, 195.0, 1010.0); treble < darkDb)
            diagnostics.push_back ({ Kind::dark, "dark, treble " + rounded (-treble) + " dB under the mids",
                                     "A tone control that was down, or a long cable. Every other option has to lift treble that "
                                     "is hardly there, with its "
                                     "noise. Play it again with volume and tone at 10." });
    if (const auto how = howSidesDiffer(); ! how.empty())
        diagnostics.push_back ({ Kind::sidesDiffer, how,
                                 "A guitar gives one signal. Two sides that differ come from an effect or a second input; "
                                 "options are computed for a dry "
                                 "take. Record the guitar alone, in mono." });
    return diagnostics;
}

std::vector<TakeFault> takeFaults (const std::vector<std::vector<float>>& channels, double, const NoiseFloor& floor)
{
    TakeFaultMeter meter;
    meter.add (channels);
    return meter.diagnostics (floor);
}
}
