#include "wording/FigureWords.h"

#include "wording/Say.h"

#include <cmath>

namespace coldiron::wording
{
std::string levelChange (double db)
{
    const double size = std::abs (db);
    const bool louder = db > 0.0;
    if (db < -100.0)
        return say ("silent");
    if (size < 0.5)
        return say ("as loud");
    if (size < 1.5)
        return louder ? say ("hardly louder") : say ("hardly quieter");
    if (size < 3.0)
        return louder ? say ("a little louder") : say ("a little quieter");
    if (size < 6.5)
        return louder ? say ("clearly louder, turn the amplifier down a little")
                      : say ("clearly quieter, turn the amplifier up a little");
    if (size < 12.0)
        return louder ? say ("much louder, turn the amplifier down") : say ("much quieter, turn the amplifier up");
    return louder ? say ("very much louder, turn the amplifier down a lot")
                  : say ("very much quieter, turn the amplifier up a lot");
}

std::string humAgainstSingleCoil (double playingDb)
{
    const int size = rounded (std::abs (playingDb));
    switch (humKind (playingDb))
    {
    case HumKind::quiet: return say ("quiet");
    case HumKind::less: return say ("hums, {decibels} dB less than a single coil", size);
    case HumKind::like: return say ("hums like a single coil");
    case HumKind::more: break;
    }
    return say ("hums more than a single coil (+{decibels} dB)", size);
}

std::string hum (const Figures& figures)
{
    return figures.silent ? say ("silent") : humAgainstSingleCoil (figures.hum.playingDb);
}

std::string noiseTrust (const NoiseTrust& trust)
{
    if (! trust.trustedToHz)
        return {};
    const auto kilohertz = decimals (std::round (*trust.trustedToHz / 100.0) / 10.0, 1);
    const int lift = rounded (trust.liftDb);
    if (trust.wasTurnedDown)
        return say ("trust it up to {kilohertz} kHz: above, the take's own noise comes up by {decibels} dB. "
                    "Record again with volume and tone at 10: what was turned down there cannot be brought back without its "
                    "noise.",
                    kilohertz, lift);
    return say ("trust it up to {kilohertz} kHz: above, the take's own noise comes up by {decibels} dB. "
                "Record again louder, up to peaks of -6 dBFS, away from screens and chargers, with a few seconds of nothing "
                "played.",
                kilohertz, lift);
}

std::string otherCoil (const OtherCoil& choice)
{
    const double won = choice.humDb - choice.otherHumDb;
    const auto where =
        choice.lever.empty() ? say ("here") : say ("with the {lever} at {position}", choice.lever, choice.position);
    if (won > 40.0)
        return say ("{where} the two coils kept are wound alike and hum together: keep the {other} coil of the {pickup} instead "
                    "of its {kept} and the hum goes",
                    where, choice.other, choice.pickup, choice.kept);
    return say ("{where} the two coils kept are wound alike and hum together: keep the {other} coil of the {pickup} instead of "
                "its {kept} and the hum falls by about {decibels} dB",
                where, choice.other, choice.pickup, choice.kept, rounded (won));
}

std::string mutesOthers (const VolumeFigures& volume)
{
    if (! volume.mutesOthers)
        return {};
    return *volume.mutesOthers ? say ("{volume} at 0 mutes the other pickup", volume.knob)
                               : say ("{volume} at 0 does not mute the other pickup", volume.knob);
}
}
