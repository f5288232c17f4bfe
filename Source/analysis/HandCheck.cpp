#include "analysis/HandCheck.h"

#include "analysis/PartNames.h"
#include "guitar/Nets.h"
#include "job/Readers.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace coldiron
{
namespace
{
constexpr size_t mostSettings = 256;

/** Metal that a hand may touch. */
std::vector<std::string> metalOf (const Harness& harness)
{
    std::vector<std::string> points;
    for (const auto& point : harness.allPoints())
    {
        const auto terminal = splitPoint (point).second;
        if (point == "strings" || terminal == "case" || terminal == "shield")
            points.push_back (point);
    }
    return points;
}

std::set<std::string> groundedMetal (const Harness& harness)
{
    const Nets nets (harness);
    std::set<std::string> result;
    for (const auto& point : metalOf (harness))
        if (nets.joined (point, harness.point ("ground")))
            result.insert (point);
    return result;
}

/** The same points joined: the parts of the partition are equal. */
bool sameNets (const Harness& a, const Harness& b)
{
    const auto points = a.allPoints();
    if (points != b.allPoints())
        return false;
    const Nets left (a), right (b);
    std::map<int, int> there, back;
    for (const auto& point : points)
    {
        const int l = left.net (point), r = right.net (point);
        if (there.emplace (l, r).first->second != r || back.emplace (r, l).first->second != l)
            return false;
    }
    return true;
}

std::string list (const std::vector<std::string>& names)
{
    std::string text;
    for (size_t i = 0; i < names.size() && i < 3; ++i)
        text += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
    return names.size() > 3 ? text + " and " + std::to_string (names.size() - 3) + " more" : text;
}

std::string spoken (std::string name)
{
    std::replace (name.begin(), name.end(), '-', ' ');
    return name;
}

/** "Bridge tone case", as the object of a sentence. */
std::string metalInWords (const Harness& harness, const std::string& point)
{
    if (point == "strings")
        return "the strings";
    const auto [part, terminal] = splitPoint (point);
    auto title = titleOf (*harness.find (part));
    title[0] = static_cast<char> (std::tolower (static_cast<unsigned char> (title[0])));
    return "the " + title + (terminal == "case" ? "'s case" : "'s shield");
}

std::string decibels (double db)
{
    char text[32];
    std::snprintf (text, sizeof text, "%.1f", std::abs (db));
    return std::string (std::string (text) == "0.0" ? "" : db < 0.0 ? "\xe2\x88\x92" : "+") + text + " dB";
}
}

std::vector<Setting> HandCheck::combinations (const Harness& harness, const Setting& knobs)
{
    std::vector<Setting> all { { knobs.knobs, {} } };
    for (const auto& control : controls (harness))
    {
        std::vector<Setting> more;
        for (const auto& before : all)
            for (const auto& position : control.positions)
            {
                auto next = before;
                next.levers[control.name] = position;
                more.push_back (std::move (next));
            }
        if (! more.empty() && more.size() <= mostSettings)
            all = std::move (more);
    }
    for (auto& setting : all) // knobs open: a volume at 0 is no fault of the wiring
        setting.knobs.clear();
    return all;
}

std::vector<HandCheck::Position> HandCheck::positions (const Harness& harness, const std::vector<Setting>& settings,
                                                       const Load& load)
{
    std::vector<Position> result;
    const auto list = controls (harness);
    for (const auto& setting : settings)
    {
        Position position;
        for (const auto& control : list)
            if (const auto lever = setting.levers.find (control.name); lever != setting.levers.end())
                position.name += (position.name.empty() ? "" : ", ")
                                 + (control.positions.size() > 2 ? spoken (lever->second)
                                                                 : spoken (control.name) + " " + spoken (lever->second));
        position.path = buildCircuit (harness, setting, load).path;
        result.push_back (std::move (position));
    }
    return result;
}

bool HandCheck::doesNothing (const CircuitConfig& config, const std::string& knob, const std::vector<Setting>& settings)
{
    for (const auto& setting : settings)
    {
        CircuitConfig open = config, closed = config;
        open.setting = closed.setting = setting;
        open.setting.knobs[knob] = 10.0;
        closed.setting.knobs[knob] = 0.0;
        const GuitarResponse up = open.response(), down = closed.response();
        if (up.isSilent() != down.isSilent())
            return false;
        if (up.isSilent())
            continue;
        for (const double hz : { 100.0, 700.0, 3000.0, 8000.0 })
            if (const double a = std::abs (up.unisonResponse (hz)), b = std::abs (down.unisonResponse (hz));
                std::abs (a - b) > 0.01 * std::max (a, b))
                return false;
    }
    return true;
}

HandCheck::HandCheck (const CircuitConfig& config)
    : now (config), settings (combinations (config.harness, config.setting)),
      before (positions (config.harness, settings, config.load)), grounded (groundedMetal (config.harness)),
      figures (computeFigures (config, config))
{
    for (const auto& control : controls (now.harness))
        if (control.positions.empty() && doesNothing (now, control.name, settings))
            deadPots.insert (control.name);
}

std::vector<std::string> HandCheck::targets (const HandMove& inHand) const
{
    std::vector<std::string> result;
    for (const auto& point : now.harness.allPoints())
    {
        auto move = inHand;
        move.to = point;
        if (point == inHand.held || point == inHand.from)
            continue;
        try
        {
            if (! sameNets (now.harness, applyStep (now.harness, move)))
                result.push_back (point);
        }
        catch (const HarnessError&)
        {
        }
    }
    return result;
}

HandVerdict HandCheck::check (const HandMove& move) const
{
    if (! move.from.empty() && move.from == move.to)
        return { HandVerdict::Kind::nothing, "Nothing changes: soldered back where it was", {}, {} };
    try
    {
        const Harness wanted = applyStep (now.harness, move);
        // A wire between points joined already, by another way, is solder for nothing.
        if (move.from.empty() && ! move.to.empty() && sameNets (now.harness, wanted))
            return { HandVerdict::Kind::nothing, "Nothing changes: already joined", {}, {} };
        return check (wanted);
    }
    catch (const HarnessError& why)
    {
        return { HandVerdict::Kind::refused, why.what(), {}, {} };
    }
}

HandVerdict HandCheck::check (const Harness& wanted) const
{
    using Kind = HandVerdict::Kind;
    if (const auto why = whyUnsound (wanted); ! why.empty())
        return { Kind::refused, why, {}, {} };
    if (sameNets (now.harness, wanted))
        return { Kind::nothing, "Nothing changes: the same points stay joined", {}, {} };

    HandVerdict verdict;
    std::vector<std::string> bad;
    const bool sameControls = combinations (wanted, now.setting) == settings;
    const auto wantedSettings = sameControls ? settings : combinations (wanted, now.setting);
    const auto then = positions (wanted, wantedSettings, now.load);
    std::vector<std::string> shorts, silent;
    size_t dead = 0;
    for (size_t i = 0; i < then.size(); ++i)
    {
        dead += then[i].path != Path::open;
        if (then[i].path == Path::open || (sameControls && then[i].path == before[i].path))
            continue;
        (then[i].path == Path::shorted ? shorts : silent).push_back (then[i].name);
    }
    const auto where = [&] (const std::vector<std::string>& places)
    {
        if (places.size() == then.size())
            return places.front().empty() ? std::string() : std::string (" in every position");
        // A position of one switch that is bad whatever the others do is named alone.
        std::vector<std::string> names, rest = places;
        for (const auto& control : controls (wanted))
            for (const auto& position : control.positions)
            {
                std::vector<std::string> with;
                for (size_t i = 0; i < then.size(); ++i)
                    if (const auto lever = wantedSettings[i].levers.find (control.name);
                        lever != wantedSettings[i].levers.end() && lever->second == position)
                        with.push_back (then[i].name);
                const auto isBad = [&] (const auto& name)
                { return std::find (places.begin(), places.end(), name) != places.end(); };
                if (with.empty() || ! std::all_of (with.begin(), with.end(), isBad))
                    continue;
                names.push_back (control.positions.size() > 2 ? spoken (position)
                                                              : spoken (control.name) + " " + spoken (position));
                std::erase_if (rest, [&] (const auto& name) { return std::find (with.begin(), with.end(), name) != with.end(); });
            }
        return " at " + list (rest.empty() ? names : places);
    };
    if (! shorts.empty())
        bad.push_back ("shorts the output" + where (shorts));
    if (! silent.empty())
        bad.push_back (dead == then.size() && shorts.empty() ? "no sound in any position" : "no sound" + where (silent));

    const auto groundedThen = groundedMetal (wanted);
    const Nets nets (wanted);
    std::vector<std::string> floating, live;
    for (const auto& point : metalOf (wanted))
    {
        if (grounded.count (point) == 0 || groundedThen.count (point) > 0)
            continue;
        const bool hot = nets.joined (point, wanted.point (wanted.jack().name + ".tip"));
        (hot ? live : floating).push_back (metalInWords (wanted, point));
    }
    if (! live.empty())
        bad.push_back ("puts the signal on " + list (live) + ": hums when touched");
    if (! floating.empty())
        bad.push_back ("ground left off " + list (floating) + ": will hum when touched");

    if (dead < then.size())
    {
        CircuitConfig config { wanted, now.setting, now.load, now.strings };
        std::vector<std::string> useless;
        for (const auto& control : controls (wanted))
            if (shorts.empty() && silent.empty() && control.positions.empty() && deadPots.count (control.name) == 0
                && doesNothing (config, control.name, wantedSettings))
                useless.push_back (spoken (control.name));
        if (! useless.empty())
            bad.push_back (list (useless) + (useless.size() > 1 ? " do nothing" : " does nothing"));

        std::set<std::string> names;
        for (const auto& control : controls (wanted))
            names.insert (control.name);
        std::erase_if (config.setting.knobs, [&] (const auto& k) { return names.count (k.first) == 0; });
        std::erase_if (config.setting.levers, [&] (const auto& l) { return names.count (l.first) == 0; });
        const auto changed = computeFigures (now, config);
        if (! changed.silent)
        {
            verdict.levelDb = changed.levelDb;
            verdict.peakHz = changed.resonance.peakHz;
        }
        std::string sound;
        if (changed.silent && ! figures.silent)
            sound = shorts.empty() && silent.empty() ? "silent as it is set" : "";
        else if (figures.silent && ! config.response().isSilent())
            sound = "heard again as it is set";
        else if (! figures.silent)
        {
            sound = decibels (changed.levelDb) == "0.0 dB" ? "as loud" : decibels (changed.levelDb);
            const auto kilohertz = [] (double hz)
            {
                char text[32];
                std::snprintf (text, sizeof text, "%.1f kHz", hz / 1000.0);
                return std::string (text);
            };
            if (changed.resonance.peakHz && figures.resonance.peakHz
                && kilohertz (*changed.resonance.peakHz) != kilohertz (*figures.resonance.peakHz))
                sound += ", peak " + kilohertz (*figures.resonance.peakHz) + " to " + kilohertz (*changed.resonance.peakHz);
            else if (changed.resonance.peakHz && ! figures.resonance.peakHz)
                sound += ", peak at " + kilohertz (*changed.resonance.peakHz);
            else if (! changed.resonance.peakHz && figures.resonance.peakHz)
                sound += ", no peak left";
            if (humKind (changed.hum.playingDb) != humKind (figures.hum.playingDb))
                sound += ", " + changed.humWords;
            if (sound == "as loud")
                sound = "no change as it is set";
        }
        if (! sound.empty())
            bad.push_back (sound);
        verdict.kind = bad.size() > (sound.empty() ? 0u : 1u) ? Kind::bad : Kind::heard;
    }
    else
        verdict.kind = Kind::bad;

    for (const auto& words : bad)
        verdict.words += (verdict.words.empty() ? "" : "; ") + words;
    if (! verdict.words.empty())
        verdict.words[0] = static_cast<char> (std::toupper (static_cast<unsigned char> (verdict.words[0])));
    return verdict;
}
}
