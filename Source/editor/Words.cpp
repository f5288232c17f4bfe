#include "editor/Words.h"

#include "response/Hum.h"
#include "session/Report.h"
#include "wording/PartWords.h"

#include <cmath>

namespace coldiron::words
{
namespace
{
const juce::String minus = juce::String::fromUTF8 ("\xe2\x88\x92");
}

juce::String from (const std::string& utf8) { return juce::String::fromUTF8 (utf8.data(), static_cast<int> (utf8.size())); }

juce::String db (double value, bool signedPlus, int decimals)
{
    if (! std::isfinite (value) || value < -250.0)
        return "silent";
    const double step = std::pow (10.0, decimals);
    const double rounded = std::round (value * step) / step;
    const auto size = juce::String (std::abs (rounded), decimals);
    return (rounded < 0.0 ? minus : signedPlus && rounded > 0.0 ? juce::String ("+") : juce::String()) + size + " dB";
}

juce::String hertz (double hz)
{
    if (hz <= 0.0)
        return "none";
    if (hz < 1000.0)
        return juce::String (juce::roundToInt (hz)) + " Hz";
    return juce::String (hz / 1000.0, hz < 9950.0 ? 1 : 0) + " kHz";
}

juce::String quantity (double value, const std::string& unit) { return from (wording::quantity (value, unit)); }
juce::String ohms (double value) { return quantity (value, "\xce\xa9"); }

juce::String seconds (double value) { return juce::String (value, 1) + " s"; }

juce::String knob (double value)
{
    const double rounded = std::round (value * 10.0) / 10.0;
    return std::abs (rounded - std::round (rounded)) < 1e-6 ? juce::String (juce::roundToInt (rounded))
                                                            : juce::String (rounded, 1);
}

juce::String plain (const std::string& partName) { return from (partName).replaceCharacters ("-_", "  "); }

juce::String title (const std::string& partName)
{
    auto words = plain (partName);
    return words.isEmpty() ? words : words.substring (0, 1).toUpperCase() + words.substring (1);
}

juce::String shortName (const std::string& partName) { return plain (partName).replace (" volume", " vol"); }

juce::String settingInWords (const Harness& harness, const Setting& setting)
{
    juce::StringArray levers, turned;
    bool anyKnob = false, allSame = true;
    double first = -1.0;
    for (const auto& control : controls (harness))
    {
        if (! control.positions.empty())
        {
            const auto found = setting.levers.find (control.name);
            const auto position = found == setting.levers.end() ? control.standard : found->second;
            if (position == control.standard && control.positions.size() == 2)
                continue; // a push-pull at rest says nothing new
            levers.add (control.positions.size() > 2 ? from (position) : plain (control.name) + " " + from (position));
            continue;
        }
        anyKnob = true;
        const double value = setting.knob (control.name, control.rest);
        if (first < 0.0)
            first = value;
        allSame = allSame && std::abs (value - first) < 0.05;
        if (std::abs (value - control.rest) > 0.05)
            turned.add (plain (control.name) + " " + knob (value));
    }
    if (anyKnob && allSame && first >= 0.0)
        levers.add ("all at " + knob (first));
    else
        levers.addArray (turned);
    return levers.joinIntoString (", ");
}

juce::String humInWords (const Report& report)
{
    if (! report.complete || ! report.fault.empty())
        return {};
    if (report.silent)
        return "silent";
    const double re = report.figures.hum.playingDb; // the command's words, short
    switch (humKind (re))
    {
    case HumKind::quiet: return "quiet";
    case HumKind::like: return "like 1 coil";
    case HumKind::less:
    case HumKind::more: return db (re, true, 0) + " re 1 coil";
    }
    return {};
}
}
