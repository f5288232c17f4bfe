#pragma once

#include "filter/ModalFilter.h"
#include "response/GuitarResponse.h"

#include <vector>

namespace coldiron
{
/** Playing as loud as the take is taken to be this at the jack [V rms], so that hiss has something to stand against.
    Common practice of the trade, no source: a moderate passive pickup, firmly played. */
inline constexpr double playingVolts = 0.1;

/** The filter that makes a harness's thermal noise out of white noise of unit variance, in microvolts at the input:
    its magnitude is sqrt (4 k T Re Z (f) fs / 2). Harness, cable and input at 293.15 K, as Figures::hissUv counts them.
    @param sampleRate  [Hz] 8 kHz to 768 kHz */
ModalFilter hissFilter (const GuitarResponse&, double sampleRate);

/** Full scale per microvolt where a take of this loudness plays playingVolts and an amplifier lifts what is quiet by
    gainDb over the playing. 0 dB: hiss as far below the playing as it is at the jack. */
double hissScaleFor (double takeLufs, double gainDb);
}
