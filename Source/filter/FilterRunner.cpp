#include "filter/FilterRunner.h"

#include "dsp/Simd.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
constexpr int lanes = 4;
using Lanes = double __attribute__ ((vector_size (lanes * sizeof (double)), aligned (32)));

struct Bank
{
    const double *poleRe, *poleIm, *residueRe, *residueIm;
    double *stateRe, *stateIm;
    double direct;
};

/** y = direct x + sum of 2 Re (residue state), then state = pole state + x, over groups of four poles. The number of
    groups is known when this is built, so that the states stay in registers from frame to frame. */
template <int groups, typename Sample>
COLDIRON_SIMD void run (const Bank& bank, const Sample* in, Sample* out, int frames)
{
    const auto* poleRe = reinterpret_cast<const Lanes*> (bank.poleRe);
    const auto* poleIm = reinterpret_cast<const Lanes*> (bank.poleIm);
    const auto* residueRe = reinterpret_cast<const Lanes*> (bank.residueRe);
    const auto* residueIm = reinterpret_cast<const Lanes*> (bank.residueIm);
    Lanes stateRe[groups], stateIm[groups];
    for (int g = 0; g < groups; ++g)
    {
        stateRe[g] = reinterpret_cast<const Lanes*> (bank.stateRe)[g];
        stateIm[g] = reinterpret_cast<const Lanes*> (bank.stateIm)[g];
    }

    for (int n = 0; n < frames; ++n)
    {
        const double x = in[n];
        const Lanes input = { x, x, x, x };
        Lanes sum = {};
#pragma GCC unroll 8
        for (int g = 0; g < groups; ++g)
        {
            const Lanes re = stateRe[g], im = stateIm[g];
            sum += residueRe[g] * re - residueIm[g] * im;
            stateRe[g] = poleRe[g] * re - poleIm[g] * im + input;
            stateIm[g] = poleRe[g] * im + poleIm[g] * re;
        }
        out[n] = static_cast<Sample> (bank.direct * x + ((sum[0] + sum[2]) + (sum[1] + sum[3])));
    }

    for (int g = 0; g < groups; ++g)
    {
        reinterpret_cast<Lanes*> (bank.stateRe)[g] = stateRe[g];
        reinterpret_cast<Lanes*> (bank.stateIm)[g] = stateIm[g];
    }
}

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
    count = (poles + lanes - 1) / lanes * lanes;
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
    const Bank bank { poleRe.data(), poleIm.data(), residueRe.data(), residueIm.data(), re.data(), im.data(), direct };
    static_assert (maxPoles == 6 * lanes);
    switch (count / lanes)
    {
    case 0: runGain (direct, in, out, frames); break;
    case 1: run<1> (bank, in, out, frames); break;
    case 2: run<2> (bank, in, out, frames); break;
    case 3: run<3> (bank, in, out, frames); break;
    case 4: run<4> (bank, in, out, frames); break;
    case 5: run<5> (bank, in, out, frames); break;
    default: run<6> (bank, in, out, frames); break;
    }

    // States that have died away become zero, so that silence costs no more than sound.
    for (int p = 0; p < count; ++p)
    {
        const auto index = static_cast<size_t> (p);
        if (std::abs (re[index]) < 1e-30 && std::abs (im[index]) < 1e-30)
            re[index] = im[index] = 0.0;
    }
}
}
