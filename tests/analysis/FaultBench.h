#pragma once

// A bench that reads a guitar as a person would, with everything a little off: what the fault finder is tried on.

#include "analysis/FaultFinder.h"
#include "analysis/OhmRows.h"

#include <cmath>
#include <random>

namespace coldiron::support
{
/** What a technician writes down. */
enum class Means { ohms, ohmsAndTap, all };

/** A reading at each row of the ohm table that differs, at most `most`, and at each volume with the others down; each coil tapped and
    struck at each. Values are still to be filled in. */
inline BenchReadings whatIsAsked (const Harness& harness, Means means, size_t most = 24)
{
    BenchReadings asked;
    const auto add = [&] (const OhmReading& row, std::map<std::string, double> knobs)
    {
        if (asked.readings.size() == most)
            return;
        BenchReading reading;
        for (const auto& [lever, position] : row.levers)
            if (position != "any")
                reading.setting.levers[lever] = position;
        reading.setting.knobs = std::move (knobs);
        if (! row.isActive)
            reading.ohms = OhmsNoted {};
        for (const auto& part : harness.parts())
            if (const auto* pickup = part.as<PickupPart>())
                for (const auto& coil : pickup->pickup.coils)
                {
                    const auto name = pickup->pickup.coils.size() > 1 ? coil.name : std::string();
                    if (means != Means::ohms)
                        reading.taps.push_back ({ part.name, name, Tap::none });
                    if (means == Means::all)
                        reading.kicks.push_back ({ part.name, name, Kick::none });
                }
        asked.readings.push_back (std::move (reading));
    };
    for (const auto& row : rowsThatDiffer (ohmTable (harness)))
        add (row, {});
    const auto apart = volumesApart (harness);
    for (const auto& [volume, row] : apart)
    {
        std::map<std::string, double> knobs;
        for (const auto& [other, ignored] : apart)
            if (other != volume)
                knobs[other] = 0.0;
        add (row, knobs);
    }
    return asked;
}

/** One guitar of many: parts drawn evenly within their tolerance, a workshop of 15 to 30 C, a meter good to 0.5 % that is read to
    three digits, ears and eyes that waver by 2 dB. */
class FaultBench
{
public:
    explicit FaultBench (unsigned seed) : random (seed) {}

    BenchReadings read (const Harness& nominal, const Fault& fault, const BenchReadings& asked, const Load& load)
    {
        const double copper = 1.0 + 0.00393 * (even (15.0, 30.0) - 20.0);
        Harness sound = nominal;
        for (const auto& part : nominal.parts())
            sound.replacePart (part.name, drawn (part, copper), {});
        auto real = fault;
        real.ohms *= even (0.8, 1.2);
        const auto harness = withFault (sound, real);
        const auto places = strikePlaces (nominal);
        const double way = random() % 2 == 0 ? 1.0 : -1.0;

        auto noted = asked;
        for (auto& reading : noted.readings)
        {
            auto found = predictBench (harness, reading.setting, load, places);
            const auto whole = predictBench (sound, reading.setting, load, places);
            const auto at = [&] (const auto& note)
            {
                size_t i = 0;
                while (places[i].pickup != note.pickup || places[i].coil != note.coil)
                    ++i;
                return i;
            };
            if (reading.ohms)
                reading.ohms = metered (found.ohms);
            for (auto& tap : reading.taps)
            {
                double db = found.tapDb[at (tap)];
                if (fault.kind == Fault::Kind::deadCoil && isIn (fault, tap.pickup, tap.coil))
                    db = std::max (db, whole.tapDb[at (tap)] - even (26.0, 50.0)); // how clean the break is
                db += normal (2.0);
                tap.what = db > BenchLikelihood::loudDb ? Tap::loud : db < BenchLikelihood::silentDb ? Tap::none : Tap::weak;
            }
            for (auto& kick : reading.kicks)
            {
                const double size = found.kicks[at (kick)] * way * std::pow (10.0, normal (2.0) / 20.0);
                kick.what = std::abs (size) < BenchLikelihood::leastKick ? Kick::none : size > 0.0 ? Kick::up : Kick::down;
            }
        }
        return noted;
    }

private:
    std::mt19937 random;

    double even (double low, double high) { return low + (high - low) * (random() / 4294967296.0); }
    double normal (double sigma)
    {
        return sigma * std::sqrt (-2.0 * std::log ((random() + 1.0) / 4294967297.0))
               * std::cos (6.283185307179586 * even (0.0, 1.0));
    }

    static bool isIn (const Fault& fault, const std::string& pickup, const std::string& coil)
    {
        return fault.points.front() == pickup + "." + coil + ".start"
               || (coil.empty() && splitPoint (fault.points.front()).first == pickup);
    }

    Part drawn (Part part, double copper)
    {
        if (auto* pickup = part.as<PickupPart>())
        {
            const bool isKnown = pickup->pickup.known != Provenance::assumed;
            const double all = copper * (isKnown ? even (0.98, 1.02) : even (0.9, 1.1));
            for (auto& coil : pickup->pickup.coils)
                coil.dcrOhms *= all * (pickup->pickup.coils.size() < 2 ? 1.0 : isKnown ? even (0.995, 1.005) : even (0.98, 1.02));
        }
        else if (auto* pot = part.as<PotPart>())
            pot->ohms *= even (1.0 - pot->tolerance, 1.0 + pot->tolerance);
        else if (auto* resistor = part.as<ResistorPart>())
            resistor->ohms *= even (1.0 - resistor->tolerance, 1.0 + resistor->tolerance);
        return part;
    }

    OhmsNoted metered (double ohms)
    {
        ohms *= 1.0 + normal (0.005);
        OhmsNoted noted;
        if (ohms > 20e6)
            noted.kind = OhmsNoted::Kind::open;
        else if (ohms < 1.0)
            noted.kind = OhmsNoted::Kind::shorted;
        else
        {
            const double step = std::pow (10.0, std::floor (std::log10 (ohms)) - 2.0);
            noted.ohms = std::round (ohms / step) * step;
            noted.halfStep = step / 2.0;
        }
        return noted;
    }
};
}
