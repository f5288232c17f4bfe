#include "wording/HumTriageWords.h"

#include "wording/Say.h"

namespace coldiron::wording
{
namespace
{
using About = HumQuestion::About;
using Touch = HumAnswers::Touch;

/** What touch alone tells; what is left comes behind it. */
std::string whatTouchTells (Touch touch)
{
    switch (touch)
    {
    case Touch::falls:
        return say ("Shielding first: the player grounds what the shield should. A bad screen in the cable (try another), then "
                    "the cavity's shield, every cover, baseplate and case.");
    case Touch::rises:
        return say ("The string ground first: no wire from bridge to ground, a broken one, or another fault. Measure from the "
                    "strings to the jack's sleeve: it should read below an ohm or two. That is wiring, and a joint cures it.");
    case Touch::changes:
        return say ("Ground and shield first. Hum that falls when the strings are touched: shielding or the cable's screen. Hum "
                    "that rises or crackles: the string ground or a fault.");
    case Touch::same: break;
    }
    return {};
}
}

std::string humQuestion (const HumQuestion& question)
{
    switch (question.about)
    {
    case About::everyGuitar: return say ("Is it there with every guitar?");
    case About::touch: return say ("And when the strings are touched?");
    case About::turning: break;
    }
    return say ("Does it change when the player turns?");
}

std::string humAnswer (const HumQuestion& question, size_t answer)
{
    if (question.about == About::touch)
        return answer == 0 ? say ("Same") : answer == 1 ? say ("Falls") : say ("Rises");
    return answer == 0 ? say ("No") : say ("Yes");
}

std::string humAnswerMeans (const HumQuestion& question, size_t answer)
{
    switch (question.about)
    {
    case About::everyGuitar:
        return answer == 0 ? say ("This guitar brings it, or picks it up.")
                           : say ("It comes from the amplifier, its mains or a cable, not from this guitar.");
    case About::touch:
        return answer == 0 ? say ("Touching the strings grounds the player or nothing: the hum does not come that way.")
               : answer == 1
                   ? say ("Shielding, or a bad cable screen: touching the strings grounds them and the player with them.")
                   : say ("Or crackles: the string ground is missing, or there is a fault. Wiring cures it.");
    case About::turning: break;
    }
    return answer == 0 ? say ("Little of it comes through the coils.") : say ("A magnetic field in the coils. Wiring can help.");
}

std::string humAdvice (const HumAnswers& hum)
{
    switch (humCause (hum))
    {
    case HumCause::notAsked: return {};
    case HumCause::open: return say ("Ask the rest before choosing a rewire.");
    case HumCause::elsewhere:
        return say ("Not this guitar: look at the amplifier, its outlet and the cable first. No rewire cures it.");
    case HumCause::touch:
        return hum.turned.value_or (false)
                   ? say ("{first} What is left and changes as the player turns is magnetic: then a rewire helps.",
                          whatTouchTells (*hum.touched))
                   : say ("{first} Then listen again before any rewire.", whatTouchTells (*hum.touched));
    case HumCause::magnetic:
        return say ("Magnetic, and wiring can help: both coils of a humbucker in use, two coils wound opposite ways together, a "
                    "dummy coil. A split gives the hum back.");
    case HumCause::none: break;
    }
    return say ("None of the three. Turn the volume to 0: hum that stays comes after the guitar.");
}

std::string humCaution (const HumAnswers& hum)
{
    switch (humCause (hum))
    {
    case HumCause::elsewhere: return say ("Amplifiers and mains hold lethal voltages even when off: qualified people only.");
    case HumCause::touch:
        return say ("The string ground ties the player to the amplifier's earth: never remove that earth. Test the outlet, use a "
                    "residual-current device. Unplug before opening the guitar.");
    case HumCause::notAsked:
    case HumCause::open:
    case HumCause::magnetic:
    case HumCause::none: break;
    }
    return {};
}

std::string humInShort (const HumAnswers& hum)
{
    switch (humCause (hum))
    {
    case HumCause::elsewhere: return say ("Hum: not this guitar. Amplifier, outlet, cable first.");
    case HumCause::touch:
        return *hum.touched == Touch::falls   ? say ("Hum: mend shield or cable before any rewire.")
               : *hum.touched == Touch::rises ? say ("Hum: mend the string ground before any rewire.")
                                              : say ("Hum: mend ground and shield before any rewire.");
    case HumCause::magnetic: return say ("Hum: magnetic. A rewire can help.");
    case HumCause::notAsked:
    case HumCause::open:
    case HumCause::none: break;
    }
    return {};
}
}
