#pragma once

#include "support/PluckedString.h"
#include "support/PluckedStringScatter.h"

#include <string>
#include <vector>

namespace coldiron::support
{
/** Writes a phrase in beats, with the small unevenness of a hand. */
class PhraseWriter
{
public:
    PhraseWriter (std::string name, double beatsPerMinute, uint64_t seed);

    /** The plectrum's usual place (share of the scale from the bridge) and softness [mm] from here on. */
    PhraseWriter& picking (double pluck, double softMm);

    PhraseWriter& note (int string, int fret, double beat, double beats, double level = 1.0, double mute = 0.0);

    /** One fret a string, lowest string first, -1 for a string left out. Down begins at the lowest. */
    PhraseWriter& strum (const std::vector<int>& frets, double beat, double beats, double level = 1.0, bool down = true,
                         double mute = 0.0);

    /** Notes in a row, each as long as the step (or let ring for `ring` beats). */
    struct Fingering
    {
        int string, fret;
    };
    PhraseWriter& row (const std::vector<Fingering>&, double beat, double step, double ring, double level = 1.0,
                       double mute = 0.0);

    Phrase done (double beats) const; ///< the whole length in beats

private:
    Phrase phrase;
    double beatSeconds;
    double pluck = 0.11, softMm = 3.5;
    Scatter hand;
};
}
