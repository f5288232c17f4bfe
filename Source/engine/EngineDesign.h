#pragma once

#include "engine/HumCycle.h"
#include "filter/FilterRunner.h"
#include "response/TransferFunction.h"

#include <array>

namespace coldiron
{
/** All that is needed to sound one option, or a take as recorded, at one rate: for the audio thread and offline alike. */
struct EngineDesign
{
    ModalFilter filter;
    double gain = 1.0; ///< linear, on the filter; level matching. Hum and hiss get it too
    HumCycle hum;      ///< of coils at 0 dB against the take
    ModalFilter hiss =
        ModalFilter::silence (0.0);   ///< makes it from white noise of unit variance, in full scale at 0 dB; gain is on top
    std::array<float, 24> probeDb {}; ///< the filter and gain from 40 Hz to 16 kHz, to judge how far a switch goes

    void probe(); ///< fills probeDb

    /** Everything but the gain, not probed yet. Hum and hiss stand in the recording's own scale: what one coil gives there, a
        take of that loudness has.
        @param change    nullptr: the take as recorded
        @param heard     what hums and hisses
        @param takeLufs  not finite: no hum, no hiss
        @param hisses    whether hiss is wanted: its filter is left away otherwise */
    static EngineDesign of (const TransferFunction* change, const GuitarResponse& heard, const MainsField&, double takeLufs,
                            double sampleRate, bool hisses);
};
}
