#include "support/Truth.h"

namespace coldiron::support
{
std::vector<CoilPlace> coilPlaces (const Harness& harness)
{
    std::vector<CoilPlace> places;
    for (const auto& part : harness.parts())
        if (const auto* pickup = part.as<PickupPart>())
            for (const auto& coil : pickup->pickup.coils)
            {
                const double winding = coil.wound == Wound::clockwise ? 1.0 : -1.0;
                const double magnet = coil.magnet == Magnet::north ? 1.0 : coil.magnet == Magnet::south ? -1.0 : 0.0;
                places.push_back ({ part.name, coil.name, pickup->bridgeMm + coil.offsetMm, winding * magnet * coil.output });
            }
    return places;
}

std::vector<std::vector<double>> harnessEmfs (const Harness& harness, const PluckedInstrument& instrument, const Phrase& phrase,
                                              double sampleRate)
{
    std::vector<std::vector<double>> distances;
    for (const auto& place : coilPlaces (harness))
        distances.emplace_back (instrument.strings.size(), place.bridgeMm);
    return pluckedEmfs (instrument, phrase, distances, sampleRate);
}
}
