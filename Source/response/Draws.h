#pragma once

#include "guitar/GuitarCircuit.h"
#include "strings/StringDraw.h"
#include "strings/StringSet.h"

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

namespace coldiron
{
/** Fixed-seed random values that are the same on every machine: a hash of the draw's number and a name, so that the
    same part draws the same value in whatever order or harness it stands. */
class Draw
{
public:
    explicit Draw (int number) : seed (static_cast<uint64_t> (number)) {}

    double uniform (const std::string& name) const; ///< -1 .. 1
    double normal (const std::string& name) const;  ///< standard normal

private:
    uint64_t seed;
    uint64_t bits (const std::string& name, uint64_t salt) const;
};

/** How far a pickup's values may be off, as shares of the value; uniform to both sides. */
struct PickupTolerance
{
    double inductance = 0.0, capacitance = 0.0, loss = 0.0, resistance = 0.0;
    bool coupling = false; ///< k is unknown between 0.05 and 0.3 where the coils are coupled at all
};

/** assumed: L 12 %, C 25 %, loss 35 %, DCR 10 %, k 0.05 to 0.3; from ohms: L 8 %, C 20 %, loss 30 %, DCR 2 %, k too;
    measured: nothing. */
PickupTolerance toleranceOf (Provenance);

/** Factors for every part of a harness and for its cable (15 %) in one draw; pots, capacitors and resistors
    bend by their own tolerance. */
std::vector<std::pair<std::string, PartFactors>> drawParts (const Harness&, const Draw&);

/** 6 dB normal per string, 6 dB normal per string and octave, sigma 0.06. */
StringDraw drawStrings (const StringSet&, const Draw&);
}
