#include "cli/TakeRender.h"

#include "audition/Loudness.h"

namespace coldiron::cli
{
const LoadedTake& LoadedTakes::get (int take)
{
    const auto found = loaded.find (take);
    if (found != loaded.end())
        return found->second;
    LoadedTake fresh;
    fresh.audio = openTake (job, take);
    fresh.lufs = loudnessOf (fresh.audio.channels, fresh.audio.sampleRate);
    fresh.spectrum = takeSpectrum (fresh.audio.channels, fresh.audio.sampleRate);
    return loaded.emplace (take, std::move (fresh)).first->second;
}

ModalFilter filterFor (const Job& job, const Option& option, double sampleRate)
{
    const Voice recorded = recordedFor (job, &option).voice(), heard = job.optionSide (option).voice();
    return designFilter (Change (recorded, heard), *FilterDesigner::shared (sampleRate));
}
}
