#include "analysis/HandCheck.h"

#include "guitar/Nets.h"
#include "job/Readers.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
constexpr size_t mostSettings = 256;

HandVerdict refused (HandRefusal why)
{
    HandVerdict verdict;
    verdict.kind = HandVerdict::Kind::refused;
    verdict.refusal = std::move (why);
    return verdict;
}

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

TouchedMetal touched (const std::string& point)
{
    if (point == "strings")
        return {};
    const auto [part, terminal] = splitPoint (point);
    return { terminal == "case" ? TouchedMetal::Kind::potCase : TouchedMetal::Kind::pickupShield, part };
}

/** @param at     positions of the switches at which something is so
    @param every  all there are */
SwitchSettings settingsWhere (const std::vector<SwitchPositions>& at, const std::vector<SwitchPositions>& every)
{
    SwitchSettings where;
    if (at.empty())
        return where;
    where.hasSwitches = ! at.front().empty();
    where.kind = at.size() == every.size() ? SwitchSettings::Kind::all : SwitchSettings::Kind::some;
    if (where.kind == SwitchSettings::Kind::all)
        return where;
    std::vector<SwitchPositions> alone, rest = at;
    std::vector<SwitchPosition> tried;
    for (size_t lever = 0; lever < every.front().size(); ++lever)
        for (const auto& setting : every)
        {
            const auto& position = setting[lever];
            if (std::find (tried.begin(), tried.end(), position) != tried.end())
                continue;
            tried.push_back (position);
            const auto isThere = [&] (const SwitchPositions& s) { return s[lever] == position; };
            if (std::count_if (at.begin(), at.end(), isThere) != std::count_if (every.begin(), every.end(), isThere))
                continue;
            alone.push_back ({ position });
            std::erase_if (rest, isThere);
        }
    where.positions = rest.empty() ? alone : at;
    return where;
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
                position.switches.push_back ({ control.name, lever->second, control.positions.size() <= 2 });
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
    const auto nothing = [] (HandVerdict::Nothing why)
    {
        HandVerdict verdict;
        verdict.kind = HandVerdict::Kind::nothing;
        verdict.nothing = why;
        return verdict;
    };
    if (! move.from.empty() && move.from == move.to)
        return nothing (HandVerdict::Nothing::backWhereItWas);
    try
    {
        const Harness wanted = applyStep (now.harness, move);
        // A wire between points joined already, by another way, is solder for nothing.
        if (move.from.empty() && ! move.to.empty() && sameNets (now.harness, wanted))
            return nothing (HandVerdict::Nothing::joinedAlready);
        return check (wanted);
    }
    catch (const HarnessError& why)
    {
        return refused (refusalOf (why));
    }
}

HandVerdict HandCheck::check (const Harness& wanted) const
{
    using Kind = HandVerdict::Kind;
    if (const auto why = whyUnsound (wanted); ! why.empty())
        return refused ({ HandRefusal::Reason::wiring, why });
    HandVerdict verdict;
    if (sameNets (now.harness, wanted))
    {
        verdict.kind = Kind::nothing;
        return verdict;
    }

    const bool sameControls = combinations (wanted, now.setting) == settings;
    const auto wantedSettings = sameControls ? settings : combinations (wanted, now.setting);
    const auto then = positions (wanted, wantedSettings, now.load);
    std::vector<SwitchPositions> every, shorts, silent;
    size_t dead = 0;
    for (size_t i = 0; i < then.size(); ++i)
    {
        every.push_back (then[i].switches);
        dead += then[i].path != Path::open;
        if (then[i].path == Path::open || (sameControls && then[i].path == before[i].path))
            continue;
        (then[i].path == Path::shorted ? shorts : silent).push_back (then[i].switches);
    }
    const bool isDead = dead == then.size();
    verdict.shorted = settingsWhere (shorts, every);
    verdict.silent = settingsWhere (! silent.empty() && isDead && shorts.empty() ? every : silent, every);
    findMetal (wanted, verdict);
    if (! isDead)
        hear (wanted, wantedSettings, verdict);
    const bool isHarmed = ! shorts.empty() || ! silent.empty() || ! verdict.live.empty() || ! verdict.floating.empty()
                          || ! verdict.uselessKnobs.empty();
    verdict.kind = isDead || isHarmed ? Kind::bad : Kind::heard;
    return verdict;
}

void HandCheck::findMetal (const Harness& wanted, HandVerdict& verdict) const
{
    const auto groundedThen = groundedMetal (wanted);
    const Nets nets (wanted);
    for (const auto& point : metalOf (wanted))
        if (grounded.count (point) > 0 && groundedThen.count (point) == 0)
            (nets.joined (point, wanted.point (wanted.jack().name + ".tip")) ? verdict.live : verdict.floating)
                .push_back (touched (point));
}

void HandCheck::hear (const Harness& wanted, const std::vector<Setting>& wantedSettings, HandVerdict& verdict) const
{
    CircuitConfig config { wanted, now.setting, now.load, now.strings };
    const bool isWhole = verdict.shorted.kind == SwitchSettings::Kind::none && verdict.silent.kind == SwitchSettings::Kind::none;
    std::set<std::string> names;
    for (const auto& control : controls (wanted))
    {
        names.insert (control.name);
        if (isWhole && control.positions.empty() && deadPots.count (control.name) == 0
            && doesNothing (config, control.name, wantedSettings))
            verdict.uselessKnobs.push_back (control.name);
    }
    std::erase_if (config.setting.knobs, [&] (const auto& k) { return names.count (k.first) == 0; });
    std::erase_if (config.setting.levers, [&] (const auto& l) { return names.count (l.first) == 0; });

    const auto changed = computeFigures (now, config);
    if (! changed.silent)
    {
        verdict.sound = HandVerdict::Sound::changed;
        verdict.levelDb = changed.levelDb;
        verdict.peakHz = changed.resonance.peakHz;
        verdict.peakBeforeHz = figures.resonance.peakHz;
        if (humKind (changed.hum.playingDb) != humKind (figures.hum.playingDb))
            verdict.humPlayingDb = changed.hum.playingDb;
    }
    else if (! figures.silent)
        verdict.sound = isWhole ? HandVerdict::Sound::silentAsSet : HandVerdict::Sound::none;
    else if (! config.response().isSilent())
        verdict.sound = HandVerdict::Sound::heardAgain;
}
}
