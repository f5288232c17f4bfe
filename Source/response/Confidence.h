#pragma once

#include "guitar/Coil.h"

namespace coldiron
{
class GuitarResponse;

/** The first mark: how alike the option hears the playing. Ordered, the surest first. */
enum class Similarity { sameCoils, close, fair, rough };

/** How sure an option is: two marks, and the figures that were found for them over 96 synthesized takes. */
struct Confidence
{
    Similarity playing = Similarity::sameCoils;
    bool betweenOneAndBothOutOfPhase = false; ///< the rougher kind of rough: to or from both pickups
    Provenance guitar = Provenance::assumed;

    bool isEstimated() const { return playing != Similarity::sameCoils; }
    double thirdOctaveTypicalDb() const;   ///< rms over third octaves, typical take
    double thirdOctaveNineInTenDb() const; ///< the same, not passed by nine takes in ten
    double loudnessDb() const;             ///< +/- LU

    /** Which of the two marks is the weaker one: what is known of the guitar, or else the playing. A measured guitar never
        is; one known from ohms stands beside `close`, an assumed one beside `fair`. */
    bool isGuitarWeaker() const;
};

/** Compares which coils the two responses hear, in which proportion, at which places and signs.

    The proportions are looked at at five frequencies from 150 Hz to 2.4 kHz and the weakest mark counts:
    - the same proportion at every place, or series and parallel of the same unequal coils: same coils;
    - the same pickup places in the same proportion, other coils of them: close (basses: fair);
    - a coil heard against the others in one response and not in the other: rough, to or from several places rougher;
    - all else: fair.
    The second mark is the weakest knowledge of the pickups that either response hears. */
Confidence assessConfidence (const GuitarResponse& recorded, const GuitarResponse& option);
}
