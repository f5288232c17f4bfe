// A starter set on a guitar: which parts fill its candidates, and which of them it takes.

#include "offer/Starter.h"

#include "files/Quantity.h"
#include "job/AudiblePath.h"
#include "job/Substitution.h"
#include "response/PickupsHeard.h"
#include "response/Volumes.h"

#include <algorithm>
#include <set>

namespace coldiron
{
namespace
{
using Names = std::map<std::string, std::string>;
using Reason = OfferRefusal::Reason;
constexpr size_t mostWays = 48;

std::string filled (const std::string& text, const Names& names)
{
    std::vector<std::string> ignored;
    return filledIn (text, names, ignored);
}

std::string words (std::string name)
{
    std::replace (name.begin(), name.end(), '-', ' ');
    return name;
}

/** Parts that an ask may name, those that suit the ones filled in already first. */
std::vector<std::string> partsFor (const std::string& kind, const Guitar& guitar, const Names& soFar, const std::string& last,
                                   const std::set<std::string>& heard)
{
    const auto& harness = guitar.harness;
    const auto volumes = volumeKnobs (harness, {});
    const auto isVolume = [&] (const std::string& name)
    {
        const auto* part = harness.find (name);
        return part != nullptr && part->as<PotPart>() != nullptr
               && std::find (volumes.begin(), volumes.end(), part->knobName()) != volumes.end();
    };
    auto names = candidates (kind == "volume" || kind == "tone" ? "pot" : kind, harness);
    if (kind == "volume" || kind == "tone")
        std::erase_if (names, [&] (const auto& name) { return isVolume (name) != (kind == "volume"); });
    std::erase_if (names,
                   [&] (const auto& name) {
                       return std::any_of (soFar.begin(), soFar.end(), [&] (const auto& given) { return given.second == name; });
                   });

    std::set<std::string> near = heard; // what belongs to a pickup that is on, or to the part chosen before, goes first
    for (const auto& pickup : candidates ("pickup", harness))
        if (last == pickup || last.rfind (pickup + "-", 0) == 0)
            near = { pickup };
    const auto rank = [&] (const std::string& name)
    {
        const bool related =
            std::any_of (near.begin(), near.end(),
                         [&] (const auto& pickup)
                         { return name == pickup || name.rfind (pickup + "-", 0) == 0 || name.find (pickup + ".") == 0; });
        return (related ? 0 : 2) + (kind == "pot" && ! isVolume (name) ? 1 : 0);
    };
    std::stable_sort (names.begin(), names.end(), [&] (const auto& a, const auto& b) { return rank (a) < rank (b); });
    return names;
}

std::vector<Names> waysToFill (const StarterCandidate& candidate, const Guitar& guitar, const std::set<std::string>& heard,
                               std::optional<OfferRefusal>& missing)
{
    std::vector<Names> ways { {} };
    std::string before;
    for (const auto& [ask, kind] : candidate.asks)
    {
        std::vector<Names> more;
        for (const auto& way : ways)
            for (const auto& name : partsFor (kind, guitar, way, before.empty() ? std::string() : way.at (before), heard))
                if (more.size() < mostWays)
                {
                    more.push_back (way);
                    more.back()[ask] = name;
                }
        if (more.empty() && ! missing)
        {
            const auto same = std::count_if (candidate.asks.begin(), candidate.asks.end(),
                                             [&k = kind] (const auto& other) { return other.second == k; });
            missing = OfferRefusal { same > 1 ? Reason::onePartAlone : Reason::noPart, {}, kind, {}, {} };
        }
        ways = std::move (more);
        before = ask;
    }
    return ways;
}

/** One candidate on one guitar, filled in one way. */
class Attempt
{
public:
    Attempt (const StarterCandidate& c, const Names& n, const Guitar& g, const CircuitConfig& asItIs, const PresetFolders& p)
        : candidate (c), names (n), guitar (g), now (asItIs), presets (p)
    {
    }

    /** @returns why not; none: `option` is ready */
    std::optional<OfferRefusal> run (StarterProof proof, StarterOption& option)
    {
        auto why = rewire (option);
        if (why)
            return why;
        config = { *harness, {}, now.load, now.strings };
        if (why = set (option); why)
            return why;
        if (why = hear (option); why)
            return why;
        if (option.rewires.empty() && option.setting == Setting())
            return OfferRefusal { Reason::standsSo, {}, {}, {}, {} };
        option.name = filled (candidate.name, wordNames());
        if (! option.name.empty())
            option.name[0] = static_cast<char> (std::toupper (static_cast<unsigned char> (option.name[0])));
        return whyNotProved (proof, now, config, option.setting);
    }

private:
    const StarterCandidate& candidate;
    const Names& names;
    const Guitar& guitar;
    const CircuitConfig& now;
    const PresetFolders& presets;
    std::optional<Harness> harness;
    CircuitConfig config;

