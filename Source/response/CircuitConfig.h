#pragma once

#include "response/GuitarResponse.h"

namespace coldiron
{
/** One harness at one setting into one load on one guitar's strings, not built yet: as recorded, or of an option. */
struct CircuitConfig
{
    Harness harness;
    Setting setting;
    Load load;
    StringSet strings;

    GuitarResponse response (const BuildOptions& options = {}) const
    {
        return GuitarResponse (harness, setting, load, strings, options);
    }
};
}
