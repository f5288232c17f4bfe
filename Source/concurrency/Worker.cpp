#include "concurrency/Worker.h"

#include <chrono>
#include <exception>

#if defined(__linux__)
#include <pthread.h>
#endif

namespace coldiron
{
Worker::Worker (std::string threadName, Turn t, Failed f)
    : name (std::move (threadName)), turn (std::move (t)), failed (std::move (f)), signal (own), thread ([this] { run(); })
{
}

Worker::Worker (std::string threadName, ChangeSignal& shared, Turn t, Failed f)
    : name (std::move (threadName)), turn (std::move (t)), failed (std::move (f)), signal (shared), thread ([this] { run(); })
{
}

Worker::~Worker() { end(); }

void Worker::end()
{
    stopping = true;
    signal.raise();
    if (thread.joinable())
        thread.join();
}

bool Worker::takeTurn (const Cancellation& stop)
{
    try
    {
        return turn (stop);
    }
    catch (const Cancelled&)
    {
        return true; // a newer result is wanted, or it ends anyway
    }
    catch (const std::exception& fault)
    {
        failed (fault.what());
    }
    catch (...)
    {
        failed ("it failed for a reason that it does not name");
    }
    return false;
}

void Worker::run()
{
#if defined(__linux__)
    pthread_setname_np (pthread_self(), name.substr (0, 15).c_str());
#endif
    const Cancellation stop ([this] { return stopping.load (std::memory_order_relaxed); });
    while (! stopping)
    {
        const uint32_t seen = signal.now(); // before anything is looked at, so that what changes meanwhile is seen as new
        const bool isMore = takeTurn (stop);
        {
            const std::scoped_lock lock (mutex);
            ++turns;
            if (! isMore)
                doneFor = seen;
        }
        turned.notify_all();
        if (! isMore)
            signal.waitBeyond (seen);
    }
}

bool Worker::waitFor (double seconds, const std::function<bool()>& holds)
{
    using Clock = std::chrono::steady_clock;
    const auto until = Clock::now() + std::chrono::duration_cast<Clock::duration> (std::chrono::duration<double> (seconds));
    for (bool isInTime = true;;)
    {
        uint64_t before = 0;
        {
            const std::scoped_lock lock (mutex);
            before = turns;
        }
        if (holds())
            return true;
        if (! isInTime)
            return false;
        std::unique_lock lock (mutex);
        isInTime = turned.wait_until (lock, until, [&] { return turns != before; });
    }
}

bool Worker::waitUntilIdle (double seconds)
{
    const uint32_t asked = signal.now();
    return waitFor (seconds,
                    [&]
                    {
                        const std::scoped_lock lock (mutex);
                        return doneFor && static_cast<int32_t> (*doneFor - asked) >= 0;
                    });
}
}
