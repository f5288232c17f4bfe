#pragma once

#include "audition/Renderer.h"
#include "audition/Spectrum.h"
#include "cli/Command.h"

#include <map>

namespace coldiron::cli
{
/** A take with what is asked of it more than once. */
struct LoadedTake
{
    TakeAudio audio;
    double lufs = 0.0;       ///< -infinity for silence
    Spectrum spectrum;
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
