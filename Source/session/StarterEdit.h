#pragma once

#include "offer/Starter.h"

#include <string>
#include <vector>

namespace coldiron
{
/** A job's options with those of a starter set added, as one edit. */
struct StarterEdit
{
    std::string options;              ///< JSON of the whole "options"; empty: nothing to add
    std::vector<std::string> letters; ///< of the new ones
    size_t left = 0;                  ///< options for which no letter was free
};

/** Options take the first free letters. An option that changes nothing, neither wire nor setting, makes room for them.
    @param jobText  as it stands; a job that cannot be parsed gives nothing */
StarterEdit withStarter (const std::string& jobText, const StarterOffer&);
}
