#include "cli/TakeRender.h"

#include "audition/Loudness.h"

namespace coldiron::cli
{
double LoadedTake::lufs() const
{
    if (! measuredLufs)
        measuredLufs = loudnessOf (audio.channels, audio.sampleRate);
    return *measuredLufs;
}

const Spectrum& LoadedTake::spectrum() const
{
    if (! measuredSpectrum)
        measuredSpectrum = takeSpectrum (audio.channels, audio.sampleRate);
    return *measuredSpectrum;
}

const NoiseFloor& LoadedTake::noise() const
{
    if (! measuredNoise)
        measuredNoise = measureNoiseFloor (audio.channels, audio.sampleRate);
    return *measuredNoise;
}

const LoadedTake& LoadedTakes::get (int take)
{
    const auto found = loaded.find (take);
    if (found != loaded.end())
        return found->second;
    LoadedTake fresh;
    fresh.audio = openTake (job, take);
    return loaded.emplace (take, std::move (fresh)).first->second;
}

ModalFilter filterFor (const Job& job, const Option& option, double sampleRate)
{
    const Voice recorded = recordedFor (job, &option).voice(), heard = job.optionSide (option).voice();
    return designFilter (Change (recorded, heard), *FilterDesigner::shared (sampleRate));
}
}
