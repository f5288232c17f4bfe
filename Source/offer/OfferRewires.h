#pragma once

#include "job/FirstArguments.h"
#include "offer/OfferRefusal.h"
#include "offer/Starter.h"

#include <optional>
#include <string>

namespace coldiron
{
/** A rewire on a guitar: an option that lets it be heard, or why it cannot be done there. */
struct RewireOffer
{
    RewireInfo info;
    std::optional<StarterOption> option;
    std::optional<OfferRefusal> refusal; ///< none where there is an option
    bool heard = false;                  ///< the option's setting is one at which it differs from the guitar as it is
};

/** Tries a rewire with the parts that suit it first, then with the other pickups and pots. Switches that it fits are thrown, and
    where that alone is not heard, the guitar's own switches and the knobs it works on are set so that it is.
    @param from  the setting that the option starts from, a take's or none */
RewireOffer offerRewire (const RewireInfo&, const Guitar&, const Setting& from, const Load&, const PresetFolders&);

/** The setting, as a difference from `from`, at which a rewired harness is heard to differ from the guitar as it is (0.5 dB
    in a third octave from 80 Hz to 8 kHz, or 1 dB of hum): its new switches thrown, then one switch of the guitar's own too, then
    the knobs worked on turned down. Nothing where no such setting is found; then the new switches are as they rest.
    @param worked  names of knobs that the rewire works on */
std::optional<Setting> settingHeard (const CircuitConfig& now, const Harness& rewired, const std::set<std::string>& worked);

/** Switches that an option has and the guitar as recorded has not, where they stand as they rest and the option is not heard to
    differ: it sounds as recorded until one of them is thrown. Empty otherwise. In the order of the parts. */
std::vector<std::string> switchesStillAtRest (const CircuitConfig& recorded, const CircuitConfig& option);
}
