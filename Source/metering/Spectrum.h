#pragma once

#include <memory>
#include <vector>

namespace coldiron
{
/** The power spectrum of a take in 24ths of an octave from 20 Hz; empty for no take. */
struct Spectrum
{
    std::vector<double> hz;    ///< band centres, rising
    std::vector<double> power; ///< relative, summed over channels

    bool isEmpty() const { return hz.empty(); }
};

/** Finds it block by block, in constant memory. */
class SpectrumMeter
{
public:
    explicit SpectrumMeter (double sampleRate);
    ~SpectrumMeter();
    SpectrumMeter (SpectrumMeter&&) noexcept;
    SpectrumMeter& operator= (SpectrumMeter&&) noexcept;

    void add (const std::vector<std::vector<float>>& channels); ///< equal lengths; as many channels each time
    Spectrum spectrum();                                        ///< at the take's end: nothing is added after it

private:
    struct Impl;
    std::unique_ptr<Impl> impl;
};

/** Averaged over the whole take (Hann windows of about a third of a second, half overlapped). A take shorter than
    one window counts with silence after it; an empty or silent one gives an empty spectrum. */
Spectrum takeSpectrum (const std::vector<std::vector<float>>& channels, double sampleRate);
}
