#include "session/TakeLoader.h"

#include "metering/Loudness.h"
#include "takes/TakeReader.h"

#include <algorithm>

namespace coldiron
{
TakeLoader::TakeLoader (std::function<void (LoadedTake)> finished, Worker::Failed failed)
    : done (std::move (finished)),
      worker (
          "coldiron-takes", [this] (const Cancellation& stop) { return turn (stop); }, std::move (failed))
{
}

void TakeLoader::want (std::filesystem::path file)
{
    {
        const std::scoped_lock lock (mutex);
        if (file == reading || std::find (wanted.begin(), wanted.end(), file) != wanted.end())
            return;
        wanted.push_back (std::move (file));
    }
    worker.wake();
}

void TakeLoader::forgetAllBut (const std::set<std::filesystem::path>& needed)
{
    const std::scoped_lock lock (mutex);
    std::erase_if (wanted, [&] (const auto& file) { return needed.count (file) == 0; });
    if (reading && needed.count (*reading) == 0)
        reading.reset();
}

bool TakeLoader::isLoading() const
{
    const std::scoped_lock lock (mutex);
    return busy || ! wanted.empty();
}

bool TakeLoader::waitUntilIdle (double seconds)
{
    return worker.waitFor (seconds, [this] { return ! isLoading(); });
}

namespace
{
/** Least and largest sample of equal stretches. */
void drawTake (const TakeAudio& audio, TakePicture& picture, const Cancellation& isUnwanted)
{
    constexpr int64_t mostStretches = 4000;
    const int64_t stretches = std::min (mostStretches, audio.frames());
    for (int64_t s = 0; s < stretches; ++s)
    {
        isUnwanted.check();
        const auto from = static_cast<size_t> (s * audio.frames() / stretches);
        const auto to = static_cast<size_t> ((s + 1) * audio.frames() / stretches);
        float low = audio.channels[0][from], high = low;
        for (const auto& channel : audio.channels)
            for (size_t i = from; i < to; ++i)
            {
                low = std::min (low, channel[i]);
                high = std::max (high, channel[i]);
            }
        picture.low.push_back (low);
        picture.high.push_back (high);
    }
}

void readAndMeasure (const std::filesystem::path& file, LoadedTake& take, TakePicture& picture, const Cancellation& isUnwanted)
{
    TakeReader reader (file);
    const double rate = reader.info().sampleRate;
    const int channels = reader.info().channels;
    Loudness loudness (rate, channels);
    SpectrumMeter spectrum (rate);
    NoiseFloorMeter noise (rate);
    TakeFaultMeter remarks;
    auto audio = std::make_shared<const TakeAudio> (readTake (reader,
                                                              [&] (const Channels& block)
                                                              {
                                                                  isUnwanted.check();
                                                                  loudness.add (block);
                                                                  spectrum.add (block);
                                                                  noise.add (block);
                                                                  remarks.add (block);
                                                              }));
    picture.sampleRate = rate;
    picture.channels = channels;
    picture.seconds = static_cast<double> (audio->frames()) / rate;
    picture.loudnessLufs = std::max (-300.0, loudness.integratedLufs());
    drawTake (*audio, picture, isUnwanted);
    take.spectrum = spectrum.spectrum();
    take.noise = noise.floor();
    picture.noiseDb = take.noise.noiseDb();
    picture.remarks = remarks.faults (take.noise);
    take.audio = std::move (audio);
}
}

LoadedTake TakeLoader::load (const std::filesystem::path& file, const Cancellation& isUnwanted)
{
    LoadedTake result;
    result.file = file;
    auto picture = std::make_shared<TakePicture>();
    picture->name = file.filename().string();
    try
    {
        readAndMeasure (file, result, *picture, isUnwanted);
    }
    catch (const std::exception& fault)
    {
        picture->fault = fault.what();
        result.audio = nullptr;
    }
    result.picture = std::move (picture);
    return result;
}

bool TakeLoader::turn (const Cancellation& stop)
{
    std::filesystem::path file;
    {
        const std::scoped_lock lock (mutex);
        busy = ! wanted.empty();
        reading.reset();
        if (! busy)
            return false;
        file = std::move (wanted.front());
        wanted.pop_front();
        reading = file;
    }
    const Cancellation isUnwanted (
        [&]
        {
            if (stop.isRequested())
                return true;
            const std::scoped_lock lock (mutex);
            return reading != file;
        });
    done (load (file, isUnwanted));
    return true;
}
}
