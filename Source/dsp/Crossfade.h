#pragma once

#include <algorithm>
#include <cmath>
#include <numbers>

namespace coldiron
{
/** The share of what comes at a place of a fade: 0 at 0, 1 at 1, level at both ends. */
inline double raisedCosine (double place) { return 0.5 - 0.5 * std::cos (std::numbers::pi * place); }

/** A fade by a raised cosine from one sound to the next over a whole number of frames, whatever the blocks. Both sounds go
    on until it ends. Never allocates; for one thread. */
class Crossfade
{
public:
    /** @param frames  at least 1; the last of them has the next sound alone */
    void start (int frames)
    {
        length = std::max (1, frames);
        at = 0;
    }
    void stop() { length = at = 0; } ///< where it stands, as if it had never begun

    bool isActive() const { return length > 0; }
    int left() const { return length - at; } ///< frames

    /** The share of the next sound, 0..1. @param frame  from the first that advance() has not passed yet */
    double share (int frame) const { return raisedCosine (std::min (1.0, (at + frame + 1.0) / length)); }

    /** @returns whether it ended within these frames, which it does once */
    bool advance (int frames)
    {
        if (! isActive() || (at += frames) < length)
            return false;
        stop();
        return true;
    }

private:
    int length = 0, at = 0;
};
}
