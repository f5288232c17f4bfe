#pragma once

#include "concurrency/Cancellation.h"
#include "concurrency/ChangeSignal.h"

#include <condition_variable>
#include <functional>
#include <mutex>
#include <optional>
#include <string>
#include <thread>

namespace coldiron
{
/** A thread that works when it is woken and sleeps otherwise, without polling. Its owner declares it last, since it begins
    with its constructor and ends with its destructor, which waits for no more than the work takes to ask its Cancellation. */
class Worker
{
public:
    /** Looks at what there is to do and does some of it. @returns whether it is to be called again at once */
    using Turn = std::function<bool (const Cancellation& stop)>;

    /** Told the words of what a turn threw, on the thread; Cancelled is no fault. The next turn waits for a wake-up. */
    using Failed = std::function<void (const std::string& words)>;

    /** @param name  as the system lists threads, up to 15 letters */
    Worker (std::string name, Turn, Failed);

    /** Wakes by a signal that it may share with others and that outlives it. */
    Worker (std::string name, ChangeSignal&, Turn, Failed);

    ~Worker();
    Worker (const Worker&) = delete;
    Worker& operator= (const Worker&) = delete;

    /** [any thread, the audio thread too] After a change that it should look at. As ChangeSignal::raise(). */
    void wake() noexcept { signal.raise(); }

    /** Ends it, as the destructor does: waits for the turn at hand to ask, and then nothing is done any more. */
    void end();

    /** Waits until it sleeps with all done that it was woken for before this call. @returns whether it does in time */
    bool waitUntilIdle (double seconds);

    /** Waits until something holds that turns bring about; asked on the thread that waits. @returns whether it does in time */
    bool waitFor (double seconds, const std::function<bool()>& holds);

private:
    const std::string name;
    const Turn turn;
    const Failed failed;
    ChangeSignal own;
    ChangeSignal& signal;
    std::atomic<bool> stopping { false };
    std::mutex mutex;
    std::condition_variable turned;
    uint64_t turns = 0;              ///< taken so far
    std::optional<uint32_t> doneFor; ///< the signal as it was when a turn began that left nothing to do
    std::thread thread;              ///< last

    void run();
    bool takeTurn (const Cancellation&);
};
}
