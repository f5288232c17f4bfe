#include "paper/HumTriage.h"

namespace coldiron
{
const std::vector<HumQuestion>& humQuestions()
{
    // Common practice of the trade.
    static const std::vector<HumQuestion> questions {
        { "Is it there with every guitar?", &HumAnswers::everywhere, "everywhere",
          "It comes from the amplifier, its mains or a cable, not from this guitar.", "This guitar brings it, or picks it up." },
        { "Does it change when the strings are touched?", &HumAnswers::touched, "touched",
          "Ground or shield: the player stands in for it. Mend that first.", "Strings and bridge are grounded, or the hum does not come that way." },
        { "Does it change when the player turns?", &HumAnswers::turned, "turned",
          "A magnetic field in the coils. Wiring can help.", "Little of it comes through the coils." } };
    return questions;
}

std::string humAdvice (const HumAnswers& hum)
{
    if (hum.everywhere.value_or (false))
        return "Not this guitar: look at the amplifier, its outlet and the cable first. No rewire cures it.";
    if (hum.touched.value_or (false))
        return std::string ("Grounding and shielding first: the bridge's ground wire, the jack's sleeve, every case, the cavity. ")
               + (hum.turned.value_or (false) ? "What is left and changes as the player turns is magnetic: then a rewire helps."
                                              : "Then listen again before any rewire.");
    if (hum.turned.value_or (false))
        return "Magnetic, and wiring can help: both coils of a humbucker in use, two coils wound opposite ways together, a dummy coil. A split gives the hum back.";
    if (hum.touched && hum.turned && hum.everywhere)
        return "None of the three. Turn the volume to 0: hum that stays comes after the guitar.";
    return hum == HumAnswers() ? std::string() : std::string ("Ask the rest before choosing a rewire.");
}

std::string humCaution (const HumAnswers& hum)
{
    if (hum.everywhere.value_or (false))
        return "Amplifiers and mains hold lethal voltages even when off: qualified people only.";
    if (hum.touched.value_or (false))
        return "The string ground ties the player to the amplifier's earth: never remove that earth. Test the outlet, use a residual-current device. Unplug before opening the guitar.";
    return {};
}

std::string humInShort (const HumAnswers& hum)
{
    if (hum.everywhere.value_or (false))
        return "Hum: not this guitar. Amplifier, outlet, cable first.";
    if (hum.touched.value_or (false))
        return "Hum: mend ground and shield before any rewire.";
    if (hum.turned.value_or (false))
        return "Hum: magnetic. A rewire can help.";
    return {};
}
}
