#pragma once

#include <memory>
#include <vector>

namespace coldiron
{
/** ITU-R BS.1770 integrated loudness through libebur128. A mono take counts as dual mono (EBUR128_DUAL_MONO: it will
    be heard from two loudspeakers), so mono and the same on both sides of a stereo take read alike. */
class Loudness
{
public:
    /** @param sampleRate  [Hz] whole, 16 to 2822400; @param channels  1 or 2; throws std::invalid_argument otherwise */
    Loudness (double sampleRate, int channels);
    ~Loudness();
    Loudness (Loudness&&) noexcept;
    Loudness& operator= (Loudness&&) noexcept;

    /** Channels apart, equal lengths, as many as given to the constructor. */
    void add (const std::vector<std::vector<float>>& channels);

    /** Gated, [LUFS]; -infinity where nothing passed the gate at -70 LUFS or it was shorter than 0.4 s. */
    double integratedLufs() const;

private:
    struct Impl;
    std::unique_ptr<Impl> impl;
};

/** Largest inter-sample peak of all channels, BS.1770 annex 2, through libebur128, block by block. */
class TruePeak
{
public:
    /** @param leastDb  [dBTP] a peak under this may be told too low, down to nothing, for speed: what cannot reach it is not
                         looked at. -300: every peak is told
        @throws std::invalid_argument as Loudness does */
    TruePeak (double sampleRate, int channels, double leastDb = -300.0);
    ~TruePeak();
    TruePeak (TruePeak&&) noexcept;
    TruePeak& operator= (TruePeak&&) noexcept;

    void add (const std::vector<std::vector<float>>& channels); ///< as Loudness::add
    double db() const;                                          ///< [dBTP]; -300 for silence

private:
    struct Impl;
    std::unique_ptr<Impl> impl;
};

/** The integrated loudness of a whole piece [LUFS]. */
double loudnessOf (const std::vector<std::vector<float>>& channels, double sampleRate);

/** Largest inter-sample peak of all channels, BS.1770 annex 2 [dBTP]; -300 for silence. */
double truePeakDb (const std::vector<std::vector<float>>& channels, double sampleRate);
}
