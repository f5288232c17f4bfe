#include "analysis/OhmTable.h"

#include "circuit/Network.h"
#include "response/Volumes.h"

namespace coldiron
{
namespace
{
constexpr double openOhms = 100e6, shortOhms = 1.0;
constexpr double copperPerKelvin = 0.00393;                       // re 20 C
constexpr double coldest = 15.0, warmest = 30.0, standard = 20.0; // C, of a workshop

using Factors = std::vector<std::pair<std::string, PartFactors>>;

/** All parts at one end of their tolerance: -1 lowest and coldest, 1 highest and warmest. */
Factors extreme (const Harness& harness, int end)
{
    Factors factors;
    for (const auto& part : harness.parts())
    {
        PartFactors bend;
        if (const auto* pickup = part.as<PickupPart>())
        {
            const double tolerance = pickup->pickup.known == Provenance::assumed ? 0.1 : 0.02;
            const double kelvin = (end < 0 ? coldest : warmest) - standard;
            bend.resistance = (1.0 + end * tolerance) * (1.0 + copperPerKelvin * kelvin);
        }
        else if (const auto* pot = part.as<PotPart>())
            bend.pots = 1.0 + end * pot->tolerance;
        else if (const auto* resistor = part.as<ResistorPart>())
            bend.resistance = 1.0 + end * resistor->tolerance;
        factors.emplace_back (part.name, bend);
    }
    return factors;
}

double measure (const Harness& harness, const Setting& setting, const Factors* factors = nullptr)
{
    BuildOptions options;
    options.potFloorOhms = 1e-6;
    options.withLoad = false;
    options.factors = factors;
    const auto circuit = buildCircuit (harness, setting, {}, options);
    return circuit.tip == ground ? 0.0 : dcResistance (circuit.netlist, circuit.tip, ground);
}
}

OhmReading ohmReading (const Harness& harness, Setting setting, const std::map<std::string, double>& knobs)
{
    OhmReading reading;
    for (const auto& control : controls (harness))
        if (! control.positions.empty())
        {
            const auto set = setting.levers.find (control.name);
            reading.levers.emplace_back (control.name, set != setting.levers.end() ? set->second : control.standard);
        }
    for (const auto& part : harness.parts())
        if (part.as<BufferPart>() != nullptr)
        {
            reading.kind = OhmReading::Kind::buffered;
            return reading;
        }

    setting.knobs = knobs; // all others at 10
    const auto low = extreme (harness, -1), high = extreme (harness, 1);
    reading.ohms = measure (harness, setting);
    reading.lowOhms = measure (harness, setting, &low);
    reading.highOhms = measure (harness, setting, &high);
    reading.kind = reading.ohms > openOhms    ? OhmReading::Kind::open
                   : reading.ohms < shortOhms ? OhmReading::Kind::shorted
                                              : OhmReading::Kind::ohms;
    for (const auto& knob : volumeKnobs (harness, setting))
        setting.knobs[knob] = 5.0;
    reading.volumeDownOhms = measure (harness, setting);
    return reading;
}

void eachOhmReading (const Harness& harness, const std::function<void (const OhmReading&)>& take)
{
    auto levers = controls (harness);
    std::erase_if (levers, [] (const Control& control) { return control.positions.empty(); });
    std::vector<size_t> place (levers.size(), 0);
    for (bool more = true; more;)
    {
        Setting setting;
        for (size_t i = 0; i < levers.size(); ++i)
            setting.levers[levers[i].name] = levers[i].positions[place[i]];
        take (ohmReading (harness, setting));
        more = false;
        for (size_t i = levers.size(); i-- > 0 && ! more;) // the last switch fastest
        {
            place[i] = (place[i] + 1) % levers[i].positions.size();
            more = place[i] != 0;
        }
    }
}

std::vector<OhmReading> ohmTable (const Harness& harness)
{
    std::vector<OhmReading> readings;
    eachOhmReading (harness, [&readings] (const OhmReading& reading) { readings.push_back (reading); });
    return readings;
}
}
