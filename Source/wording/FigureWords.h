#pragma once

#include "response/CoilChoice.h"
#include "response/Figures.h"

#include <string>

namespace coldiron::wording
{
/** "much quieter, turn the amplifier up", "a little louder", "as loud" and the like. @param db  LU or dB re the take */
std::string levelChange (double db);

/** "quiet", "hums, 12 dB less than a single coil", "hums like a single coil", "hums more than a single coil (+3 dB)".
    @param playingDb  HumFigures::playingDb */
std::string humAgainstSingleCoil (double playingDb);

/** The same of an option, "silent" where it is. */
std::string hum (const Figures&);

/** "trust it up to 4.5 kHz: above, the take's own noise comes up by 14 dB. ..." and how to record a better take; empty
    where there is nothing to say. */
std::string noiseTrust (const NoiseTrust&);

/** Which coil of a pickup to keep instead, and what is won. */
std::string otherCoil (const OtherCoil&);

/** "bridge-volume at 0 mutes the other pickup" or that it does not; empty where no other volume is ever heard with it. */
std::string mutesOthers (const VolumeFigures&);
}
