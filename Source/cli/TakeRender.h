#pragma once

#include "audition/Renderer.h"
#include "audition/Spectrum.h"
#include "audition/TakeFaults.h"
#include "cli/Command.h"

#include <map>
#include <optional>

namespace coldiron::cli
{
/** A take with what is asked of it more than once. */
struct LoadedTake
{
    TakeAudio audio;

    double lufs() const;                ///< -infinity for silence; measured when first asked for
    const Spectrum& spectrum() const;   ///< likewise
    const NoiseFloor& noise() const;    ///< likewise
    std::vector<TakeFault> faults() const { return takeFaults (audio.channels, audio.sampleRate, noise()); }

private:
    mutable std::optional<double> measuredLufs;
    mutable std::optional<Spectrum> measuredSpectrum;
    mutable std::optional<NoiseFloor> measuredNoise;
};

/** The takes of a job, each read once, when first asked for. */
class LoadedTakes
{
public:
    explicit LoadedTakes (const Job& j) : job (j) {}
    const LoadedTake& get (int take); ///< @throws JobFault

private:
    const Job& job;
    std::map<int, LoadedTake> loaded;
};

/** The filter of an option at its take's rate. */
ModalFilter filterFor (const Job&, const Option&, double sampleRate);
}
