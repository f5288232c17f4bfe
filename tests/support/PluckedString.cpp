#include "support/PluckedString.h"
#include "support/PluckedStringScatter.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

namespace coldiron::support
{
namespace
{
constexpr double pi = 3.14159265358979323846;
constexpr double topHz = 15000.0;
constexpr double releaseSeconds = 0.12;

/** Decay of a partial [1/s]; kiloHertz is its frequency. */
double decay (const PluckedString& string, const PluckedNote& note, double kiloHertz)
{
    const double f = kiloHertz;
    double sigma = string.wound ? 0.5 + 0.35 * f + 0.25 * f * f : 0.5 + 0.25 * f + 0.06 * f * f;
    if (note.fret > 0)
        sigma = 1.3 * sigma + 0.15;
    return sigma + note.mute * (6.0 + 9.0 * std::pow (f, 0.7));
}

/** amplitude exp (-decay t) sin (2 pi hz t), t = (i + lead) / rate, added to buffer, until it is 120 dB down. */
void addPartial (std::vector<double>& buffer, double rate, double lead, double amplitude, double hz, double sigma)
{
    // Lanes of eight steps: v[i] = 2 r^8 cos (8 w) v[i-8] - r^16 v[i-16], which the compiler can vectorize.
    constexpr size_t lanes = 8;
    const double w = 2.0 * pi * hz / rate, damping = sigma / rate;
    const double first = 2.0 * std::exp (-damping * lanes) * std::cos (w * lanes), second = std::exp (-2.0 * damping * lanes);
    const size_t length = std::min (buffer.size(), static_cast<size_t> (13.8 / sigma * rate) + 2 * lanes);

    std::array<double, lanes> older {}, newer {};
    for (size_t i = 0; i < lanes; ++i)
    {
        const double t = static_cast<double> (i) + lead, u = t - lanes;
        older[i] = amplitude * std::exp (-damping * u) * std::sin (w * u);
        newer[i] = amplitude * std::exp (-damping * t) * std::sin (w * t);
    }
    for (size_t block = 0; block + lanes <= length; block += lanes)
    {
        for (size_t i = 0; i < lanes; ++i)
        {
            buffer[block + i] += newer[i];
            const double next = first * newer[i] - second * older[i];
            older[i] = newer[i];
            newer[i] = next;
        }
    }
}

struct Partial
{
    double amplitude, hz, sigma;
    int number;
    double detune, secondSigma;
};

std::vector<Partial> partialsOf (const PluckedString& string, const PluckedNote& note, double lengthMm, Scatter& scatter)
{
    const double f0 = string.openHz * std::pow (2.0, note.fret / 12.0);
    const double shortening = (string.scaleMm + string.saddleMm) / lengthMm;
    const double stiffness = string.stiffness * shortening * shortening;
    const double plectrum = note.pluck * string.scaleMm + string.saddleMm;
    const double detune = scatter.between (0.05, 0.4), damped = scatter.between (0.5, 0.8);

    std::vector<Partial> partials;
    for (int n = 1;; ++n)
    {
        const double hz = n * f0 * std::sqrt (1.0 + stiffness * n * n);
        if (hz > topHz)
            break;
        const double soft = n * pi * note.softMm / lengthMm;
        const double shape = std::sin (n * pi * plectrum / lengthMm) / n * std::exp (-0.5 * soft * soft);
        const double sigma = decay (string, note, hz / 1000.0);
        partials.push_back ({ note.level * shape * scatter.factor (1.0), hz, sigma, n, detune, damped * sigma });
    }
    return partials;
}

/** Adds one note to every coil. Modes are summed on the string's own terms, then weighted at each coil. */
void addNote (const PluckedString& string, const PluckedNote& note, const std::vector<double>& coilMm, double rate,
              Scatter& scatter, std::vector<std::vector<double>>& emfs)
{
    const double lengthMm = string.scaleMm / std::pow (2.0, note.fret / 12.0) + string.saddleMm;
    const auto partials = partialsOf (string, note, lengthMm, scatter);

    const double start = note.start * rate;
    const auto firstFrame = static_cast<size_t> (std::ceil (start));
    const double lead = static_cast<double> (firstFrame) - start;
    if (firstFrame >= emfs.front().size())
        return;
    const auto wanted = static_cast<size_t> ((note.length + releaseSeconds) * rate) + 1;
    const size_t frames = std::min (wanted, emfs.front().size() - firstFrame);
    const double releaseFrom = note.length * rate, releaseFrames = releaseSeconds * rate;

    for (size_t k = 0; k < coilMm.size(); ++k)
    {
        std::vector<double> sound ((frames + 7) / 8 * 8, 0.0);
        for (const auto& p : partials)
        {
            const double heard = p.amplitude * std::sin (p.number * pi * (coilMm[k] + string.saddleMm) / lengthMm);
            addPartial (sound, rate, lead, heard, p.hz, p.sigma);
            addPartial (sound, rate, lead, 0.35 * heard, p.hz + p.detune, p.secondSigma);
        }
        for (size_t i = 0; i < frames; ++i)
        {
            const double into = std::clamp ((static_cast<double> (i) + lead - releaseFrom) / releaseFrames, 0.0, 1.0);
            emfs[k][firstFrame + i] += sound[i] * 0.5 * (1.0 + std::cos (pi * into));
        }
    }
}
}

PluckedInstrument pluckedGuitar (double scaleMm)
{
    const char* names[] = { "E2", "A2", "D3", "G3", "B3", "E4" };
    const double hertz[] = { 82.4069, 110.0, 146.8324, 195.9977, 246.9417, 329.6276 };
    const double stiffness[] = { 6.6e-5, 5.0e-5, 3.3e-5, 1.07e-4, 4.0e-5, 1.35e-5 };
    const double saddle[] = { 3.0, 2.2, 1.5, 2.0, 1.2, 0.6 };
    PluckedInstrument guitar;
    for (int s = 0; s < 6; ++s)
        guitar.strings.push_back (
            { names[s], hertz[s], scaleMm, stiffness[s] * std::pow (648.0 / scaleMm, 2.0), saddle[s], s < 3 });
    return guitar;
}

PluckedInstrument pluckedBass (double scaleMm)
{
    const char* names[] = { "E1", "A1", "D2", "G2" };
    const double hertz[] = { 41.2034, 55.0, 73.4162, 97.9989 };
    const double stiffness[] = { 1.6e-4, 9e-5, 6e-5, 4e-5 };
    const double saddle[] = { 3.0, 2.2, 1.5, 0.8 };
    PluckedInstrument bass;
    for (int s = 0; s < 4; ++s)
        bass.strings.push_back ({ names[s], hertz[s], scaleMm, stiffness[s] * std::pow (864.0 / scaleMm, 2.0), saddle[s], true });
    return bass;
}

std::vector<std::string> Phrase::played (const PluckedInstrument& instrument) const
{
    std::vector<std::string> names;
    for (size_t s = 0; s < instrument.strings.size(); ++s)
        if (std::any_of (notes.begin(), notes.end(), [s] (const auto& n) { return n.string == static_cast<int> (s); }))
            names.push_back (instrument.strings[s].name);
    return names;
}

std::vector<std::vector<double>> pluckedEmfs (const PluckedInstrument& instrument, const Phrase& phrase,
                                              const std::vector<std::vector<double>>& distances, double sampleRate)
{
    if (sampleRate < 32000.0)
        throw std::invalid_argument ("pluckedEmfs: partials go up to 15 kHz, so the rate must be 32 kHz or more");
    const auto frames = static_cast<size_t> (std::lround (phrase.seconds * sampleRate));
    std::vector<std::vector<double>> emfs (distances.size(), std::vector<double> (frames, 0.0));
    Scatter scatter (phrase.seed);
    for (const auto& note : phrase.notes)
    {
        std::vector<double> coilMm;
        for (const auto& coil : distances)
            coilMm.push_back (coil.at (static_cast<size_t> (note.string)));
        addNote (instrument.strings.at (static_cast<size_t> (note.string)), note, coilMm, sampleRate, scatter, emfs);
    }
    return emfs;
}
}
