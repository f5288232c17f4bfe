#pragma once

#include "filter/FilterDesigner.h"
#include "response/Confidence.h"
#include "response/GuitarResponse.h"

#include <vector>

namespace coldiron
{
/** What is applied to a take: the option's response over the recorded one. Keeps references: both must outlive it. */
class TransferFunction
{
public:
    TransferFunction (const GuitarResponse& recorded, const GuitarResponse& option);

    /** |T| at hz, linear: sqrt of the ratio of powers; 0 when either is silent. */
    double gain (double hz, const StringDraw& = {}) const;

    /** The same at many frequencies, faster; rising or not. */
    std::vector<double> gains (const std::vector<double>& hz) const;

    const Confidence& confidence() const { return sure; }
    const GuitarResponse& recordedResponse() const { return recorded; }
    const GuitarResponse& optionResponse() const { return option; }

private:
    const GuitarResponse& recorded;
    const GuitarResponse& option;
    bool sameCoilPositions = false; ///< the same coils at the same places on the same strings
    Confidence sure;
};

/** The filter that turns the take into the option at the designer's rate. Any thread but the audio thread. */
ModalFilter designFilter (const TransferFunction&, const FilterDesigner&);
}
