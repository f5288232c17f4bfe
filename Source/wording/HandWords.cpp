#include "wording/HandWords.h"

#include "wording/FigureWords.h"
#include "wording/PartWords.h"
#include "wording/Say.h"

#include <cctype>
#include <cmath>

namespace coldiron::wording
{
namespace
{
constexpr size_t mostNamed = 3;

std::string standsAt (const SwitchPosition& at)
{
    return at.isOneOfTwo ? say ("{switch} {position}", plainName (at.lever), plainName (at.position)) : plainName (at.position);
}

/** "up", "both, pull up": where several switches stand. */
std::string positions (const SwitchPositions& all)
{
    std::string text;
    for (const auto& one : all)
        text = text.empty() ? standsAt (one) : say ("{before}, {next}", text, standsAt (one));
    return text;
}

std::string places (const SwitchSettings& where)
{
    std::vector<std::string> names;
    for (const auto& one : where.positions)
        names.push_back (positions (one));
    return listOf (names, mostNamed);
}

std::string shorts (const SwitchSettings& where)
{
    if (where.kind == SwitchSettings::Kind::some)
        return say ("shorts the output at {positions}", places (where));
    return where.hasSwitches ? say ("shorts the output in every position") : say ("shorts the output");
}

std::string noSound (const SwitchSettings& where)
{
    return where.kind == SwitchSettings::Kind::all ? say ("no sound in any position")
                                                   : say ("no sound at {positions}", places (where));
}

/** As the object of a sentence: "the bridge tone's case". */
std::string metal (const TouchedMetal& touched)
{
    const auto inside = [] (std::string name)
    {
        name[0] = static_cast<char> (std::tolower (static_cast<unsigned char> (name[0])));
        return name;
    };
    switch (touched.kind)
    {
    case TouchedMetal::Kind::strings: break;
    case TouchedMetal::Kind::potCase: return say ("the {pot}'s case", inside (title (touched.part)));
    case TouchedMetal::Kind::pickupShield: return say ("the {pickup}'s shield", inside (pickupTitle (touched.part)));
    }
    return say ("the strings");
}

std::string metals (const std::vector<TouchedMetal>& all)
{
    std::vector<std::string> names;
    for (const auto& one : all)
        names.push_back (metal (one));
    return listOf (names, mostNamed);
}

std::string useless (const std::vector<std::string>& knobs)
{
    std::vector<std::string> names;
    for (const auto& knob : knobs)
        names.push_back (plainName (knob));
    return names.size() > 1 ? say ("{knobs} do nothing", listOf (names, mostNamed)) : say ("{knob} does nothing", names.front());
}

/** "+1.2 dB" with a true minus; empty where it rounds to nothing. */
std::string change (double db)
{
    const auto size = decimals (std::abs (db), 1);
    if (size == "0.0")
        return {};
    return db < 0.0 ? say ("\xe2\x88\x92{decibels} dB", size) : say ("+{decibels} dB", size);
}

std::string kilohertz (double hz) { return say ("{kilohertz} kHz", decimals (hz / 1000.0, 1)); }

/** What has become of the peak; empty where nothing has. */
std::string peak (const std::optional<double>& beforeHz, const std::optional<double>& afterHz)
{
    if (! beforeHz && ! afterHz)
        return {};
    if (! beforeHz)
        return say ("peak at {hertz}", kilohertz (*afterHz));
    if (! afterHz)
        return say ("no peak left");
    const auto before = kilohertz (*beforeHz), after = kilohertz (*afterHz);
    return before == after ? std::string() : say ("peak {before} to {after}", before, after);
}

std::string sound (const HandVerdict& verdict)
{
    switch (verdict.sound)
    {
    case HandVerdict::Sound::none: return {};
    case HandVerdict::Sound::silentAsSet: return say ("silent as it is set");
    case HandVerdict::Sound::heardAgain: return say ("heard again as it is set");
    case HandVerdict::Sound::changed: break;
    }
    const auto level = change (verdict.levelDb.value_or (0.0));
    const auto resonance = peak (verdict.peakBeforeHz, verdict.peakHz);
    if (level.empty() && resonance.empty() && ! verdict.humPlayingDb)
        return say ("no change as it is set");
    auto text = level.empty() ? say ("as loud") : level;
    if (! resonance.empty())
        text = say ("{before}, {next}", text, resonance);
    return verdict.humPlayingDb ? say ("{before}, {next}", text, humAgainstSingleCoil (*verdict.humPlayingDb)) : text;
}

std::string nothing (HandVerdict::Nothing why)
{
    switch (why)
    {
    case HandVerdict::Nothing::backWhereItWas: return say ("Nothing changes: soldered back where it was");
    case HandVerdict::Nothing::joinedAlready: return say ("Nothing changes: already joined");
    case HandVerdict::Nothing::sameJoints: break;
    }
    return say ("Nothing changes: the same points stay joined");
}
}

std::string handRefusal (const HandRefusal& refusal, const Harness& harness)
{
    switch (refusal.reason)
    {
    case HandRefusal::Reason::inside:
        return say ("{point} is joined inside the pickup and cannot be reached", point (harness, refusal.detail));
    case HandRefusal::Reason::toItself: return say ("A wire from a point to itself joins nothing");
    case HandRefusal::Reason::wiring: break;
    }
    return refusal.detail;
}

std::string handVerdict (const HandVerdict& verdict, const Harness& harness)
{
    if (verdict.kind == HandVerdict::Kind::refused)
        return verdict.refusal ? handRefusal (*verdict.refusal, harness) : std::string();
    if (verdict.kind == HandVerdict::Kind::nothing)
        return nothing (verdict.nothing);

    std::vector<std::string> all;
    if (verdict.shorted.kind != SwitchSettings::Kind::none)
        all.push_back (shorts (verdict.shorted));
    if (verdict.silent.kind != SwitchSettings::Kind::none)
        all.push_back (noSound (verdict.silent));
    if (! verdict.live.empty())
        all.push_back (say ("puts the signal on {metal}: hums when touched", metals (verdict.live)));
    if (! verdict.floating.empty())
        all.push_back (say ("ground left off {metal}: will hum when touched", metals (verdict.floating)));
    if (! verdict.uselessKnobs.empty())
        all.push_back (useless (verdict.uselessKnobs));
    if (const auto heard = sound (verdict); ! heard.empty())
        all.push_back (heard);
    std::string text;
    for (const auto& one : all)
        text = text.empty() ? one : say ("{before}; {next}", text, one);
    return capitalised (text);
}
}
