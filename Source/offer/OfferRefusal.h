#pragma once

#include <string>
#include <vector>

namespace coldiron
{
/** Why a rewire or a candidate of a starter set is not offered on a guitar. */
struct OfferRefusal
{
    enum class Reason {
        rewire,       ///< its reader refuses it: `detail` is what it says, empty where it says nothing
        notHeard,     ///< nothing would be heard at any setting
        toBeNamed,    ///< a person has to say the ask `name`, a value of the kind `kind`
        noneLeft,     ///< no part of the kind `kind` is left for the ask `name`
        noPart,       ///< the guitar has no part of the kind `kind`
        onePartAlone, ///< it has one part of the kind `kind`, and two are needed
        noControl,    ///< it has no control `name`
        noPosition,   ///< its switch `name` has no position `detail`
        neverAlone,   ///< no position of its switches has just the pickups `pickups` on
        standsSo,     ///< it stands so already
        offered,      ///< it is among the options already

        silent,        ///< where the controls stand
        notQuieter,    ///< the hum would not go down
        notBrighter,   ///< where the controls stand
        notClearer,    ///< turned down it would not stay clearer than it is now
        tooBright,     ///< turned down it would grow brighter than the guitar is at 10
        notToBeJudged, ///< nothing is heard to judge it by
        knownVoice,    ///< the guitar has this voice already
        nothingMutes,  ///< no volume mutes another pickup as it is
        stillMutes     ///< the volume `name` at 0 would still mute the other pickup
    };

    Reason reason = Reason::rewire;
    std::string name, kind, detail;
    std::vector<std::string> pickups;
};
}
