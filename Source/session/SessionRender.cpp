// The audio thread's way through a block, in real time and faster.
#include "session/Session.h"

#include <algorithm>
#include <array>
#include <chrono>

namespace coldiron
{
void Session::process (float* const* channels, int numChannels, int frames, bool waits)
{
    numChannels = std::min (numChannels, FilterRunner::maxChannels);
    designer.hold (waits);
    if (! waits)
        setEngineLevels();
    for (int done = 0; done < frames;)
    {
        int part = frames - done;
        if (waits)
        {
            const int into = static_cast<int> (framesSeen % renderStep);
            if (into == 0 || ! waited)
            {
                // Late once is late for as long as nothing changes: a render that waits at every step never ends.
                const uint32_t now = shared.snapshot()->revision;
                if (await (Told::sound, lateFor.load() == now ? std::min (0.02, longestWait) : longestWait))
                    lateFor = 0;
                else if (lateFor.exchange (now) != now)
                    shared.jobRevision.fetch_add (1); // the faults say so
                setEngineLevels();
            }
            part = std::min (part, renderStep - into);
        }
        std::array<float*, FilterRunner::maxChannels> pointers {};
        for (int c = 0; c < numChannels; ++c)
            pointers[static_cast<size_t> (c)] = channels[c] + done;
        processPart (pointers.data(), numChannels, part, waits);
        waited = waits;
        framesSeen += part;
        done += part;
    }
}

bool Session::waitUntilReported (double seconds) { return await (Told::everything, seconds); }

/** Until nothing that is heard now, or told, is still on its way. Not for the audio thread while it plays in real time.
    @returns whether it is so */
bool Session::await (Told what, double seconds)
{
    using Clock = std::chrono::steady_clock;
    const auto until = Clock::now() + std::chrono::duration<double> (seconds);
    const auto left = [&] { return std::max (0.0, std::chrono::duration<double> (until - Clock::now()).count()); };

    bool all = loader.waitUntilIdle (left());
    followHeard();
    all = player.waitUntilLoaded (left()) && all;
    all = designer.waitUntilIdle (left()) && all; // with it the chain after the jack, which levels are measured behind
    const bool headroom = fromTake.load() && shared.headroomKept.load();
    const bool matched = (shared.matched.load() || shared.isBlind()) && shared.playing() != asRecorded;
    if (what == Told::everything || headroom)
        all = reporter.waitUntilIdle (left()) && all;
    else if (matched)
        all = reporter.waitUntilIdle (shared.playing(), left()) && all;
    else
        return all;
    return designer.waitUntilIdle (left()) && all; // the level exactly
}
}
