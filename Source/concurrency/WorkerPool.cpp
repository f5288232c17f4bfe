#include "concurrency/WorkerPool.h"

#include <algorithm>
#include <utility>

namespace coldiron
{
WorkerPool::WorkerPool()
{
    const unsigned cores = std::clamp (std::thread::hardware_concurrency(), 1u, 16u);
    for (unsigned i = 1; i < cores; ++i)
        threads.emplace_back (
            [this] (const std::stop_token& stop)
            {
                std::unique_lock lock (mutex);
                while (wake.wait (lock, stop, [this] { return next < end; }))
                    help (lock);
            });
}

WorkerPool::~WorkerPool() = default;

/** Takes pieces until none is left. */
void WorkerPool::help (std::unique_lock<std::mutex>& lock)
{
    while (next < end)
    {
        const size_t piece = next++;
        ++running;
        lock.unlock();
        std::exception_ptr thrown;
        try
        {
            (*work) (piece);
        }
        catch (...)
        {
            thrown = std::current_exception();
        }
        lock.lock();
        if (thrown != nullptr)
        {
            fault = fault != nullptr ? fault : thrown;
            next = end;
        }
        if (--running == 0 && next >= end)
            idle.notify_all();
    }
}

void WorkerPool::run (size_t count, const std::function<void (size_t)>& w)
{
    std::unique_lock lock (mutex);
    work = &w;
    next = 0;
    end = count;
    fault = nullptr;
    if (count > 1)
        wake.notify_all();
    help (lock);
    idle.wait (lock, [this] { return running == 0; });
    end = next = 0;
    work = nullptr;
    if (fault != nullptr)
        std::rethrow_exception (std::exchange (fault, nullptr));
}
}
