#include "wording/ControlWords.h"

#include "wording/Say.h"

namespace coldiron::wording
{
namespace
{
/** "louder", "quieter and darker"; empty where it does not differ. */
std::string difference (const PositionUse& use)
{
    const auto loudness = use.louder > 0 ? say ("louder") : use.louder < 0 ? say ("quieter") : std::string();
    const auto treble = use.brighter > 0 ? say ("brighter") : use.brighter < 0 ? say ("darker") : std::string();
    return loudness.empty() ? treble : treble.empty() ? loudness : say ("{loudness} and {treble}", loudness, treble);
}
}

std::string pickupsOn (const PickupsOn& on, bool isOnlyOne)
{
    if (on.empty())
        return say ("silent");
    std::vector<std::string> names;
    for (const auto& [pickup, coils] : on)
        names.push_back (coils.empty() ? plainName (pickup)
                                       : say ("{pickup} (its {coils} coil alone)", plainName (pickup), listOf (coils)));
    if (names.size() > 1)
        return say ("{pickups} together", listOf (names));
    return isOnlyOne ? names.front() : say ("{pickup} alone", names.front());
}

std::string control (const ControlUse& use, bool isOnlyOne)
{
    switch (use.kind)
    {
    case ControlUse::Kind::volume: return say ("volume, 0 to 10: 10 is all the way up");
    case ControlUse::Kind::tone: return say ("tone, 0 to 10: 10 is brightest");
    case ControlUse::Kind::blend:
        return say ("blend, 0 to 10: at 0 {down}, at 5 {middle}, at 10 {up}", pickupsOn (use.blended[0], isOnlyOne),
                    pickupsOn (use.blended[1], isOnlyOne), pickupsOn (use.blended[2], isOnlyOne));
    case ControlUse::Kind::lever: return say ("switch, {count} positions", static_cast<int> (use.control.positions.size()));
    case ControlUse::Kind::knob: break;
    }
    return say ("knob, 0 to 10");
}

std::string position (const PositionUse& use, bool isOnlyOne)
{
    const auto heard = pickupsOn (use.heard, isOnlyOne);
    const auto differs = difference (use);
    return differs.empty() ? heard : say ("{heard}, {differs} than \"{position}\"", heard, differs, use.likePosition);
}
}
