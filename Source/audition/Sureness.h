#pragma once

#include "guitar/Coil.h"

#include <string>

namespace coldiron
{
class Voice;

/** The first mark: how alike the option hears the playing. Ordered, the surest first. */
enum class Playing { sameCoils, close, fair, rough };

/** How sure an option is: two marks, and the figures that the study promises for them. */
struct Sureness
{
    Playing playing = Playing::sameCoils;
    bool betweenOneAndBothOutOfPhase = false;   ///< the rougher kind of rough: to or from both
    Knowledge guitar = Knowledge::assumed;

    bool isEstimated() const { return playing != Playing::sameCoils; }
    double thirdOctaveTypicalDb() const;        ///< DESIGN's table, rms
    double thirdOctaveNineInTenDb() const;
    double loudnessDb() const;                  ///< +/- LU
    std::string playingWord() const;            ///< "same coils", "close", "fair", "rough"
    std::string guitarWord() const;             ///< "measured", "from ohms", "assumed"
    std::string pillWord() const;               ///< the weaker of the two
    std::string explanation() const;            ///< the sentences for people
};

/** Compares which coils the two voices hear, in which proportion, at which places and signs. */
Sureness judge (const Voice& recorded, const Voice& option);
}
