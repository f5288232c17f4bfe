#include "audition/Figures.h"

#include "audition/Drives.h"
#include "audition/Hum.h"
#include "audition/Noise.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
constexpr double assumedMismatch = 0.02; ///< of turns, between coils meant to be equal
constexpr double metreFarads = 100e-12;

double db (double ratio) { return 20.0 * std::log10 (std::max (ratio, 1e-15)); }

double levelOf (const Change& change, const Spectrum& take)
{
    Spectrum spectrum = take;
    if (spectrum.isEmpty())
        for (double hz = 80.0; hz <= 5000.0; hz *= std::exp2 (1.0 / 24.0))
        {
            spectrum.hz.push_back (hz);
            spectrum.power.push_back (1.0);
        }
    const auto gains = change.gains (spectrum.hz);
    double before = 0.0, after = 0.0;
    for (size_t i = 0; i < gains.size(); ++i)
    {
        before += spectrum.power[i];
        after += spectrum.power[i] * gains[i] * gains[i];
    }
    return db (std::sqrt (after / before));
}

/** The top of the loudest hump of the plain response above 200 Hz, and where it has fallen by 3 dB beyond. */
void findPeak (const Voice& voice, Figures& figures)
{
    const auto level = [&] (double hz) { return db (std::abs (voice.plain (hz))); };
    const double reference = level (100.0), step = std::exp2 (1.0 / 48.0);
    double topHz = 200.0, topDb = level (200.0);
    for (double hz = 200.0; hz <= 40000.0; hz *= step)
        if (const double here = level (hz); here > topDb)
        {
            topHz = hz;
            topDb = here;
        }

    double corner = topHz;
    if (topHz > 200.0 && topHz < 39000.0)
    {
        double low = std::log (topHz / step), high = std::log (topHz * step);
        for (int i = 0; i < 60; ++i) // ternary search: one hump between the neighbours
        {
            const double a = low + (high - low) / 3.0, b = high - (high - low) / 3.0;
            (level (std::exp (a)) < level (std::exp (b)) ? low : high) = level (std::exp (a)) < level (std::exp (b)) ? a : b;
        }
        topHz = std::exp (0.5 * (low + high));
        if (level (topHz) > reference + 0.05)
        {
            figures.peakHz = topHz;
            figures.peakDb = level (topHz) - reference;
            corner = topHz;
        }
    }
    if (! figures.peakHz)
        corner = 100.0;
    for (double hz = corner; hz <= 40000.0; hz *= step)
        if (level (hz * step) < reference - 3.0103)
        {
            double low = std::log (hz), high = std::log (hz * step);
            for (int i = 0; i < 50; ++i)
                (level (std::exp (0.5 * (low + high))) > reference - 3.0103 ? low : high) = 0.5 * (low + high);
            figures.cornerHz = std::exp (0.5 * (low + high));
            return;
        }
}

/** Hum against the hum that one coil would give at the level of this voice: 0 dB one coil, far below: they cancel. */
double oneCoilDb (const Voice& voice)
{
    constexpr double hz = 150.0;
    const double strings = drivesOf (voice, hz).norm();
    return strings > 0.0 ? db (std::abs (voice.hum (hz)) / strings) : -300.0;
}

std::string humInWords (double oneCoil)
{
    if (oneCoil > 2.5) // two coils wound alike add 3 dB; a shorted neighbour adds up to 2 through its coupling
        return "hums louder than a single coil";
    if (oneCoil > -6.0)
        return "hums like a single coil";
    if (oneCoil > -20.0)
        return "hums less than a single coil";
    return "quiet, the coils cancel hum";
}

void findHum (const Voice& recorded, const Voice& option, Figures& figures)
{
    const MainsField field;
    figures.humJackDb = db (humRms (option, field, assumedMismatch)) - db (humRms (recorded, field, assumedMismatch));
    figures.humAgainstPlayingDb = figures.humJackDb - figures.levelDb;
    figures.humOneCoilDb = oneCoilDb (option);
    const double floorDb = db (assumedMismatch) + 6.0;
    figures.humByMismatch = figures.humOneCoilDb < floorDb || oneCoilDb (recorded) < floorDb;
    figures.humWords = humInWords (figures.humOneCoilDb);
}
}

Figures computeFigures (const Side& recorded, const Side& option, const Spectrum& take)
{
    const Voice before = recorded.voice(), after = option.voice();
    const Change change (before, after);
    Figures figures;
    figures.silent = after.isSilent() || before.isSilent();
    figures.sureness = change.sureness();
    figures.volumes = volumeFigures (option);

    BuildOptions bare;
    bare.withLoad = false;
    figures.outputOhms = std::abs (option.voice (bare).outputImpedance (1000.0));
    figures.hissUv = 1e6 * thermalNoise ([&] (double hz) { return after.outputImpedance (hz); }, 20.0, 20000.0);
    if (figures.silent)
    {
        figures.levelDb = -300.0;
        figures.humWords = "silent";
        return figures;
    }

    figures.levelDb = levelOf (change, take);
    findPeak (after, figures);
    findHum (before, after, figures);
    Side longer = option;
    longer.load.cableFarads += metreFarads;
    figures.dbPerMetre = db (std::abs (longer.voice().plain (5000.0))) - db (std::abs (after.plain (5000.0)));
    return figures;
}

std::string levelWords (double db)
{
    const double size = std::abs (db);
    if (db < -100.0)
        return "silent";
    if (size < 0.5)
        return "as loud";
    const std::string way = db > 0.0 ? "louder" : "softer";
    const std::string turn = db > 0.0 ? "turn the amplifier down" : "turn the amplifier up";
    if (size < 1.5)
        return "hardly " + way;
    if (size < 3.0)
        return "a little " + way;
    if (size < 6.5)
        return "clearly " + way + ", " + turn + " a little";
    if (size < 12.0)
        return "much " + way + ", " + turn;
    return "far " + way + ", " + turn + " a lot";
}
}
