#include "filter/FilterRunner.h"

#include "dsp/SimdKernels.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
template <typename Sample>
void runGain (double direct, const Sample* in, Sample* out, int frames)
{
    for (int n = 0; n < frames; ++n)
        out[n] = static_cast<Sample> (direct * in[n]);
}
}

void FilterRunner::use (const ModalFilter& filter)
{
    const int poles = static_cast<int> (std::min (filter.poles.size(), static_cast<size_t> (maxPoles)));
    count = (poles + simd::lanes - 1) / simd::lanes * simd::lanes;
    direct = filter.direct;
    poleRe.fill (0.0);
    poleIm.fill (0.0);
    residueRe.fill (0.0);
    residueIm.fill (0.0);
    for (int p = 0; p < poles; ++p)
    {
        const auto index = static_cast<size_t> (p);
        poleRe[index] = filter.poles[index].real();
        poleIm[index] = filter.poles[index].imag();
        residueRe[index] = 2.0 * filter.residues[index].real(); // the pair's 2 taken in once
        residueIm[index] = 2.0 * filter.residues[index].imag();
    }
}

void FilterRunner::reset()
{
    for (auto& channel : stateRe)
        channel.fill (0.0);
    for (auto& channel : stateIm)
        channel.fill (0.0);
}

void FilterRunner::process (int channel, const float* in, float* out, int frames) { runChannel (channel, in, out, frames); }

void FilterRunner::process (int channel, const double* in, double* out, int frames) { runChannel (channel, in, out, frames); }

template <typename Sample>
void FilterRunner::runChannel (int channel, const Sample* in, Sample* out, int frames)
{
    auto &re = stateRe[static_cast<size_t> (channel)], &im = stateIm[static_cast<size_t> (channel)];
    static_assert (maxPoles == simd::ResonatorBank::mostGroups * simd::lanes);
    if (count == 0)
        runGain (direct, in, out, frames);
    else
        simd::run ({ count / simd::lanes, poleRe.data(), poleIm.data(), residueRe.data(), residueIm.data(), re.data(), im.data(),
                     direct },
                   in, out, frames);

    // States that have died away become zero, so that silence costs no more than sound.
    for (int p = 0; p < count; ++p)
    {
        const auto index = static_cast<size_t> (p);
        if (std::abs (re[index]) < 1e-30 && std::abs (im[index]) < 1e-30)
            re[index] = im[index] = 0.0;
    }
}
}
