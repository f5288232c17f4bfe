#pragma once

#include "dsp/WhiteNoise.h"
#include "engine/EngineDesign.h"
#include "engine/OutputChain.h"
#include "engine/TakePass.h"

#include <memory>

namespace coldiron
{
/** All that decides how a take sounds through one option, or as recorded: plain data. It says of an offline rendering what
    SwitchEngine is told for the ear, with the same parts. */
struct RenderSpec
{
    EngineDesign design;        ///< wiring, matching gain, hum and hiss of one option at the take's rate
    double humGain = 0.0;       ///< linear, on the design's hum; 0: none
    double hissGain = 0.0;      ///< likewise
    OutputChainChoice after;    ///< what follows the jack, and its drive
    std::vector<float> impulse; ///< at the take's rate, where that is a file's
    double driveLufs = -20.0;   ///< what the drive stands against: loudness of a take
    double trim = 1.0;          ///< linear, last of all: headroom

    /** Wiring alone: no noises, nothing after the jack, no trim. What level matching listens to. */
    RenderSpec dry() const;
};

/** Renders a take by blocks, sample count kept, no latency: wiring, hum and hiss, the chain after the jack, trim. */
class OfflineRenderer
{
public:
    explicit OfflineRenderer (const RenderSpec&);

    /** The next block, of any length, of a take of one or two channels. @returns it rendered; stands until the next call */
    const Channels& process (const Channels& block);

    bool isNonlinear() const { return chain.isNonlinear(); } ///< louder is not merely louder

private:
    static constexpr int chunk = 2048;

    FilterRunner wiring, hiss;
    HumCycle hum;
    double humGain = 0.0, hissGain = 0.0, trim = 1.0;
    bool isPlain = true; ///< the filter alone
    MainsClock mains;
    WhiteNoise white;
    OutputChain chain;
    Channels out;

    void addNoises (double* sum, int frames);
    void processChunk (const Channels& block, size_t from, int frames);
};
}
