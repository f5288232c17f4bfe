#pragma once

#include "circuit/Network.h"
#include "coilfit/CoilFit.h"

#include <complex>
#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

namespace coldiron
{
/** A pickup whose coils cannot be read in series between two leads. */
struct NotInSeries : std::runtime_error
{
    explicit NotInSeries (SeriesFault fault, std::string atLead = {})
        : std::runtime_error ("the coils are not in series between two leads"), why (fault), lead (std::move (atLead))
    {
    }

    const SeriesFault why;
    const std::string lead; ///< severalJoints, noSuchLead
};

/** The way from a pickup's hot lead through all its coils to its cold one. */
struct SeriesPath
{
    struct Step
    {
        int coil = 0;      ///< index into Pickup::coils
        int direction = 1; ///< +1 when walked from start to finish
    };

    std::vector<Step> steps;

    /** As the joints inside join the coils, or, where none are, so that the coils aid as the string drives them.
        @throws NotInSeries */
    explicit SeriesPath (const Pickup&);

    /** The uncelled inductance between the two leads, coupling counted [H]. */
    double henries (const Pickup&) const;

    /** The winding capacitance as the leads see it [F]; 0 where a coil has none. */
    double farads (const Pickup&) const;
};

/** A pickup on the bench, its coils in series between two leads, with a load or none: the same circuit that the
    guitar's sound is computed from. Immutable. */
class LoosePickup
{
public:
    LoosePickup (const Pickup&, const SeriesPath&, double celsius, const ResponseSweep* load = nullptr);

    /** What a bridge sees at the two leads [ohms]. */
    std::complex<double> impedance (double hz, double addedFarads = 0.0) const;

    /** The level at the load in dB for an EMF of 1 V a unit of output in the coils that are driven. */
    double responseDb (double hz) const;

    /** Where the impedance is highest between 100 Hz and 200 kHz [Hz]; 0 where it has no peak. */
    double resonance (double addedFarads = 0.0) const;

private:
    std::optional<Network> network;
    std::vector<double> sourceResponses;
    bool rising = false;
};

/** Copper's resistance at a temperature relative to 20 C (0.393 % per kelvin, IEC 60028). */
double copperFactor (double celsius);
}
