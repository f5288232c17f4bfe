#pragma once

#include "job/Job.h"

#include <functional>
#include <map>
#include <string>
#include <utility>
#include <vector>

namespace coldiron
{
/** What a meter reads at the jack at one combination of switch positions, knobs at 10; cable and input left out. */
struct OhmReading
{
    enum class Kind {
        ohms,
        open,    ///< above 100 Mohm
        shorted, ///< below 1 ohm
        buffered ///< a buffer drives the jack: a meter reads nothing of the pickups
    };

    Kind kind = Kind::ohms;
    std::vector<std::pair<std::string, std::string>> levers; ///< switch, position
    double ohms = 0.0;                                       ///< at 20 C; meaningless but for Kind::ohms
    double lowOhms = 0.0, highOhms = 0.0;                    ///< worst case of part tolerances and 15 to 30 C, see below
    double volumeDownOhms = 0.0;                             ///< every volume at 5: why to read with knobs at 10

    bool isNumber() const { return kind == Kind::ohms; }
};

/** Every combination of switch positions, the first switch slowest.

    The interval is the exact worst case and no draw: a network's resistance between two points never falls when one of
    its resistances rises (Rayleigh), so all low and all high are the ends. Coils +/-10 %, or +/-2 % where their ohms were
    measured; copper 0.393 %/K from 20 C (IEC 60028); pots and resistors by their own tolerance. */
std::vector<OhmReading> ohmTable (const Harness&);

/** The same one by one, each given away as soon as it is computed. */
void eachOhmReading (const Harness&, const std::function<void (const OhmReading&)>&);

/** One reading with the levers as the setting has them and every knob at 10.
    @param knobs  those that stand elsewhere, 0..10 */
OhmReading ohmReading (const Harness&, Setting, const std::map<std::string, double>& knobs = {});
}
