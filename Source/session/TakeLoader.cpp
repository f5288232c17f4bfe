#include "session/TakeLoader.h"

#include "metering/Loudness.h"

#include <algorithm>

namespace coldiron
{
TakeLoader::TakeLoader (std::function<void (LoadedTake)> finished) : done (std::move (finished)), thread ([this] { run(); }) {}

TakeLoader::~TakeLoader()
{
    {
        const std::scoped_lock lock (mutex);
        quit = true;
    }
    wake.notify_all();
    thread.join();
}

void TakeLoader::want (std::filesystem::path file)
{
    {
        const std::scoped_lock lock (mutex);
        if (std::find (wanted.begin(), wanted.end(), file) == wanted.end())
            wanted.push_back (std::move (file));
    }
    wake.notify_all();
}

void TakeLoader::forgetAllBut (const std::set<std::filesystem::path>& needed)
{
    const std::scoped_lock lock (mutex);
    std::erase_if (wanted, [&] (const auto& file) { return needed.count (file) == 0; });
}

bool TakeLoader::isLoading() const
{
    const std::scoped_lock lock (mutex);
    return busy || ! wanted.empty();
}

LoadedTake TakeLoader::load (const std::filesystem::path& file)
{
    constexpr int64_t mostStretches = 4000;
    LoadedTake result;
    result.file = file;
    auto picture = std::make_shared<TakePicture>();
    picture->name = file.filename().string();
    try
    {
        auto audio = std::make_shared<const TakeAudio> (readTake (file));
        picture->sampleRate = audio->sampleRate;
        picture->channels = static_cast<int> (audio->channels.size());
        picture->seconds = static_cast<double> (audio->frames()) / audio->sampleRate;
        picture->loudnessLufs = std::max (-300.0, loudnessOf (audio->channels, audio->sampleRate));
        const int64_t stretches = std::min (mostStretches, audio->frames());
        for (int64_t s = 0; s < stretches; ++s)
        {
            const auto from = static_cast<size_t> (s * audio->frames() / stretches);
            const auto to = static_cast<size_t> ((s + 1) * audio->frames() / stretches);
            float low = audio->channels[0][from], high = low;
            for (const auto& channel : audio->channels)
                for (size_t i = from; i < to; ++i)
                {
                    low = std::min (low, channel[i]);
                    high = std::max (high, channel[i]);
                }
            picture->low.push_back (low);
            picture->high.push_back (high);
        }
        result.spectrum = takeSpectrum (audio->channels, audio->sampleRate);
        result.noise = measureNoiseFloor (audio->channels, audio->sampleRate);
        picture->noiseDb = result.noise.noiseDb();
        picture->remarks = takeFaults (audio->channels, audio->sampleRate, result.noise);
        result.audio = std::move (audio);
    }
    catch (const std::exception& fault)
    {
        picture->fault = fault.what();
        result.audio = nullptr;
    }
    result.picture = std::move (picture);
    return result;
}

void TakeLoader::run()
{
    std::unique_lock lock (mutex);
    for (;;)
    {
        wake.wait (lock, [this] { return quit || ! wanted.empty(); });
        if (quit)
            return;
        const std::filesystem::path file = std::move (wanted.front());
        wanted.pop_front();
        busy = true;
        lock.unlock();
        done (load (file));
        lock.lock();
        busy = false;
    }
}
}
