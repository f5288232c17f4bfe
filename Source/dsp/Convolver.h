#pragma once

#include "dsp/Fft.h"

#include <array>
#include <cstddef>

namespace coldiron
{
/** Convolution with a long impulse response without latency: its first taps directly, the rest in blocks by Fourier
    transform, short ones and then long ones, the work on the long ones spread over their whole time.
    Source: W. G. Gardner, Efficient Convolution without Input-Output Delay, J. Audio Eng. Soc. 43(3), 1995 (from memory);
    tests hold it to direct convolution. Two channels cost as much as one: they are the parts of one complex signal. */
class Convolver
{
public:
    explicit Convolver (const std::vector<double>& impulse); ///< allocates; one tap or more

    void reset(); ///< [audio-thread] forgets what was played

    /** [audio-thread] One or two channels in place, any number of frames. */
    void process (double* const* channels, int numChannels, int frames);

private:
    static constexpr int small = 128, big = 4096, steps = big / small;

    struct Spectrum
    {
        std::vector<double> re, im;
    };

    /** Taps in blocks of one length, and the spectra of as many blocks of input. */
    struct DelayLine
    {
        std::vector<Spectrum> taps, input;
        size_t newest = 0;
        Spectrum work; ///< sums of products, then samples: the second half holds them
    };

    Fft smallFft { 2 * small }, bigFft { 2 * big };
    std::vector<double> head;
    DelayLine headPartition, tailPartition;
    std::array<std::array<double, 2 * small>, 2> recent {}; ///< the block before, and the present one as it fills
    std::array<std::array<double, small>, 2> headSound {};  ///< of the present block
    std::array<std::vector<double>, 2> longInput;           ///< the long block before, and the present one
    std::array<std::vector<double>, 2> tailSound, tailNext; ///< of the present long block, and of the next
    int at = 0, step = 0;

    static DelayLine delayLineOf (const std::vector<double>& impulse, int block, size_t first, size_t end, const Fft&);
    static void push (DelayLine&, const Fft&, const double* left, const double* right);
    static void add (DelayLine&, size_t tap, size_t age);
    void finishSmall();
    void workOnTail();
};
}
