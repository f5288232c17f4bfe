#pragma once

#include "audition/Sureness.h"
#include "audition/Voice.h"
#include "filter/FilterDesigner.h"

#include <vector>

namespace coldiron
{
/** What is applied to a take: the option's voice over the recorded one. Keeps references: both voices must outlive it. */
class Change
{
public:
    Change (const Voice& recorded, const Voice& option);

    /** |T| at hz, linear: sqrt of the ratio of powers; 0 when either is silent. */
    double gain (double hz, const StringDraw& = {}) const;

    /** The same at many frequencies, faster; rising or not. */
    std::vector<double> gains (const std::vector<double>& hz) const;

    const Sureness& sureness() const { return sure; }
    const Voice& recordedVoice() const { return recorded; }
    const Voice& optionVoice() const { return option; }

private:
    const Voice& recorded;
    const Voice& option;
    bool alikeEars = false; ///< the same coils at the same places on the same strings
    Sureness sure;
};

/** The filter that turns the take into the option at the designer's rate. Any thread but the audio thread. */
ModalFilter designFilter (const Change&, const FilterDesigner&);
}
