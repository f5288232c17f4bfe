#pragma once

#include "coilfit/LoosePickup.h"

#include <array>

namespace coldiron
{
/** The five parameters of a fit and what they make of the generic pickup.

    Each is the distance of a value from what the generic pickup and the values before it would make expect, in
    logarithms, so that all zero is the generic pickup, and so that a DC resistance alone scales the rest:

        DCR ratio     exp (u0)
        inductance    exp (u1 + 2 u0)     turns squared, turns as DCR
        capacitance   exp (u2)            unscaled
        loss ohms     exp (u3) times the inductance's ratio (a shorted turn seen through the turns squared)
        loss share    of the low-frequency inductance, u4 added to its logit                                     */
class FitShape
{
public:
    using FitParameters = std::array<double, 5>;

    /** Standard deviations of the parameters before anything is read: wide, so that they decide only what no reading does.
        The loss varies by about 35 % among pickups of a kind (common practice of the trade, no source). */
    static constexpr FitParameters spread { 0.5, 0.5, 0.7, 0.4, 0.45 };

    /** @throws NotInSeries when its coils are not in series or it has no inductance */
    explicit FitShape (const Pickup& generic);

    /** Whether a parameter has any effect: a pickup without winding capacitance or loss keeps having none. */
    bool has (int parameter) const;

    Pickup pickup (const FitParameters&) const;

    /** The inductance's parameter where only the DC resistance was read: turns squared holds for small differences (the same
        wire, more or fewer turns). Beyond 20 % it is mostly another wire, and the inductance goes on as DCR^1.1, as it does
        from one generic humbucker to the next. */
    static double inductanceFrom (double dcrParameter);

    /** Rows of d ln (value) / d parameter, in the order of CoilFit::Value; row lossHenries is for u4's logit. */
    static const std::array<FitParameters, 5>& slopes();

    /** The five values as the leads show them, in the order of CoilFit::Value. */
    std::array<double, 5> atLeads (const Pickup&) const;

    const SeriesPath& path() const { return series; }

private:
    Pickup generic;
    SeriesPath series;
    double uncelled = 0.0, celled = 0.0; ///< [H] between the leads
};
}
