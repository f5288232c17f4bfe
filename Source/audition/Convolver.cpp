#include "audition/Convolver.h"

#include "filter/WideRegisters.h"

#include <algorithm>
#include <stdexcept>

namespace coldiron
{
namespace
{
COLDIRON_WIDE void addProducts (double* sumRe, double* sumIm, const double* aRe, const double* aIm, const double* bRe, const double* bIm,
                                size_t count)
{
    for (size_t i = 0; i < count; ++i)
    {
        sumRe[i] += aRe[i] * bRe[i] - aIm[i] * bIm[i];
        sumIm[i] += aRe[i] * bIm[i] + aIm[i] * bRe[i];
    }
}

/** y += the first taps over frames samples that stand behind `past` others. */
COLDIRON_WIDE void addDirect (double* y, const double* x, const double* taps, size_t count, int frames)
{
    for (size_t k = 0; k < count; ++k)
    {
        const double tap = taps[k];
        const double* from = x - k;
        for (int i = 0; i < frames; ++i)
            y[i] += tap * from[i];
    }
}
}

Convolver::Line Convolver::lineOf (const std::vector<double>& impulse, int block, size_t first, size_t end, const Fft& fft)
{
    Line line;
    const auto length = static_cast<size_t> (block);
    const Spectrum empty { std::vector<double> (2 * length, 0.0), std::vector<double> (2 * length, 0.0) };
    line.work = empty;
    for (size_t from = first; from < std::min (end, impulse.size()); from += length)
    {
        Spectrum taps = empty;
        for (size_t i = 0; i < length && from + i < impulse.size(); ++i)
            taps.re[i] = impulse[from + i] / (2.0 * static_cast<double> (length)); // the transform's own scale
        fft.forward (taps.re.data(), taps.im.data());
        line.taps.push_back (std::move (taps));
        line.input.push_back (empty);
    }
    return line;
}

Convolver::Convolver (const std::vector<double>& impulse)
{
    if (impulse.empty())
        throw std::invalid_argument ("an impulse response has one sample or more");
    head.assign (impulse.begin(), impulse.begin() + static_cast<long> (std::min<size_t> (small, impulse.size())));
    near = lineOf (impulse, small, small, 2 * big, smallFft);
    far = lineOf (impulse, big, 2 * big, impulse.size(), bigFft);
    for (auto* buffers : { &longInput, &farSound, &farNext })
        for (auto& buffer : *buffers)
            buffer.assign (far.taps.empty() ? 0 : buffers == &longInput ? 2 * big : big, 0.0);
}

void Convolver::reset()
{
    for (Line* line : { &near, &far })
        for (Spectrum& spectrum : line->input)
        {
            std::fill (spectrum.re.begin(), spectrum.re.end(), 0.0);
            std::fill (spectrum.im.begin(), spectrum.im.end(), 0.0);
        }
    for (Spectrum* work : { &near.work, &far.work })
    {
        std::fill (work->re.begin(), work->re.end(), 0.0);
        std::fill (work->im.begin(), work->im.end(), 0.0);
    }
    for (size_t c : { 0u, 1u })
    {
        recent[c].fill (0.0);
        nearSound[c].fill (0.0);
        for (auto* buffers : { &longInput, &farSound, &farNext })
            std::fill ((*buffers)[c].begin(), (*buffers)[c].end(), 0.0);
    }
    at = step = 0;
}

void Convolver::push (Line& line, const Fft& fft, const double* left, const double* right)
{
    line.newest = (line.newest + 1) % line.input.size();
    Spectrum& spectrum = line.input[line.newest];
    std::copy (left, left + fft.size(), spectrum.re.begin());
    std::copy (right, right + fft.size(), spectrum.im.begin());
    fft.forward (spectrum.re.data(), spectrum.im.data());
}

/** @param age  of the input's block: 0 the newest */
void Convolver::add (Line& line, size_t tap, size_t age)
{
    const Spectrum& input = line.input[(line.newest + line.input.size() - age) % line.input.size()];
    const Spectrum& taps = line.taps[tap];
    addProducts (line.work.re.data(), line.work.im.data(), input.re.data(), input.im.data(), taps.re.data(), taps.im.data(),
                 input.re.size());
}

/** What the next short block hears of the blocks before it. */
void Convolver::finishSmall()
{
    if (! near.taps.empty())
    {
        push (near, smallFft, recent[0].data(), recent[1].data());
        std::fill (near.work.re.begin(), near.work.re.end(), 0.0);
        std::fill (near.work.im.begin(), near.work.im.end(), 0.0);
        for (size_t tap = 0; tap < near.taps.size(); ++tap)
            add (near, tap, tap);
        smallFft.inverse (near.work.re.data(), near.work.im.data());
        std::copy (near.work.re.begin() + small, near.work.re.end(), nearSound[0].begin());
        std::copy (near.work.im.begin() + small, near.work.im.end(), nearSound[1].begin());
    }
    for (auto& channel : recent)
        std::copy (channel.begin() + small, channel.end(), channel.begin());
    if (! far.taps.empty())
        workOnFar();
    step = (step + 1) % steps;
}

/** After each short block a part of what the next long block will hear: the products in all steps but the last two. */
void Convolver::workOnFar()
{
    constexpr size_t shares = steps - 2;
    const size_t count = far.taps.size();
    if (static_cast<size_t> (step) < shares)
    {
        for (size_t tap = static_cast<size_t> (step) * count / shares; tap < static_cast<size_t> (step + 1) * count / shares; ++tap)
            add (far, tap, tap);
    }
    else if (step == steps - 2)
    {
        bigFft.inverse (far.work.re.data(), far.work.im.data());
        std::copy (far.work.re.begin() + big, far.work.re.end(), farNext[0].begin());
        std::copy (far.work.im.begin() + big, far.work.im.end(), farNext[1].begin());
        std::fill (far.work.re.begin(), far.work.re.end(), 0.0);
        std::fill (far.work.im.begin(), far.work.im.end(), 0.0);
    }
    else
    {
        push (far, bigFft, longInput[0].data(), longInput[1].data());
        for (size_t c : { 0u, 1u })
        {
            std::swap (farSound[c], farNext[c]);
            std::copy (longInput[c].begin() + big, longInput[c].end(), longInput[c].begin());
        }
    }
}

void Convolver::process (double* const* channels, int numChannels, int frames)
{
    for (int done = 0; done < frames;)
    {
        const int count = std::min (frames - done, small - at);
        for (int c = 0; c < std::min (numChannels, 2); ++c)
        {
            const auto k = static_cast<size_t> (c);
            double* samples = channels[c] + done;
            double* place = recent[k].data() + small + at;
            std::copy (samples, samples + count, place);
            const size_t longAt = static_cast<size_t> (step * small + at);
            if (! far.taps.empty())
                std::copy (samples, samples + count, longInput[k].begin() + static_cast<long> (big + longAt));
            for (int i = 0; i < count; ++i)
                samples[i] = nearSound[k][static_cast<size_t> (at + i)] + (far.taps.empty() ? 0.0 : farSound[k][longAt + static_cast<size_t> (i)]);
            addDirect (samples, place, head.data(), head.size(), count);
        }
        at += count;
        done += count;
        if (at == small)
        {
            at = 0;
            finishSmall();
        }
    }
}
}
