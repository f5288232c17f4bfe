#include "concurrency/WorkerPool.h"

#include <algorithm>
#include <utility>

namespace coldiron
{
WorkerPool::WorkerPool()
{
    const unsigned cores = std::clamp (std::thread::hardware_concurrency(), 1u, 16u);
    for (unsigned i = 1; i < cores; ++i)
        workers.push_back (std::make_unique<Worker> (
            "coldiron-pool", begun,
            [this] (const Cancellation&)
            {
                std::unique_lock lock (mutex);
                help (lock);
                return false;
            },
            [] (const std::string&) {})); // what a piece throws is thrown on by run()
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
            ended.notify_all();
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
        begun.raise();
    help (lock);
    ended.wait (lock, [this] { return running == 0; });
    end = next = 0;
    work = nullptr;
    if (fault != nullptr)
        std::rethrow_exception (std::exchange (fault, nullptr));
}
}
