#include "engine/OutputChain.h"

#include "filter/FilterDesigner.h"
#include "response/Hum.h"

#include <algorithm>
#include <cmath>
#include <complex>

namespace coldiron
{
namespace
{
using Complex = std::complex<double>;

/** Gain of a section at s = j f/f0. */
double highPass (double ratio, double q)
{
    const Complex s (0.0, ratio);
    return std::abs (s * s / (s * s + s / q + 1.0));
}

double lowPass (double ratio, double q)
{
    const Complex s (0.0, ratio);
    return std::abs (1.0 / (s * s + s / q + 1.0));
}

double peaking (double ratio, double q, double db)
{
    const Complex s (0.0, ratio);
    const double a = std::pow (10.0, db / 40.0);
    return std::abs ((s * s + s * a / q + 1.0) / (s * s + s / (a * q) + 1.0));
}

double rawAmplifier (double hz)
{
    return highPass (hz / 95.0, 1.1) * peaking (hz / 420.0, 0.7, -5.0) * peaking (hz / 2600.0, 1.4, 6.0)
           * lowPass (hz / 4700.0, 0.8) * lowPass (hz / 4700.0, 1.0);
}

constexpr double lowest = 20.0;
constexpr int perOctave = 24, bands = 240; ///< to 20 kHz

/** Mean of equal parts of 80 Hz to 5 kHz on a log axis. */
template <typename Power>
double meanPower (const Power& power)
{
    double sum = 0.0;
    constexpr int first = 2 * perOctave, last = 8 * perOctave - 1; // from 80 Hz, six octaves less a step: 4.97 kHz
    for (int i = first; i <= last; ++i)
        sum += power (i);
    return sum / (last - first + 1);
}

double bandHz (int band) { return lowest * std::exp2 (static_cast<double> (band) / perOctave); }

/** Power of an impulse response in each band. */
std::vector<double> bandPowers (const std::vector<float>& impulse, double rate)
{
    int size = 1 << 15;
    while (static_cast<size_t> (size) < impulse.size())
        size *= 2;
    std::vector<double> re (static_cast<size_t> (size), 0.0), im (re);
    std::copy (impulse.begin(), impulse.end(), re.begin());
    const Fft fft (size);
    fft.forward (re.data(), im.data());
    std::vector<double> powers;
    for (int band = 0; band < bands; ++band)
    {
        const auto binOf = [&] (double hz)
        { return std::clamp (static_cast<int> (std::lround (hz * size / rate)), 0, size / 2); };
        const double half = std::exp2 (0.5 / perOctave);
        const int from = binOf (bandHz (band) / half), to = std::max (from, binOf (bandHz (band) * half));
        double sum = 0.0;
        for (int bin = from; bin <= to; ++bin)
        {
            const auto place = static_cast<size_t> (fft.bitReversedIndex (bin));
            sum += re[place] * re[place] + im[place] * im[place];
        }
        powers.push_back (sum / (to - from + 1));
    }
    return powers;
}

/** 1 over the mean power's root; 1 for what holds nothing there. */
double levelling (const std::vector<double>& powers)
{
    const double mean = meanPower ([&] (int band) { return powers[static_cast<size_t> (band)]; });
    return mean > 1e-20 ? 1.0 / std::sqrt (mean) : 1.0;
}
}

double amplifierDb (double hz)
{
    static const double mean = meanPower ([] (int band) { return std::pow (rawAmplifier (bandHz (band)), 2.0); });
    return 20.0 * std::log10 (std::max (1e-15, rawAmplifier (hz) / std::sqrt (mean)));
}

std::vector<double> levelled (const std::vector<float>& impulse, double sampleRate)
{
    const double scale = levelling (bandPowers (impulse, sampleRate));
    std::vector<double> taps (impulse.begin(), impulse.end());
    for (double& tap : taps)
        tap *= scale;
    return taps;
}

double OutputCurve::at (double hz) const
{
    if (gains.empty())
        return 1.0;
    const double last = static_cast<double> (gains.size()) - 1.0;
    const double place = std::clamp (perOctave * std::log2 (std::max (1e-3, hz) / lowest), 0.0, last);
    const auto band = static_cast<size_t> (place), next = std::min (band + 1, gains.size() - 1);
    return gains[band] + (place - static_cast<double> (band)) * (gains[next] - gains[band]);
}

Spectrum OutputCurve::heard (Spectrum take) const
{
    for (size_t i = 0; i < take.hz.size(); ++i)
        take.power[i] *= at (take.hz[i]) * at (take.hz[i]);
    return take;
}

OutputChain::OutputChain (const OutputChainChoice& choice, const std::vector<float>& impulse, double sampleRate, double takeLufs)
    : rate (sampleRate)
{
    if (choice.isDriven())
        drive.emplace (rate, choice.driveDb, std::sqrt (2.0) * humEmfFor (std::isfinite (takeLufs) ? takeLufs : -20.0, 0.0));
    if (choice.sound == OutputSound::amplifier)
    {
        const auto designer = FilterDesigner::shared (rate);
        std::vector<double> magnitude;
        for (const double hz : designer->gridHz())
            magnitude.push_back (std::pow (10.0, amplifierDb (hz) / 20.0));
        voicing = designer->design (magnitude, false);
        hasFilter = FilterRunner::fits (voicing);
        runner.use (voicing);
        for (int band = 0; band < bands; ++band)
            softCurve.gains.push_back (std::pow (10.0, amplifierDb (bandHz (band)) / 20.0));
    }
    if (choice.sound == OutputSound::file && ! impulse.empty())
    {
        const auto longest = static_cast<size_t> (longestImpulse * rate);
        const std::vector<float> used (impulse.begin(), impulse.begin() + static_cast<long> (std::min (longest, impulse.size())));
        const std::vector<double> powers = bandPowers (used, rate);
        for (const double power : powers)
            softCurve.gains.push_back (levelling (powers) * std::sqrt (power));
        convolver.emplace (levelled (used, rate));
    }
    if (drive && softCurve.gains.empty())
        softCurve.gains.assign (1, 1.0);
    for (double& gain : softCurve.gains)
        gain *= drive ? drive->smallSignalGain() : 1.0;
}

void OutputChain::reset()
{
    if (drive)
        drive->reset();
    runner.reset();
    if (convolver)
        convolver->reset();
}

void OutputChain::process (double* const* channels, int numChannels, int frames)
{
    for (int c = 0; c < numChannels; ++c)
    {
        if (drive)
            drive->process (c, channels[c], frames);
        if (hasFilter)
            runner.process (c, channels[c], channels[c], frames);
    }
    if (convolver)
        convolver->process (channels, numChannels, frames);
}

void OutputChain::run (std::vector<std::vector<float>>& channels)
{
    if (isNone() || channels.empty())
        return;
    reset();
    constexpr size_t block = 4096;
    std::vector<double> parts[2] = { std::vector<double> (block), std::vector<double> (block) };
    double* pointers[] = { parts[0].data(), parts[1].data() };
    const size_t width = std::min<size_t> (2, channels.size()), frames = channels[0].size();
    for (size_t from = 0; from < frames; from += block)
    {
        const size_t count = std::min (block, frames - from);
        for (size_t c = 0; c < width; ++c)
            std::copy_n (channels[c].begin() + static_cast<long> (from), count, parts[c].begin());
        process (pointers, static_cast<int> (width), static_cast<int> (count));
        for (size_t c = 0; c < width; ++c)
            for (size_t i = 0; i < count; ++i)
                channels[c][from + i] = static_cast<float> (parts[c][i]);
    }
}
}
