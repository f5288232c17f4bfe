#pragma once

#include "paper/Anatomy.h"
#include "paper/Changes.h"

#include <vector>

namespace coldiron
{
/** Every part of both harnesses in its place: columns follow the signal, rows the pickups, neck first. Parts that stay
    are placed as `before` has them, so that the options of one guitar look alike. */
std::vector<PlacedPart> placeParts (const Harness& before, const Harness& after, const Changes&);
}
