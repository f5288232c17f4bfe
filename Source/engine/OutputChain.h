#pragma once

#include "dsp/Convolver.h"
#include "engine/Overdrive.h"
#include "filter/FilterRunner.h"
#include "metering/Spectrum.h"

#include <filesystem>
#include <optional>

namespace coldiron
{
enum class OutputSound { none, amplifier, file };

/** What stands between the jack and the ear, the same for every option and for as recorded. */
struct OutputChainChoice
{
    OutputSound sound = OutputSound::none;
    std::filesystem::path file; ///< absolute; of an impulse response, where the sound is one
    double driveDb = 0.0;       ///< 0 to 24; 0 is none. Only where there is a sound
    bool operator== (const OutputChainChoice&) const = default;

    bool isDriven() const { return sound != OutputSound::none && driveDb > 0.0; }
};

/** The generic small amplifier and loudspeaker, a curve of our own and nobody's product [dB, mean power 0 dB from 80 Hz
    to 5 kHz]: a closed box (95 Hz, Q 1.1), 5 dB less around 420 Hz as tone networks take, 6 dB more around 2.6 kHz where
    cones break up, and two second-order falls at 4.7 kHz. The sections are those of R. H. Small, Closed-Box Loudspeaker
    Systems, J. Audio Eng. Soc. 20(10), 1972, and R. Bristow-Johnson, Audio EQ Cookbook (both from memory). */
double amplifierDb (double hz);

/** An impulse response so scaled that its mean power from 80 Hz to 5 kHz is 1: a file's own level says nothing. One that
    holds nothing there stays as it is. */
std::vector<double> levelled (const std::vector<float>& impulse, double sampleRate);

/** The gain of a chain for soft sounds in bands of 24 to the octave, 20 Hz to 20 kHz, linear; none: flat. */
struct OutputCurve
{
    std::vector<double> gains;

    double at (double hz) const;          ///< between the bands around it
    Spectrum heard (Spectrum take) const; ///< a take's spectrum behind the chain
};

/** The chain after the jack at one rate. Building it allocates; playing it does not. */
class OutputChain
{
public:
    static constexpr double longestImpulse = 2.0; ///< [s]

    /** @param impulse   at this rate, where the sound is a file's; what is longer than longestImpulse is left away
        @param takeLufs  what the drive stands against */
    OutputChain (const OutputChainChoice&, const std::vector<float>& impulse, double sampleRate, double takeLufs);

    bool isNone() const { return ! drive && ! hasFilter && ! convolver; }
    double sampleRate() const { return rate; }
    void reset();

    /** [audio-thread] One or two channels in place. */
    void process (double* const* channels, int numChannels, int frames);

    bool isNonlinear() const { return drive.has_value(); } ///< a gain before it is not the same gain after it
    const OutputCurve& curve() const { return softCurve; }

    /** Whole pieces, from rest. */
    void run (std::vector<std::vector<float>>& channels);

private:
    double rate = 0.0;
    std::optional<Overdrive> drive;
    bool hasFilter = false;
    ModalFilter voicing;
    FilterRunner runner;
    std::optional<Convolver> convolver;
    OutputCurve softCurve;
};
}
