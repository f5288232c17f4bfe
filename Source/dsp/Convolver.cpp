#include "dsp/Convolver.h"

#include "dsp/SimdKernels.h"

#include <algorithm>
#include <stdexcept>

namespace coldiron
{
Convolver::DelayLine Convolver::delayLineOf (const std::vector<double>& impulse, int block, size_t first, size_t end,
                                             const Fft& fft)
{
    DelayLine line;
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
    headPartition = delayLineOf (impulse, small, small, 2 * big, smallFft);
    tailPartition = delayLineOf (impulse, big, 2 * big, impulse.size(), bigFft);
    for (auto* buffers : { &longInput, &tailSound, &tailNext })
        for (auto& buffer : *buffers)
            buffer.assign (tailPartition.taps.empty() ? 0 : buffers == &longInput ? 2 * big : big, 0.0);
}

void Convolver::reset()
{
    for (DelayLine* line : { &headPartition, &tailPartition })
        for (Spectrum& spectrum : line->input)
        {
            std::fill (spectrum.re.begin(), spectrum.re.end(), 0.0);
            std::fill (spectrum.im.begin(), spectrum.im.end(), 0.0);
        }
    for (Spectrum* work : { &headPartition.work, &tailPartition.work })
    {
        std::fill (work->re.begin(), work->re.end(), 0.0);
        std::fill (work->im.begin(), work->im.end(), 0.0);
    }
    for (size_t c : { 0u, 1u })
    {
        recent[c].fill (0.0);
        headSound[c].fill (0.0);
        for (auto* buffers : { &longInput, &tailSound, &tailNext })
            std::fill ((*buffers)[c].begin(), (*buffers)[c].end(), 0.0);
    }
    at = step = 0;
}

void Convolver::push (DelayLine& line, const Fft& fft, const double* left, const double* right)
{
    line.newest = (line.newest + 1) % line.input.size();
    Spectrum& spectrum = line.input[line.newest];
    std::copy (left, left + fft.size(), spectrum.re.begin());
    std::copy (right, right + fft.size(), spectrum.im.begin());
    fft.forward (spectrum.re.data(), spectrum.im.data());
}

/** @param age  of the input's block: 0 the newest */
void Convolver::add (DelayLine& line, size_t tap, size_t age)
{
    const Spectrum& input = line.input[(line.newest + line.input.size() - age) % line.input.size()];
    const Spectrum& taps = line.taps[tap];
    simd::addProducts (line.work.re.data(), line.work.im.data(), input.re.data(), input.im.data(), taps.re.data(), taps.im.data(),
                       input.re.size());
}

/** What the next short block hears of the blocks before it. */
void Convolver::finishSmall()
{
    if (! headPartition.taps.empty())
    {
        push (headPartition, smallFft, recent[0].data(), recent[1].data());
        std::fill (headPartition.work.re.begin(), headPartition.work.re.end(), 0.0);
        std::fill (headPartition.work.im.begin(), headPartition.work.im.end(), 0.0);
        for (size_t tap = 0; tap < headPartition.taps.size(); ++tap)
            add (headPartition, tap, tap);
        smallFft.inverse (headPartition.work.re.data(), headPartition.work.im.data());
        std::copy (headPartition.work.re.begin() + small, headPartition.work.re.end(), headSound[0].begin());
        std::copy (headPartition.work.im.begin() + small, headPartition.work.im.end(), headSound[1].begin());
    }
    for (auto& channel : recent)
        std::copy (channel.begin() + small, channel.end(), channel.begin());
    if (! tailPartition.taps.empty())
        workOnTail();
    step = (step + 1) % steps;
}

/** After each short block a part of what the next long block will hear: the products in all steps but the last two. */
void Convolver::workOnTail()
{
    constexpr size_t shares = steps - 2;
    const size_t count = tailPartition.taps.size();
    if (static_cast<size_t> (step) < shares)
    {
        for (size_t tap = static_cast<size_t> (step) * count / shares; tap < static_cast<size_t> (step + 1) * count / shares;
             ++tap)
            add (tailPartition, tap, tap);
    }
    else if (step == steps - 2)
    {
        bigFft.inverse (tailPartition.work.re.data(), tailPartition.work.im.data());
        std::copy (tailPartition.work.re.begin() + big, tailPartition.work.re.end(), tailNext[0].begin());
        std::copy (tailPartition.work.im.begin() + big, tailPartition.work.im.end(), tailNext[1].begin());
        std::fill (tailPartition.work.re.begin(), tailPartition.work.re.end(), 0.0);
        std::fill (tailPartition.work.im.begin(), tailPartition.work.im.end(), 0.0);
    }
    else
    {
        push (tailPartition, bigFft, longInput[0].data(), longInput[1].data());
        for (size_t c : { 0u, 1u })
        {
            std::swap (tailSound[c], tailNext[c]);
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
            if (! tailPartition.taps.empty())
                std::copy (samples, samples + count, longInput[k].begin() + static_cast<long> (big + longAt));
            for (int i = 0; i < count; ++i)
                samples[i] = headSound[k][static_cast<size_t> (at + i)]
                             + (tailPartition.taps.empty() ? 0.0 : tailSound[k][longAt + static_cast<size_t> (i)]);
            simd::addDirect (samples, place, head.data(), head.size(), count);
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
