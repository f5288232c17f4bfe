#pragma once

#include <cstdint>

namespace coldiron
{
/** Counters that rise when something changed. Poll them (30 times a second is plenty) and compare with the last. */
struct Revisions
{
    uint32_t job = 0;       ///< the document: options, rewires, guitar, takes, faults, undo; read everything again
    uint32_t heard = 0;     ///< which option is heard, bypass, level, hum, trim, source
    uint32_t settings = 0;  ///< a knob or lever of any option
    uint32_t reports = 0;   ///< a curve or figure of any option, a sweep
    uint32_t transport = 0; ///< take loaded, playing, loop (not the running position)
    bool operator== (const Revisions&) const = default;
};
}
