#include "response/Hiss.h"

#include "filter/FilterDesigner.h"
#include "response/Hum.h"
#include "response/ThermalNoise.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
ModalFilter hissFilter (const GuitarResponse& response, double sampleRate)
{
    const auto designer = FilterDesigner::shared (sampleRate);
    std::vector<double> microvolts;
    for (const double hz : designer->gridHz())
        microvolts.push_back (
            1e6
            * std::sqrt (4.0 * boltzmann * roomKelvin * std::max (0.0, response.outputImpedance (hz).real()) * 0.5 * sampleRate));
    return designer->design (microvolts, false);
}

double hissScaleFor (double takeLufs, double gainDb)
{
    return 1e-6 * humEmfFor (takeLufs, gainDb) / playingVolts; // rms of a sine as loud as the take stands for playingVolts
}
}
