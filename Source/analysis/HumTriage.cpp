#include "analysis/HumTriage.h"

namespace coldiron
{
namespace
{
using Touch = HumAnswers::Touch;

bool touchChanges (const HumAnswers& hum) { return hum.touched && *hum.touched != Touch::same; }

std::string whatTouchTells (Touch touch)
{
    switch (touch)
    {
    case Touch::falls:
        return "Shielding first: the player grounds what the shield should. A bad screen in the cable (try another), then the "
               "cavity's shield, every cover, baseplate and case. ";
    case Touch::rises:
        return "The string ground first: no wire from bridge to ground, a broken one, or another fault. Measure from the strings "
               "to the jack's sleeve: it should read below an ohm or two. "
               "That is wiring, and a joint cures it. ";
    case Touch::changes:
        return "Ground and shield first. Hum that falls when the strings are touched: shielding or the cable's screen. Hum that "
               "rises or crackles: the string ground or a fault. ";
    case Touch::same: break;
    }
    return {};
}
}

std::optional<size_t> HumQuestion::given (const HumAnswers& hum) const
{
    const auto yesNo = [] (const std::optional<bool>& said)
    { return said ? std::optional<size_t> (*said ? 1 : 0) : std::nullopt; };
    if (key == "everywhere")
        return yesNo (hum.everywhere);
    if (key == "turned")
        return yesNo (hum.turned);
    if (! hum.touched || *hum.touched == Touch::changes)
        return {};
    return *hum.touched == Touch::same ? 0 : *hum.touched == Touch::falls ? 1 : 2;
}

const std::vector<HumQuestion>& humQuestions()
{
    // Common practice of the trade, no source.
    static const std::vector<HumQuestion> questions {
        { "Is it there with every guitar?",
          "everywhere",
          { { "No", "false", "This guitar brings it, or picks it up." },
            { "Yes", "true", "It comes from the amplifier, its mains or a cable, not from this guitar." } } },
        { "And when the strings are touched?",
          "touched",
          { { "Same", "\"same\"", "Touching the strings grounds the player or nothing: the hum does not come that way." },
            { "Falls", "\"falls\"",
              "Shielding, or a bad cable screen: touching the strings grounds them and the player with them." },
            { "Rises", "\"rises\"", "Or crackles: the string ground is missing, or there is a fault. Wiring cures it." } } },
        { "Does it change when the player turns?",
          "turned",
          { { "No", "false", "Little of it comes through the coils." },
            { "Yes", "true", "A magnetic field in the coils. Wiring can help." } } }
    };
    return questions;
}

std::string humAdvice (const HumAnswers& hum)
{
    if (hum.everywhere.value_or (false))
        return "Not this guitar: look at the amplifier, its outlet and the cable first. No rewire cures it.";
    if (touchChanges (hum))
        return whatTouchTells (*hum.touched)
               + (hum.turned.value_or (false) ? "What is left and changes as the player turns is magnetic: then a rewire helps."
                                              : "Then listen again before any rewire.");
    if (hum.turned.value_or (false))
        return "Magnetic, and wiring can help: both coils of a humbucker in use, two coils wound opposite ways together, a dummy "
               "coil. A split gives the hum back.";
    if (hum.touched && hum.turned && hum.everywhere)
        return "None of the three. Turn the volume to 0: hum that stays comes after the guitar.";
    return hum == HumAnswers() ? std::string() : std::string ("Ask the rest before choosing a rewire.");
}

std::string humCaution (const HumAnswers& hum)
{
    if (hum.everywhere.value_or (false))
        return "Amplifiers and mains hold lethal voltages even when off: qualified people only.";
    if (touchChanges (hum))
        return "The string ground ties the player to the amplifier's earth: never remove that earth. Test the outlet, use a "
               "residual-current device. Unplug before opening the guitar.";
    return {};
}

std::string humInShort (const HumAnswers& hum)
{
    if (hum.everywhere.value_or (false))
        return "Hum: not this guitar. Amplifier, outlet, cable first.";
    if (touchChanges (hum))
        return *hum.touched == Touch::falls   ? "Hum: mend shield or cable before any rewire."
               : *hum.touched == Touch::rises ? "Hum: mend the string ground before any rewire."
                                              : "Hum: mend ground and shield before any rewire.";
    if (hum.turned.value_or (false))
        return "Hum: magnetic. A rewire can help.";
    return {};
}
}
