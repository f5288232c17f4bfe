#pragma once

#include "paper/Drawing.h"

#include <string>

namespace coldiron
{
/** A whole SVG document of the drawing in print colours. The same drawing gives the same bytes.
    Fonts are named, not embedded: B612 and Routed Gothic, then whatever is sans-serif. */
std::string drawingSvg (const Drawing&);
}
