#include "wording/TakeWords.h"

#include "wording/ConfidenceWords.h"
#include "wording/Say.h"

#include <cmath>

namespace coldiron::wording
{
namespace
{
std::string sidesDiffer (const TakeFault& fault)
{
    switch (fault.sides)
    {
    case TakeFault::Sides::leftSilent: return say ("the left side is silent");
    case TakeFault::Sides::rightSilent: return say ("the right side is silent");
    case TakeFault::Sides::upsideDown: return say ("one side is upside down");
    case TakeFault::Sides::louder: return say ("one side is {decibels} dB louder", rounded (fault.db));
    case TakeFault::Sides::alike:
    case TakeFault::Sides::differ: break;
    }
    return say ("the sides differ");
}
}

std::string pickups (const std::vector<std::string>& names)
{
    return names.empty() ? say ("nothing") : names.size() == 1 ? say ("{pickup} alone", names.front()) : listOf (names);
}

std::string derivedFrom (const TakeChoice& choice)
{
    return choice.take < 0 ? std::string()
                           : say ("from take {number}, {pickups}: {sure}", choice.take + 1, pickups (choice.pickups),
                                  similarity (choice.confidence.playing));
}

std::string surerTake (const TakeChoice& choice)
{
    const auto& surer = choice.surer;
    switch (surer.kind)
    {
    case SurerTake::Kind::none: break;
    case SurerTake::Kind::otherTake:
        return say ("surer from take {number}, {pickups}: {sure}", surer.take + 1, pickups (surer.pickups),
                    similarity (surer.playing));
    case SurerTake::Kind::recordAnother:
        return surer.pickups.size() == 1
                   ? say ("record a take of the {pickup} pickup: this would be surer", surer.pickups.front())
                   : say ("record one take per pickup ({pickups}): this would be surer", listOf (surer.pickups));
    }
    return {};
}

std::string takeFault (const TakeFault& fault)
{
    switch (fault.kind)
    {
    case TakeFault::Kind::silent: return say ("silent");
    case TakeFault::Kind::clipped:
        return fault.places == 1 ? say ("clipped in 1 place") : say ("clipped in {count} places", fault.places);
    case TakeFault::Kind::tooQuiet: return say ("quiet, peaks at \xe2\x88\x92{decibels} dBFS", rounded (-fault.db));
    case TakeFault::Kind::noisy: return say ("noisy, {decibels} dB under the playing", rounded (-fault.db));
    case TakeFault::Kind::dark: return say ("dark, treble {decibels} dB under the mids", rounded (-fault.db));
    case TakeFault::Kind::sidesDiffer: break;
    }
    return sidesDiffer (fault);
}

std::string takeFaultCost (const TakeFault& fault)
{
    switch (fault.kind)
    {
    case TakeFault::Kind::silent: return say ("Nothing was recorded. Check the cable, the input chosen and the guitar's volume.");
    case TakeFault::Kind::clipped:
        return say ("What was cut off there is gone, and every option repeats the crackle brighter or duller. Turn the input "
                    "down until the hardest stroke stays under -6 dBFS, and play it again.");
    case TakeFault::Kind::tooQuiet:
        return say ("Noise comes up with the take when it is turned up to playing level. Raise the input by about {decibels} dB.",
                    rounded (-12.0 - fault.db));
    case TakeFault::Kind::noisy:
        return say ("Every brighter option lifts this noise, and a quiet wiring cannot show how quiet it is. Record away from "
                    "screens, chargers and dimmers, and louder.");
    case TakeFault::Kind::dark:
        return say ("A tone control that was down, or a long cable. Every other option has to lift treble that is hardly there, "
                    "with its noise. Play it again with volume and tone at 10.");
    case TakeFault::Kind::sidesDiffer: break;
    }
    return say ("A guitar gives one signal. Two sides that differ come from an effect or a second input; options are computed "
                "for a dry take. Record the guitar alone, in mono.");
}
}
