#include "takes/ImpulseFile.h"

#include "engine/OutputChain.h"
#include "files/RegularFile.h"
#include "takes/Resample.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <system_error>

namespace coldiron
{
std::vector<float> ImpulseResponse::at (double rate, const Cancellation& isUnwanted) const
{
    return resampled (samples, sampleRate, rate, isUnwanted);
}

ImpulseResponse readImpulse (const std::filesystem::path& path)
{
    try
    {
        if (RegularFile (path, "an impulse response").isMissing())
            throw TakeError (path.string() + ": there is no such impulse response; check the name");
        const TakeInfo info = takeInfo (path);
        const double seconds = static_cast<double> (info.frames) / info.sampleRate;
        if (seconds > OutputChain::longestImpulse + 0.5 / info.sampleRate)
        {
            char text[80];
            std::snprintf (text, sizeof text, "%.1f s long, expected at most 2 s; cut it", seconds);
            throw TakeError (path.string() + ": the impulse response is " + text);
        }
        TakeAudio audio = readTake (path);
        ImpulseResponse impulse { path, audio.sampleRate, std::move (audio.channels.front()) };
        if (std::all_of (impulse.samples.begin(), impulse.samples.end(), [] (float s) { return std::abs (s) < 1e-6f; }))
            throw TakeError (path.string() + ": the impulse response is silent; choose another file");
        return impulse;
    }
    catch (const TakeError& fault)
    {
        std::string words = fault.what();
        for (const auto& [take, impulse] :
             { std::pair<std::string, std::string> { "the take", "the impulse response" }, { "a take", "an impulse response" } })
            for (size_t at = words.find (take, path.string().size()); at != std::string::npos;
                 at = words.find (take, at + impulse.size()))
                words.replace (at, take.size(), impulse);
        throw TakeError (words);
    }
}
}
