#pragma once

#include <juce_core/juce_core.h>

#include <string>

namespace coldiron
{
class Harness;
struct Report;
struct Setting;

/** Numbers and names as the window writes them: true minus, units, three figures at most. */
namespace words
{
juce::String db (double value, bool signedPlus = true, int decimals = 1); ///< "−6.0 dB", "+1.2 dB"; silent below −250
juce::String hertz (double hz);                                           ///< "3.3 kHz", "440 Hz"
juce::String ohms (double value);                                         ///< "0.98 kΩ"
juce::String quantity (double value, const std::string& unit);            ///< "22 nF"
juce::String seconds (double value);                                      ///< "12.6 s"
juce::String knob (double value);                                         ///< "7", "7.5"
juce::String plain (const std::string& partName);                         ///< "neck-volume" -> "neck volume"
juce::String shortName (const std::string& partName);                     ///< "neck-volume" -> "neck vol"
juce::String title (const std::string& partName);                         ///< "Neck volume"
juce::String from (const std::string& utf8);

/** Where the controls stand, in few words: "bridge, all at 10", "both, neck volume 5". */
juce::String settingInWords (const Harness&, const Setting&);

/** Hum of an option against as recorded: "as now", "+21 dB"; where what is left is an assumed mismatch no number but
    "quiet", "below 1 coil", "like 1 coil", "above 1 coil". */
juce::String humInWords (const Report&);
}
}
