#pragma once

#include "metering/NoiseFloor.h"

#include <map>
#include <vector>

namespace coldiron
{
/** Something about a take that a better recording would not have. */
struct TakeFault
{
    enum class Kind { silent, clipped, tooQuiet, noisy, dark, sidesDiffer };
    enum class Sides { alike, leftSilent, rightSilent, upsideDown, differ, louder };

    Kind kind = Kind::silent;
    int places = 0; ///< clipped: how often
    double db =
        0.0; ///< too quiet: peak re full scale; noisy: pauses re the playing; dark: treble re the mids; louder: one side re the other
    Sides sides = Sides::alike; ///< sidesDiffer: how

    bool operator== (const TakeFault&) const = default;
};

/** Looks at a take block by block, in constant memory. */
class TakeFaultMeter
{
public:
    void add (const std::vector<std::vector<float>>& channels); ///< equal lengths; as many channels each time
    std::vector<TakeFault> faults (const NoiseFloor&) const;    ///< at the take's end

private:
    /** One channel's equal samples in a row, and the flat tops found. */
    struct Tops
    {
        float last = 0.0f;
        int length = 0;            ///< of the run at hand
        int nearFull = 0;          ///< runs of three or more near full scale
        std::map<float, int> even; ///< level of a run of six or more -> how many; those near the channels' peak so far
    };

    std::vector<Tops> tops;
    float peak = 0.0f;
    double left = 0.0, right = 0.0, both = 0.0; ///< sums of squares and products of two channels

    void addChannel (Tops&, const std::vector<float>&);
    int clippedPlaces() const;
    TakeFault howSidesDiffer() const;
};

/** Looks at the samples alone.
    - clipped: runs of three or more equal samples within 0.13 dB of full scale; or, of a take turned down afterwards, three
      runs or more of six equal ones at its own peak
    - too quiet: peaks under -30 dBFS
    - noisy: pauses less than 45 dB under the playing
    - dark: 2.5 to 8 kHz more than 48 dB under 200 Hz to 1 kHz while it plays: recorded with the tone rolled down
    - sides differ: two channels that are not one signal at one level (within 1 dB, correlation 0.98)
    The worst to hear first. Empty: nothing to say. */
std::vector<TakeFault> takeFaults (const std::vector<std::vector<float>>& channels, double sampleRate, const NoiseFloor&);
}
