#pragma once

// A pickup on the bench by hand formula, without the circuit under test, and the readings a meter would show of it.

#include "coilfit/CoilFit.h"

#include <cmath>
#include <complex>
#include <numbers>
#include <random>

namespace coldiron::fittruth
{
using Complex = std::complex<double>;

/** One coil, or two equal ones in series aiding: R + s L (1 + k) + loss cells, all across C, once or twice.
    By symmetry each of two equal coils has the same current and the same voltage, so the mutual inductance adds k L. */
struct Truth
{
    const char* kind;
    int coils = 1;
    double ohms = 6e3, henries = 2.5, farads = 110e-12, lossHenries = 0.5, lossOhms = 60e3, coupling = 0.15;

    double seriesOhms() const { return coils * ohms; }
    double aiding() const { return henries * (coils == 2 ? 1.0 + coupling : 1.0); }
    double seriesHenries() const { return coils * (aiding() + lossHenries); }
    double seriesFarads() const { return farads / coils; }

    Complex inside (double hz, double celsius = 20.0) const // without the winding capacitance
    {
        const Complex s (0.0, 2.0 * std::numbers::pi * hz);
        const Complex cell = lossHenries > 0.0 ? s * lossHenries * lossOhms / (lossOhms + s * lossHenries) : 0.0;
        return (double)coils * (ohms * (1.0 + 0.00393 * (celsius - 20.0)) + s * aiding() + cell); // copper: IEC 60028
    }

    Complex impedance (double hz, double added = 0.0, double celsius = 20.0) const
    {
        const Complex s (0.0, 2.0 * std::numbers::pi * hz);
        return 1.0 / (1.0 / inside (hz, celsius) + s * (seriesFarads() + added));
    }

    /** The level across a load for a flat EMF. The EMF stands inside the winding capacitance. */
    double responseDb (double hz, double loadOhms, double loadFarads) const
    {
        const Complex s (0.0, 2.0 * std::numbers::pi * hz);
        const Complex outside = 1.0 / (s * (seriesFarads() + loadFarads) + 1.0 / loadOhms);
        return 20.0 * std::log10 (std::abs (outside / (outside + inside (hz))));
    }

    double resonance (double added = 0.0) const
    {
        double best = 0.0, top = 0.0;
        for (double hz = 300.0; hz < 60e3; hz *= 1.0002)
            if (const double here = std::abs (impedance (hz, added)); here > top)
            {
                top = here;
                best = hz;
            }
        return best;
    }
};

/** Pickups to be found: away from the generic ones below by up to 40 %. Values by us, in the ranges common in the trade. */
inline std::vector<Truth> truths()
{
    return { { "single", 1, 6.6e3, 2.3, 130e-12, 0.35, 75e3, 0.0 },
             { "single", 1, 5.4e3, 2.9, 85e-12, 0.25, 50e3, 0.0 },
             { "humbucker", 2, 4.4e3, 1.9, 125e-12, 0.4, 75e3, 0.15 },
             { "humbucker", 2, 3.7e3, 1.45, 80e-12, 0.65, 45e3, 0.10 },
             { "humbucker", 2, 6.0e3, 2.9, 140e-12, 0.9, 80e3, 0.20 } };
}

inline Coil coil (const char* name, double ohms, double henries, double farads, double lossHenries, double lossOhms)
{
    Coil made;
    made.name = name;
    made.dcrOhms = ohms;
    made.henries = henries;
    made.farads = farads;
    made.losses = { { lossHenries, lossOhms } };
    return made;
}

/** The generic pickup a fit starts from. */
inline Pickup generic (const std::string& kind)
{
    Pickup pickup;
    pickup.name = kind;
    if (kind == "single")
    {
        pickup.coils = { coil ("coil", 6e3, 2.2, 110e-12, 0.3, 60e3) };
        return pickup;
    }
    pickup.coupling = 0.15;
    pickup.coils = { coil ("north", 4.1e3, 1.6, 90e-12, 0.5, 60e3), coil ("south", 4.1e3, 1.6, 90e-12, 0.5, 60e3) };
    pickup.coils[1].magnet = Magnet::south;
    pickup.coils[1].wound = Wound::counterClockwise;
    return pickup;
}

/** Readings with normal noise of a fixed seed. */
class Meter
{
public:
    Meter (const Truth& t, unsigned seed) : truth (t), engine (seed) {}

    PickupReadings readings;
    const Truth truth;

    Meter& dcr (double share = 0.005)
    {
        return add (OhmsReading { truth.seriesOhms() * (1.0 + 0.00393 * (readings.celsius - 20.0)) * noise (share) });
    }

    Meter& lcr (double hz, double share = 0.01, bool parallel = false, double added = 0.0)
    {
        const auto z = truth.impedance (hz, added, readings.celsius);
        const double w = 2.0 * std::numbers::pi * hz;
        return add (
            MeterReading { parallel, hz, (parallel ? -1.0 / (w * (1.0 / z).imag()) : z.imag() / w) * noise (share), {}, added });
    }

    /** L and R in parallel at a share of the bare resonance, 1 % and 5 %. */
    Meter& nearResonance (double share)
    {
        lcr (share * truth.resonance(), 0.01, true);
        auto& meter = std::get<MeterReading> (readings.readings.back().kind);
        meter.ohms = 1.0 / (1.0 / truth.impedance (meter.hz, 0.0, readings.celsius)).real() * noise (0.05);
        return *this;
    }

    Meter& impedanceAndPhase (double hz, double added)
    {
        impedance (hz, 0.01, added);
        std::get<ImpedanceReading> (readings.readings.back().kind).degrees =
            std::arg (truth.impedance (hz, added, readings.celsius)) * 180.0 / std::numbers::pi + deviate (engine);
        return *this;
    }

    Meter& impedance (double hz, double share = 0.01, double added = 0.0)
    {
        return add (ImpedanceReading { hz, std::abs (truth.impedance (hz, added, readings.celsius)) * noise (share), {}, added });
    }

    Meter& resonance (double added, double share = 0.005)
    {
        return add (ResonanceReading { truth.resonance (added) * noise (share), added });
    }

    Meter& impedanceSweep (double share)
    {
        for (int i = 0; i < 40; ++i)
            impedance (100.0 * std::pow (200.0, i / 39.0), share);
        return *this;
    }

    Meter& responseSweep (double loadOhms, double loadFarads, double db)
    {
        readings.sweeps.push_back ({ loadOhms, loadFarads, false, "" });
        const double level = 7.0 * deviate (engine); // nobody knows it
        for (int i = 0; i < 40; ++i)
        {
            const double hz = 100.0 * std::pow (200.0, i / 39.0);
            add (ResponseReading { hz, truth.responseDb (hz, loadOhms, loadFarads) + level + db * deviate (engine),
                                   (int)readings.sweeps.size() - 1 });
        }
        return *this;
    }

private:
    std::mt19937 engine;
    std::normal_distribution<double> deviate;

    double noise (double share) { return 1.0 + share * deviate (engine); }

    template <typename T>
    Meter& add (const T& kind)
    {
        readings.readings.push_back ({ kind, (int)readings.readings.size() + 1 });
        return *this;
    }
};
}
