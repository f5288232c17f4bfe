#include "coilfit/LoosePickup.h"

#include "guitar/GuitarCircuit.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace coldiron
{
namespace
{
std::string enter (const Pickup& pickup, const SeriesPath::Step& step)
{
    return pickup.coils[(size_t)step.coil].name + (step.direction > 0 ? ".start" : ".finish");
}

std::string leave (const Pickup& pickup, const SeriesPath::Step& step)
{
    return pickup.coils[(size_t)step.coil].name + (step.direction > 0 ? ".finish" : ".start");
}

/** The other lead of the joint inside that holds a lead; empty: none. Two such joints are no series. */
std::string partner (const Pickup& pickup, const std::string& lead)
{
    std::string found;
    for (const auto& [a, b] : pickup.inside)
        if ((a == lead || b == lead) && a != "shield" && b != "shield")
        {
            if (! found.empty())
                throw NotInSeries (SeriesFault::severalJoints, lead);
            found = a == lead ? b : a;
        }
    return found;
}

/** Whether leads are joined inside, apart from one that the braid carries. */
bool joinsCoils (const Pickup& pickup)
{
    return std::any_of (pickup.inside.begin(), pickup.inside.end(),
                        [] (const auto& joint) { return joint[0] != "shield" && joint[1] != "shield"; });
}

SeriesPath::Step stepInto (const Pickup& pickup, const std::string& lead)
{
    for (int i = 0; i < (int)pickup.coils.size(); ++i)
        for (const int direction : { 1, -1 })
            if (enter (pickup, { i, direction }) == lead)
                return { i, direction };
    throw NotInSeries (SeriesFault::noSuchLead, lead);
}
}

SeriesPath::SeriesPath (const Pickup& pickup)
{
    if (pickup.coils.empty())
        throw NotInSeries (SeriesFault::noCoils);

    if (! joinsCoils (pickup))
    {
        const int hum = pickup.coils.front().humSign() * (pickup.coils.front().stringSign() < 0 ? -1 : 1);
        for (int i = 0; i < (int)pickup.coils.size(); ++i)
        {
            const auto& coil = pickup.coils[(size_t)i];
            const int sign = coil.stringSign() != 0 ? coil.stringSign() : -hum * coil.humSign(); // a dummy coil bucks the hum
            steps.push_back ({ i, sign });
        }
        return;
    }

    std::string lead;
    for (int i = 0; i < (int)pickup.coils.size() && lead.empty(); ++i)
        for (const int direction : { 1, -1 })
            if (lead.empty() && partner (pickup, enter (pickup, { i, direction })).empty())
                lead = enter (pickup, { i, direction });
    while (! lead.empty() && steps.size() < pickup.coils.size())
    {
        const auto step = stepInto (pickup, lead);
        for (const auto& earlier : steps)
            if (earlier.coil == step.coil)
                throw NotInSeries (SeriesFault::backIntoSameCoil);
        steps.push_back (step);
        lead = partner (pickup, leave (pickup, step));
    }
    if (steps.size() != pickup.coils.size() || ! lead.empty())
        throw NotInSeries (SeriesFault::notInSeries);
}

double SeriesPath::henries (const Pickup& pickup) const
{
    double sum = 0.0;
    for (size_t i = 0; i < steps.size(); ++i)
    {
        const auto& a = pickup.coils[(size_t)steps[i].coil];
        sum += a.henries;
        for (size_t j = 0; j < i; ++j)
        {
            const auto& b = pickup.coils[(size_t)steps[j].coil];
            sum += 2.0 * pickup.coupling * std::sqrt (a.henries * b.henries) * a.stringSign() * b.stringSign()
                   * steps[i].direction * steps[j].direction;
        }
    }
    return sum;
}

double SeriesPath::farads (const Pickup& pickup) const
{
    double inverse = 0.0;
    for (const auto& step : steps)
        inverse += 1.0 / pickup.coils[(size_t)step.coil].farads; // infinite where a coil has none
    return 1.0 / inverse;
}

LoosePickup::LoosePickup (const Pickup& pickup, const SeriesPath& path, double celsius, const ResponseSweep* load)
{
    Harness harness;
    PickupPart kind { pickup, 50.0 };
    for (auto& coil : kind.pickup.coils)
        coil.dcrOhms *= copperFactor (celsius);
    Part onBench, jack;
    onBench.name = "pickup";
    onBench.kind = kind;
    jack.name = "jack";
    jack.kind = JackPart {};
    harness.addPart (onBench);
    harness.addPart (jack);
    harness.solder ({ "pickup." + enter (pickup, path.steps.front()), "jack.tip" });
    harness.solder ({ "pickup." + leave (pickup, path.steps.back()), "jack.sleeve" });
    if (! joinsCoils (pickup))
        for (size_t i = 1; i < path.steps.size(); ++i)
            harness.solder ({ "pickup." + leave (pickup, path.steps[i - 1]), "pickup." + enter (pickup, path.steps[i]) });

    BuildOptions options;
    options.withLoad = load != nullptr;
    const Load across = load != nullptr ? Load { load->loadFarads, load->loadOhms, 0.0 } : Load {};
    const auto circuit = buildCircuit (harness, {}, across, options);

    std::vector<BranchId> branches;
    for (const auto& source : circuit.coils)
    {
        branches.push_back (source.branch);
        const bool all = load == nullptr || load->coil.empty();
        const double alone = source.humDrive < 0.0 ? -1.0 : 1.0; // a lone coil may have no magnet
        sourceResponses.push_back (all ? source.stringDrive : load->coil == source.coil ? alone : 0.0);
    }
    rising = load != nullptr && load->rising;
    network.emplace (circuit.netlist, branches, circuit.tip);
}

std::complex<double> LoosePickup::impedance (double hz, double addedFarads) const
{
    const auto bare = network->outputImpedance (hz);
    return bare / (1.0 + std::complex<double> (0.0, 2.0 * std::numbers::pi * hz * addedFarads) * bare);
}

double LoosePickup::responseDb (double hz) const
{
    std::vector<std::complex<double>> answers (sourceResponses.size());
    network->responses (hz, answers.data());
    std::complex<double> sum = 0.0;
    for (size_t i = 0; i < sourceResponses.size(); ++i)
        sum += sourceResponses[i] * answers[i];
    return 20.0 * std::log10 (std::max (std::abs (sum) * (rising ? hz / 1000.0 : 1.0), 1e-15));
}

double LoosePickup::resonance (double addedFarads) const
{
    const auto height = [&] (double octaves)
    { return std::log (std::abs (impedance (100.0 * std::exp2 (octaves), addedFarads))); };
    const double span = std::log2 (200e3 / 100.0), step = span / 200.0;
    double best = 0.0, top = height (0.0);
    for (int i = 1; i <= 200; ++i)
        if (const double here = height (i * step); here > top)
        {
            top = here;
            best = i * step;
        }
    if (best <= 0.0 || best >= span - 0.5 * step)
        return 0.0;

    // Golden section, to where rounding ends it: a flat top is known to about 1e-7 octave.
    const double ratio = 0.5 * (std::sqrt (5.0) - 1.0);
    double low = best - step, high = best + step;
    double a = high - ratio * (high - low), b = low + ratio * (high - low), atA = height (a), atB = height (b);
    while (high - low > 1e-8)
    {
        if (atA > atB)
        {
            high = b;
            b = a;
            atB = atA;
            a = high - ratio * (high - low);
            atA = height (a);
        }
        else
        {
            low = a;
            a = b;
            atA = atB;
            b = low + ratio * (high - low);
            atB = height (b);
        }
    }
    return 100.0 * std::exp2 (0.5 * (low + high));
}

double copperFactor (double celsius) { return 1.0 + 0.00393 * (celsius - 20.0); }
}
