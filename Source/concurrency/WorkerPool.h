#pragma once

#include "concurrency/Worker.h"

#include <cstddef>
#include <exception>
#include <memory>
#include <vector>

namespace coldiron
{
/** Does pieces of work that know nothing of each other on all cores. */
class WorkerPool
{
public:
    WorkerPool(); ///< one thread for each core but the caller's own
    ~WorkerPool();
    WorkerPool (const WorkerPool&) = delete;
    WorkerPool& operator= (const WorkerPool&) = delete;

    size_t numThreads() const { return workers.size() + 1; } ///< the caller's counted

    /** Calls work with 0 to count - 1, each once, in any order and on any thread, and returns when all are done. The first
        exception stops what has not begun and is thrown on. Not from within work. */
    void run (size_t count, const std::function<void (size_t)>& work);

private:
    std::mutex mutex;
    ChangeSignal begun;
    std::condition_variable ended;
    const std::function<void (size_t)>* work = nullptr;
    size_t next = 0, end = 0, running = 0;
    std::exception_ptr fault;
    std::vector<std::unique_ptr<Worker>> workers; ///< last, so that they end first

    void help (std::unique_lock<std::mutex>&);
};
}
