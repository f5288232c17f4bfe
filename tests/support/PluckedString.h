#pragma once

#include <cstdint>
#include <string>
#include <vector>

/** A plucked string by its modes: takes whose truth is known for every coil at once.

    Losses, stiffness and the like are plausible values chosen by us, not measurements of anybody's instrument.
    Nothing here is shared with the code under test.
*/
namespace coldiron::support
{
/** One string as it is really set up. */
struct PluckedString
{
    std::string name; ///< "E2"
    double openHz = 0.0;
    double scaleMm = 0.0;   ///< nut to the nominal bridge line
    double stiffness = 0.0; ///< B of the open string at this scale
    double saddleMm = 0.0;  ///< the saddle stands this far behind the bridge line; the product is never told
    bool wound = false;
};

struct PluckedInstrument
{
    std::vector<PluckedString> strings; ///< lowest first
};

/** Six strings E2 to E4, or four E1 to G2. */
PluckedInstrument pluckedGuitar (double scaleMm);
PluckedInstrument pluckedBass (double scaleMm);

/** One note: which string, which fret, when, how long, how loud, how damped. */
struct PluckedNote
{
    int string = 0; ///< 0 is the lowest
    int fret = 0;
    double start = 0.0;  ///< [s]
    double length = 0.5; ///< [s] until it is released
    double level = 1.0;  ///< linear
    double mute = 0.0;   ///< 0 rings; 0.8 to 2 is a palm on the strings
    double pluck = 0.11; ///< place of the plectrum, share of the scale from the bridge, 0.07 to 0.16
    double softMm = 3.5; ///< width of what plucks, 2 to 6
};

struct Phrase
{
    std::string name;
    std::vector<PluckedNote> notes;
    double seconds = 0.0; ///< whole length of the take
    uint64_t seed = 1;    ///< of the scatter

    /** Which strings it plays, as the names that a take ticks. */
    std::vector<std::string> played (const PluckedInstrument&) const;
};

/** Samples of the EMF of each coil [arbitrary volts], all coils of output 1, aligned in time.
    @param distances   [coil][string], bridge line to coil in millimetres
    @param sampleRate  at least 32 kHz: partials go up to 15 kHz */
std::vector<std::vector<double>> pluckedEmfs (const PluckedInstrument&, const Phrase&,
                                              const std::vector<std::vector<double>>& distances, double sampleRate);
}
