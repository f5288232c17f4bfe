#include "takes/TakeMeasures.h"

#include "engine/OfflineRenderer.h"
#include "metering/Loudness.h"
#include "takes/TakeReader.h"

namespace coldiron
{
TakeMeasures measureTake (const std::filesystem::path& path, WorkerPool& pool)
{
    TakeMeasures take;
    take.info = takeInfo (path);
    Loudness loudness (take.info.sampleRate, take.info.channels);
    SpectrumMeter spectrum (take.info.sampleRate);
    NoiseFloorMeter noise (take.info.sampleRate);
    TakeFaultMeter faults;
    runPass (blocksOf (path),
             { [&] (const Channels& block) { loudness.add (block); }, [&] (const Channels& block) { spectrum.add (block); },
               [&] (const Channels& block) { noise.add (block); }, [&] (const Channels& block) { faults.add (block); } },
             pool);
    take.lufs = loudness.integratedLufs();
    take.spectrum = spectrum.spectrum();
    take.noise = noise.floor();
    take.faults = faults.faults (take.noise);
    return take;
}

std::vector<double> loudnessThrough (const std::filesystem::path& path, const std::vector<ModalFilter>& filters, WorkerPool& pool)
{
    const TakeInfo info = takeInfo (path);
    struct Heard
    {
        OfflineRenderer renderer;
        Loudness loudness;
    };
    std::vector<std::unique_ptr<Heard>> heard;
    std::vector<BlockListener> listeners;
    for (const auto& filter : filters)
    {
        RenderSpec spec;
        spec.design.filter = filter;
        heard.push_back (std::make_unique<Heard> (Heard { OfflineRenderer (spec), Loudness (info.sampleRate, info.channels) }));
        listeners.push_back ([one = heard.back().get()] (const Channels& block)
                             { one->loudness.add (one->renderer.process (block)); });
    }
    runPass (blocksOf (path), listeners, pool);
    std::vector<double> lufs;
    for (const auto& one : heard)
        lufs.push_back (one->loudness.integratedLufs());
    return lufs;
}
}
