#pragma once

#include <string>
#include <vector>

namespace coldiron
{
/** One string of the guitar, open. */
struct GuitarString
{
    std::string name;     ///< "E2", or "97.5 Hz"
    double hz = 0.0;      ///< open frequency, > 0
    double scaleMm = 0.0; ///< > 0

    double waveSpeed() const { return 2.0e-3 * scaleMm * hz; } ///< [m/s]
};

/** The strings of a guitar, lowest first, and which of them a take plays. */
struct StringSet
{
    std::vector<GuitarString> strings;
    std::vector<bool> played; ///< as long as strings; all true when nothing is ticked
    int only = -1;            ///< >= 0: this string alone is asked for, whether it is played or not

    bool isBass() const; ///< lowest string below 60 Hz: no damping of wound strings is assumed
};

/** Where one coil is, as the strings see it. */
struct CoilPosition
{
    std::vector<double> distanceMm; ///< from the bridge, for each string (slant taken in)
    std::vector<bool> hears;        ///< for each string
};

/** Frequency of a note name ("E2", "F#1", "Bb0"), ISO 16: A4 = 440 Hz. Returns 0 for what is no note. */
double noteHz (const std::string& name);

/** A coil at bridgeMm with slantMm over the set: the lowest string is slant/2 farther from the bridge, the highest slant/2
    nearer. @param hears  names of the strings it hears; empty: all */
CoilPosition coilPositionAt (const StringSet&, double bridgeMm, double slantMm, const std::vector<std::string>& hears);
}
