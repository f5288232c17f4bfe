#pragma once

#include "filter/ModalFilter.h"

#include <functional>
#include <memory>
#include <vector>

namespace coldiron
{
/** Turns a magnitude into a minimum-phase filter at one sample rate. Build once per rate, in the background, share.
    Immutable; any thread may ask, never the audio thread (it allocates). */
class FilterDesigner
{
public:
    /** @param sampleRate  8 kHz to 768 kHz; throws std::invalid_argument otherwise */
    explicit FilterDesigner (double sampleRate);
    ~FilterDesigner();

    double sampleRate() const;

    /** The frequencies a target must be given at [Hz], rising. About 400. */
    const std::vector<double>& gridHz() const;

    /** @param magnitude   linear gain at each gridHz(), >= 0; all below 1e-12 gives silence
        @param estimated   order 20 from the start, retried at 28 and 36 above 0.1 dB; else 10, retried at 14, 20 and 28
                           above 0.01 dB, on the grid where the target is within 60 dB of its peak
        @throws std::invalid_argument for a NaN or a wrong length */
    ModalFilter design (const std::vector<double>& magnitude, bool estimated) const;

    /** The magnitude after the soft cap of +24 dB over its passband gain: what design() aims at. */
    std::vector<double> softCapped (const std::vector<double>& magnitude, bool* capped = nullptr) const;

    /** Shared designers, one per rate, made on first use and kept. Any thread but the audio thread. */
    static std::shared_ptr<const FilterDesigner> shared (double sampleRate);

private:
    struct Impl;
    std::unique_ptr<Impl> impl;
};
}
