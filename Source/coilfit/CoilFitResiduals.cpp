#include "coilfit/CoilFitResiduals.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace coldiron
{
namespace
{
constexpr double worst = 1e4; // standard deviations; where a pickup has no such reading at all

double bounded (double misfit) { return std::isfinite (misfit) ? std::clamp (misfit, -worst, worst) : worst; }
}

FitResiduals::FitResiduals (const SeriesPath& series, const PickupReadings& toFit) : path (series), readings (toFit) {}

std::vector<FitResiduals::Point> FitResiduals::points (const Pickup& pickup) const
{
    using Quantity = FittedReading::Quantity;
    const auto& accuracy = readings.accuracy;
    const LoosePickup bare (pickup, path, readings.celsius);
    std::vector<LoosePickup> loaded;
    for (const auto& sweep : readings.sweeps)
        loaded.emplace_back (pickup, path, readings.celsius, &sweep);

    std::vector<Point> list;
    const auto add = [&list] (int line, Quantity quantity, double read, double fitted, double misfit, int sweep = -1) {
        list.push_back ({ { line, quantity, read, fitted, 0.0 }, bounded (misfit), sweep });
    };

    for (const auto& reading : readings.readings)
    {
        if (const auto* ohms = reading.as<OhmsReading>())
        {
            double sum = 0.0;
            for (const auto& coil : pickup.coils)
                sum += coil.dcrOhms * copperFactor (readings.celsius);
            add (reading.line, Quantity::dcr, ohms->ohms, sum, std::log (sum / ohms->ohms) / accuracy.dcr);
        }
        else if (const auto* meter = reading.as<MeterReading>())
        {
            // Compared as reactance, resistance, susceptance or conductance: these pass a resonance without a jump.
            const double w = 2.0 * std::numbers::pi * meter->hz;
            const auto z = bare.impedance (meter->hz, meter->addedFarads);
            const auto y = 1.0 / z;
            const double henries = meter->parallel ? -1.0 / (w * y.imag()) : z.imag() / w;
            const double share = meter->parallel ? -y.imag() * w * meter->henries - 1.0 : henries / meter->henries - 1.0;
            add (reading.line, Quantity::meterInductance, meter->henries, henries, share / accuracy.inductance);
            if (meter->ohms)
            {
                const double resistance = meter->parallel ? 1.0 / y.real() : z.real();
                const double off = meter->parallel ? y.real() * *meter->ohms - 1.0 : resistance / *meter->ohms - 1.0;
                add (reading.line, Quantity::meterResistance, *meter->ohms, resistance, off / accuracy.meterOhms);
            }
        }
        else if (const auto* impedance = reading.as<ImpedanceReading>())
        {
            const auto z = bare.impedance (impedance->hz, impedance->addedFarads);
            add (reading.line, Quantity::impedance, impedance->ohms, std::abs (z),
                 std::log (std::abs (z) / impedance->ohms) / accuracy.impedance);
            if (impedance->degrees)
            {
                const double degrees = std::arg (z) * 180.0 / std::numbers::pi;
                add (reading.line, Quantity::phase, *impedance->degrees, degrees,
                     (degrees - *impedance->degrees) / accuracy.degrees);
            }
        }
        else if (const auto* resonance = reading.as<ResonanceReading>())
        {
            const double hz = bare.resonance (resonance->addedFarads);
            add (reading.line, Quantity::resonance, resonance->hz, hz,
                 hz > 0.0 ? std::log (hz / resonance->hz) / accuracy.resonance : worst);
        }
        else if (const auto* response = reading.as<ResponseReading>())
        {
            const double db = loaded[(size_t)response->sweep].responseDb (response->hz);
            add (reading.line, Quantity::response, response->db, db, (db - response->db) / accuracy.responseDb, response->sweep);
        }
    }

    // Only the shape of a sweep counts: its mean is taken out.
    for (int sweep = 0; sweep < numSweeps(); ++sweep)
    {
        double sum = 0.0;
        int count = 0;
        for (const auto& point : list)
            if (point.sweep == sweep)
            {
                sum += point.signedMisfit;
                ++count;
            }
        for (auto& point : list)
            if (point.sweep == sweep)
            {
                point.signedMisfit -= sum / count;
                point.shown.fitted -= sum / count * accuracy.responseDb;
            }
    }
    for (auto& point : list)
        point.shown.misfit = std::abs (point.signedMisfit);
    return list;
}

Eigen::VectorXd FitResiduals::of (const Pickup& pickup) const
{
    const auto list = points (pickup);
    Eigen::VectorXd result ((Eigen::Index)list.size());
    for (size_t i = 0; i < list.size(); ++i)
        result ((Eigen::Index)i) = list[i].signedMisfit;
    return result;
}

std::vector<FittedReading> FitResiduals::table (const Pickup& pickup) const
{
    std::vector<FittedReading> result;
    for (const auto& point : points (pickup))
        result.push_back (point.shown);
    return result;
}
}