    Names wordNames() const
    {
        Names plain;
        for (const auto& [ask, name] : names)
            plain[ask] = words (name);
        return plain;
    }

    std::optional<OfferRefusal> rewire (StarterOption& option)
    {
        Diagnostics diagnostics;
        harness = guitar.harness;
        std::vector<RewireUse> uses;
        for (const auto& rewire : candidate.rewires)
        {
            Names arguments;
            for (const auto& [ask, value] : rewire.arguments)
                arguments[ask] = filled (value, names);
            auto use = fillRewire (rewire.preset, arguments, *harness, presets, diagnostics);
            if (use)
                uses.push_back (*use);
            harness = use ? applyRewires (guitar.harness, uses, {}, diagnostics) : std::nullopt;
            if (! harness)
                return OfferRefusal {
                    Reason::rewire, {}, {}, diagnostics.empty() ? std::string() : diagnostics.front().message, {}
                };
            option.rewires.emplace_back (rewire.preset, arguments);
        }
        if (bestPath (*harness) != Path::open)
            return OfferRefusal { Reason::notHeard, {}, {}, {}, {} };
        return std::nullopt;
    }

    /** The setting it starts from, as far as it has the same controls, and the candidate's own. */
    std::optional<OfferRefusal> set (StarterOption& option)
    {
        const auto all = controls (*harness);
        for (const auto& control : all)
        {
            if (const auto knob = now.setting.knobs.find (control.name);
                knob != now.setting.knobs.end() && control.positions.empty())
                config.setting.knobs.insert (*knob);
            if (const auto lever = now.setting.levers.find (control.name);
                lever != now.setting.levers.end()
                && std::find (control.positions.begin(), control.positions.end(), lever->second) != control.positions.end())
                config.setting.levers.insert (*lever);
        }
        for (const auto& [rawName, rawValue] : candidate.setting)
        {
            const auto name = filled (rawName, names), value = filled (rawValue, names);
            const auto found =
                std::find_if (all.begin(), all.end(), [&] (const Control& control) { return control.name == name; });
            if (found == all.end())
                return OfferRefusal { Reason::noControl, name, {}, {}, {} };
            if (found->positions.empty())
                config.setting.knobs[name] = option.setting.knobs[name] =
                    std::clamp (parseQuantity (value).value_or (10.0), 0.0, 10.0);
            else if (std::find (found->positions.begin(), found->positions.end(), value) == found->positions.end())
                return OfferRefusal { Reason::noPosition, name, {}, value, {} };
            else
                config.setting.levers[name] = option.setting.levers[name] = value;
        }
        return {};
    }

    /** Throws the guitar's own switches, one after another, until just the pickups wanted are on. */
    std::optional<OfferRefusal> hear (StarterOption& option)
    {
        if (candidate.hear.empty())
            return {};
        std::set<std::string> wanted;
        for (const auto& pickup : candidate.hear)
            wanted.insert (filled (pickup, names));
        if (pickupsHeard (config) == wanted)
            return {};
        for (const auto& control : controls (guitar.harness))
            for (const auto& position : control.positions)
            {
                auto tried = config;
                tried.setting.levers[control.name] = position;
                if (pickupsHeard (tried) != wanted)
                    continue;
                config = std::move (tried);
                option.setting.levers[control.name] = position;
                return {};
            }
        return OfferRefusal { Reason::neverAlone, {}, {}, {}, { wanted.begin(), wanted.end() } };
    }
};

bool same (const StarterOption& a, const StarterOption& b) { return a.rewires == b.rewires && a.setting == b.setting; }
}

StarterOffer offerStarter (const Starter& starter, const Guitar& guitar, const Setting& from, const Load& load,
                           const PresetFolders& presets, size_t most)
{
    StarterOffer offer;
    StringSet strings;
    strings.strings = guitar.strings;
    strings.played.assign (guitar.strings.size(), true);
    const CircuitConfig now { guitar.harness, from, load, strings };
    const auto heard = pickupsHeard (now);
    for (const auto& candidate : starter.candidates)
    {
        if (offer.options.size() >= most)
            break;
        std::optional<OfferRefusal> why;
        bool done = false;
        for (const auto& names : waysToFill (candidate, guitar, heard, why))
        {
            StarterOption option;
            const auto refusal = Attempt (candidate, names, guitar, now, presets).run (starter.proof, option);
            if (! refusal
                && std::none_of (offer.options.begin(), offer.options.end(),
                                 [&] (const auto& other) { return same (other, option); }))
            {
                offer.options.push_back (std::move (option));
                done = true;
                break;
            }
            if (! why)
                why = refusal.value_or (OfferRefusal { Reason::offered, {}, {}, {}, {} });
        }
        if (! done)
            offer.refused.emplace_back (candidate, why.value_or (OfferRefusal()));
    }
    return offer;
}
}
