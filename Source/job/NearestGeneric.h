#pragma once

#include "guitar/Coil.h"
#include "job/Library.h"

#include <string>

namespace coldiron
{
/** A pickup to scale from, and the preset its values come from. */
struct GenericPickup
{
    std::string preset;
    Pickup pickup;
};

/** The generic pickup to start from where a meter read these ohms across all coils in series. Within 20 % it is the one given.
    Beyond, more ohms are more often thinner wire than more turns, so its values are those of the pickup of its kind (as many
    coils at the same places, with magnets like it, of a bass like it) that is nearest by DC resistance and, half as
    much, by turns. Names, winding, magnets and joints stay.
    @param preset  of the one given; those of basses begin with "bass-" */
GenericPickup nearestGeneric (const GenericPickup&, double ohms, const PresetFolders&);
}
