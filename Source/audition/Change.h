#pragma once

#include "audition/Sureness.h"
#include "audition/Voice.h"
#include "filter/FilterDesigner.h"

#include <vector>

namespace coldiron
{
/** What is applied to a take: the option's voice over the recorded one. */
class Change
{
public:
    Change (const Voice& recorded, const Voice& option);

    /** |T| at hz, linear: sqrt of the ratio of powers; 0 when the option is silent. */
    double gain (double hz, const StringDraw& = {}) const;
    std::vector<double> gains (const std::vector<double>& hz) const;

    const Sureness& sureness() const { return sure; }

private:
    const Voice& recorded;
    const Voice& option;
    Sureness sure;
};

/** The filter that turns the take into the option at the designer's rate. Any thread but the audio thread. */
ModalFilter designFilter (const Change&, const FilterDesigner&);
}
