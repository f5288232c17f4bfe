#include "offer/OfferRewires.h"

#include "files/Paths.h"
#include "job/Reader.h"
#include "response/PickupsHeard.h"

#include <algorithm>

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
std::string whyNotAlone (const RewireInfo& info, const Arguments& arguments)
{
    for (const auto& ask : info.asks)
        if (const auto found = arguments.find (ask.name);
            ! ask.hasStandard && (found == arguments.end() || found->second.empty()))
            return ask.kind == "value" || ask.kind == "taper" || ask.kind.ends_with ("-preset")
                       ? "say which " + ask.name + " in the job: \"" + ask.name + "\" asks for a " + ask.kind
                       : "the guitar has no " + ask.kind + " left for \"" + ask.name + "\"";
    return {};
}
}

RewireOffer offerRewire (const RewireInfo& info, const Guitar& guitar, const Setting& from, const Load& load,
                         const PresetFolders& presets)
{
    StringSet strings;
    strings.strings = guitar.strings;
    strings.played.assign (guitar.strings.size(), true);
    const CircuitConfig now { guitar.harness, from, load, strings };
    RewireOffer offer { info, std::nullopt, {}, false };
    std::optional<Harness> rewired;
    const auto whyNot = [&] (const Arguments& filled) -> std::string
    {
        const auto arguments = withoutStandards (info, filled);
        if (auto why = whyNotAlone (info, arguments); ! why.empty())
            return why;
        Diagnostics diagnostics;
        const auto use = fillRewire (info.preset, arguments, guitar.harness, presets, diagnostics);
        rewired = use ? applyRewires (guitar.harness, { *use }, {}, diagnostics) : std::nullopt;
        if (! rewired)
            return diagnostics.empty() ? std::string ("it cannot be done here") : inTradeWords (diagnostics.front().message);
        return bestPath (*rewired) == Path::open ? std::string() : std::string ("nothing would be heard");
    };
    const auto fit = firstFit (info, guitar.harness, pickupsHeard (now), whyNot);
    offer.refusal = fit.refusal;
    if (! offer.refusal.empty())
        return offer;
    const auto arguments = withoutStandards (info, fit.arguments);
    const auto setting = settingHeard (now, *rewired, knobsOf (arguments, *rewired));
    offer.heard = setting.has_value();
    offer.option = StarterOption { optionName (info, arguments), { { info.preset, arguments } }, setting.value_or (Setting()) };
    return offer;
}
}
