#include "wording/OfferWords.h"

#include "files/Quantity.h"
#include "job/Substitution.h"
#include "wording/Say.h"

#include <regex>

namespace coldiron::wording
{
namespace
{
/** What the reader of a rewire says, as said at the bench: without the file, the rewire's own name and the number of its
    step, and where a need says it in words, without the solder points. */
std::string inTradeWords (std::string message)
{
    for (size_t open = message.find (" ("); open != std::string::npos; open = message.find (" (", open + 1))
    {
        const auto close = message.find (')', open);
        if (close == std::string::npos || message.substr (open, close - open).find (".json") == std::string::npos)
            continue;
        message.erase (open, close + 1 - open);
        break;
    }
    static const std::regex whose ("^(\"[^\"]*\" cannot be done: |step [0-9]+ of \"[^\"]*\", )");
    static const std::regex points (" \\([a-z0-9-]+(\\.[a-z0-9-]+)+(: a [a-z]+ has [^()]*| is joined inside the pickup)\\)$");
    static const std::regex noVolume (".*: ([a-z0-9-]+)\\.(in|out): neither lug 2 nor lug 3 leads to the jack.*");
    static const std::regex otherLeads ("replace ([a-z0-9-]+): .* is in use, and the new part has no point of that name.*");
    message = std::regex_replace (std::regex_replace (message, whose, ""), points, "");
    message = std::regex_replace (message, noVolume, say ("it needs another volume, and {knob} is none", std::string ("$1")));
    return std::regex_replace (message, otherLeads,
                               say ("the new part has other leads than {part}; name one of the same kind", std::string ("$1")));
}
}

std::string offerRefusal (const OfferRefusal& refusal)
{
    using Reason = OfferRefusal::Reason;
    switch (refusal.reason)
    {
    case Reason::rewire: return refusal.detail.empty() ? say ("it cannot be done here") : inTradeWords (refusal.detail);
    case Reason::notHeard: return say ("nothing would be heard");
    case Reason::toBeNamed: return say ("say which {ask} in the job: \"{ask}\" asks for a {kind}", refusal.name, refusal.kind);
    case Reason::noneLeft: return say ("the guitar has no {kind} left for \"{ask}\"", refusal.kind, refusal.name);
    case Reason::noPart: return say ("the guitar has no {kind} for it", refusal.kind);
    case Reason::onePartAlone: return say ("the guitar has only one {kind}", refusal.kind);
    case Reason::noControl: return say ("there is no control \"{name}\" on it", refusal.name);
    case Reason::noPosition: return say ("the switch \"{name}\" has no position \"{position}\"", refusal.name, refusal.detail);
    case Reason::neverAlone: return say ("no position of its switches has just {pickups} on", listed (refusal.pickups));
    case Reason::standsSo: return say ("the guitar stands so already");
    case Reason::offered: return say ("it is among the options already");
    case Reason::silent: return say ("it would be silent where the controls stand");
    case Reason::notQuieter: return say ("the hum would not go down");
    case Reason::notBrighter: return say ("it would not be brighter where the controls stand");
    case Reason::notClearer: return say ("it would not stay clearer than it is now");
    case Reason::tooBright: return say ("turned down it would grow brighter than the guitar is at 10");
    case Reason::notToBeJudged: return say ("nothing is heard to judge it by");
    case Reason::knownVoice: return say ("the guitar has this voice already");
    case Reason::nothingMutes: return say ("no volume mutes another pickup as it is");
    case Reason::stillMutes: break;
    }
    return say ("the {volume} at 0 would still mute the other pickup", refusal.name);
}

std::string candidateName (const StarterCandidate& candidate)
{
    std::map<std::string, std::string> kinds;
    for (const auto& [ask, kind] : candidate.asks)
        kinds[ask] = say ("the {kind}", kind);
    std::vector<std::string> ignored;
    return filledIn (candidate.name, kinds, ignored);
}
}
