#include "engine/EngineDesign.h"

#include "response/Hiss.h"

#include <cmath>

namespace coldiron
{
void EngineDesign::probe()
{
    for (size_t i = 0; i < probeDb.size(); ++i)
    {
        const double hz = 40.0 * std::pow (400.0, static_cast<double> (i) / (probeDb.size() - 1));
        probeDb[i] = static_cast<float> (20.0 * std::log10 (std::abs (filter.response (hz)) * gain + 1e-6));
    }
}

EngineDesign EngineDesign::of (const TransferFunction* change, const GuitarResponse& heard, const MainsField& field,
                               double takeLufs, double sampleRate, bool hisses)
{
    EngineDesign design;
    design.filter =
        change == nullptr ? ModalFilter::unity (sampleRate) : designFilter (*change, *FilterDesigner::shared (sampleRate));
    design.hum = HumCycle::of (heard, field, humEmfFor (takeLufs, 0.0));
    design.hiss = ModalFilter::silence (sampleRate);
    if (hisses)
        design.hiss = hissFilter (heard, sampleRate).scaled (hissScaleFor (takeLufs, 0.0));
    return design;
}
}
