#pragma once

#include "guitar/Setting.h"

#include <optional>
#include <string>

namespace coldiron
{
/** A switch setting at which a meter at the jack, knobs at 10, reads one pickup and no other; nothing where there is none
    (a blend, a buffer). The pots still lie across the reading. */
std::optional<Setting> aloneAtJack (const Harness&, const std::string& pickup);

/** A pickup's own DC resistance from what a meter reads at the jack. */
struct LeadsReading
{
    enum class Refusal {
        none,
        noSuchPickup,
        buffered,  ///< a buffer drives the jack: nothing of the pickups can be read there
        abovePots, ///< more than the pots alone read there, see potsOhms
        tooLittle  ///< less than this pickup could read
    };

    Refusal refusal = Refusal::none;      ///< else no number counts but potsOhms
    double potsOhms = 0.0;                ///< abovePots: what they read alone, as good as lifted
    double ohms = 0.0;                    ///< its coils one after the other, as across its two leads taken off
    double lowOhms = 0.0, highOhms = 0.0; ///< as the pots' tolerance leaves it
};

/** Takes the pots and resistors across the jack out of the reading. The coils keep their proportion to each other.
    The reading rises with the pickup's resistance, always (Rayleigh), so it is found by halving.
    @param setting  where the switches stand; knobs at 10 */
LeadsReading leadsFromJack (const Harness&, const Setting& setting, const std::string& pickup, double jackOhms);
}
