#pragma once

#include "filter/ModalFilter.h"

#include <array>

namespace coldiron
{
/** Runs one ModalFilter over one or two channels in double precision. Never allocates: the state has room for
    maxPoles, and a filter with more is refused by fits(). */
class FilterRunner
{
public:
    static constexpr int maxPoles = 24; ///< pairs or real poles
    static constexpr int maxChannels = 2;

    static bool fits (const ModalFilter& f) { return f.poles.size() <= maxPoles; }

    void use (const ModalFilter&); ///< [audio-thread] copies the coefficients; state is kept
    void reset();                  ///< [audio-thread] clears the state
    /** [audio-thread] in may equal out */
    void process (int channel, const float* in, float* out, int frames);
    void process (int channel, const double* in, double* out, int frames);

private:
    int count = 0;
    double direct = 1.0;
    alignas (32) std::array<double, maxPoles> poleRe {}, poleIm {}, residueRe {}, residueIm {};
    alignas (32) std::array<std::array<double, maxPoles>, maxChannels> stateRe {}, stateIm {};

    template <typename Sample>
    void runChannel (int channel, const Sample* in, Sample* out, int frames);
};
}
