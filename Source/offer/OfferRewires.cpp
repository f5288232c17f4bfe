#include "offer/OfferRewires.h"

#include "job/AudiblePath.h"
#include "response/PickupsHeard.h"

#include <algorithm>
#include <utility>

namespace coldiron
{
namespace
{
using Arguments = std::map<std::string, std::string>;

/** The knobs of the pots that arguments name, by themselves or by one of their lugs. */
std::set<std::string> knobsOf (const Arguments& arguments, const Harness& harness)
{
    std::set<std::string> knobs;
    for (const auto& [ask, value] : arguments)
    {
        const auto* part = harness.find (value);
        if (part == nullptr)
            part = harness.find (splitPoint (value).first);
        if (part != nullptr && part->as<PotPart>() != nullptr)
            knobs.insert (part->knobName());
    }
    return knobs;
}

/** Without what the rewire fills in by itself. */
Arguments withoutStandards (const RewireInfo& info, Arguments arguments)
{
    for (const auto& ask : info.asks)
        if (ask.hasStandard && arguments[ask.name] == ask.standard)
            arguments.erase (ask.name);
    return arguments;
}

/** What no one but the person can fill in. */
std::optional<OfferRefusal> whyNotAlone (const RewireInfo& info, const Arguments& arguments)
{
    using Reason = OfferRefusal::Reason;
    for (const auto& ask : info.asks)
        if (const auto found = arguments.find (ask.name);
            ! ask.hasStandard && (found == arguments.end() || found->second.empty()))
        {
            const bool isChosen = ask.kind == "value" || ask.kind == "taper" || ask.kind.ends_with ("-preset");
            return OfferRefusal { isChosen ? Reason::toBeNamed : Reason::noneLeft, ask.name, ask.kind, {}, {} };
        }
    return std::nullopt;
}
}

RewireOffer offerRewire (const RewireInfo& info, const Guitar& guitar, const Setting& from, const Load& load,
                         const PresetFolders& presets)
{
    StringSet strings;
    strings.strings = guitar.strings;
    strings.played.assign (guitar.strings.size(), true);
    const CircuitConfig now { guitar.harness, from, load, strings };
    RewireOffer offer { info, std::nullopt, std::nullopt, false };
    std::optional<Harness> rewired;
    const auto whyNot = [&] (const Arguments& filled) -> std::optional<OfferRefusal>
    {
        using Reason = OfferRefusal::Reason;
        const auto arguments = withoutStandards (info, filled);
        if (auto why = whyNotAlone (info, arguments))
            return why;
        Diagnostics diagnostics;
        const auto use = fillRewire (info.preset, arguments, guitar.harness, presets, diagnostics);
        rewired = use ? applyRewires (guitar.harness, { *use }, {}, diagnostics) : std::nullopt;
        if (! rewired)
            return OfferRefusal { Reason::rewire, {}, {}, diagnostics.empty() ? std::string() : diagnostics.front().message, {} };
        return bestPath (*rewired) == Path::open ? std::nullopt
                                                 : std::optional (OfferRefusal { Reason::notHeard, {}, {}, {}, {} });
    };
    std::optional<OfferRefusal> first;
    bool isFirst = true;
    const auto canBeDone = [&] (const Arguments& filled)
    {
        const auto why = whyNot (filled);
        if (std::exchange (isFirst, false))
            first = why;
        return ! why.has_value();
    };
    const auto fit = firstFit (info, guitar.harness, pickupsHeard (now), canBeDone);
    if (! fit.canBeDone)
    {
        offer.refusal = first;
        return offer;
    }
    const auto arguments = withoutStandards (info, fit.arguments);
    const auto setting = settingHeard (now, *rewired, knobsOf (arguments, *rewired));
    offer.heard = setting.has_value();
    offer.option = StarterOption { optionName (info, arguments), { { info.preset, arguments } }, setting.value_or (Setting()) };
    return offer;
}
}
