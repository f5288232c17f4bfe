#include "job/NearestGeneric.h"

#include "job/Readers.h"

#include <cmath>

namespace coldiron
{
namespace
{
constexpr double sameWire = 1.2; ///< times the ohms, either way

double ohmsOf (const Pickup& pickup)
{
    double sum = 0.0;
    for (const auto& coil : pickup.coils)
        sum += coil.dcrOhms;
    return sum;
}

double turnsOf (const Pickup& pickup)
{
    double sum = 0.0;
    for (const auto& coil : pickup.coils)
        sum += coil.turns;
    return sum;
}

bool ofBass (const std::string& preset) { return preset.rfind ("bass-", 0) == 0; }

bool isOfKind (const Pickup& a, const Pickup& b)
{
    if (a.coils.size() != b.coils.size())
        return false;
    for (size_t i = 0; i < a.coils.size(); ++i)
    {
        const auto &one = a.coils[i], &other = b.coils[i];
        if (one.name != other.name || std::abs (one.offsetMm - other.offsetMm) > 0.5 || one.hears.empty() != other.hears.empty()
            || (one.magnet == Magnet::none) != (other.magnet == Magnet::none))
            return false;
    }
    return true;
}

/** 0 is the same; in logarithms. */
double distance (const Pickup& candidate, const Pickup& given, double ohms)
{
    return std::abs (std::log (ohms / ohmsOf (candidate))) + 0.5 * std::abs (std::log (turnsOf (candidate) / turnsOf (given)));
}

Pickup withValuesOf (Pickup pickup, const Pickup& source)
{
    pickup.coupling = source.coupling;
    for (size_t i = 0; i < pickup.coils.size(); ++i)
    {
        auto& coil = pickup.coils[i];
        const auto& from = source.coils[i];
        coil.dcrOhms = from.dcrOhms;
        coil.henries = from.henries;
        coil.farads = from.farads;
        coil.losses = from.losses;
        coil.output = from.output;
        coil.turns = from.turns;
    }
    return pickup;
}
}

GenericPickup nearestGeneric (const GenericPickup& given, double ohms, const PresetFolders& folders)
{
    const double usual = ohmsOf (given.pickup);
    if (given.pickup.coils.empty() || ! (ohms > 0.0) || (ohms < sameWire * usual && ohms > usual / sameWire))
        return given;
    GenericPickup nearest = given;
    double least = distance (given.pickup, given.pickup, ohms);
    for (const auto& name : folders.list ("pickups"))
    {
        if (name == given.preset || ofBass (name) != ofBass (given.preset))
            continue;
        Diagnostics diagnostics;
        Library library (folders, diagnostics);
        const auto resolved = library.resolve ("pickup", name);
        if (! resolved)
            continue;
        const auto candidate = readPickup (resolved->json, diagnostics);
        if (! diagnostics.empty() || ! isOfKind (given.pickup, candidate))
            continue;
        if (const double here = distance (candidate, given.pickup, ohms); here < least)
        {
            least = here;
            nearest = { name, withValuesOf (given.pickup, candidate) };
        }
    }
    return nearest;
}
}
