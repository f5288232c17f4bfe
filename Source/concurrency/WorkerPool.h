#pragma once

#include <condition_variable>
#include <cstddef>
#include <exception>
#include <functional>
#include <mutex>
#include <thread>
#include <vector>

namespace coldiron
{
/** Does pieces of work that know nothing of each other on all cores. The threads wait, without polling, between two calls. */
class WorkerPool
{
public:
    WorkerPool(); ///< one thread for each core but the caller's own
    ~WorkerPool();
    WorkerPool (const WorkerPool&) = delete;
    WorkerPool& operator= (const WorkerPool&) = delete;

    size_t numThreads() const { return threads.size() + 1; } ///< the caller's counted

    /** Calls work with 0 to count - 1, each once, in any order and on any thread, and returns when all are done. The first
        exception stops what has not begun and is thrown on. Not from within work. */
    void run (size_t count, const std::function<void (size_t)>& work);

private:
    std::mutex mutex;
    std::condition_variable_any wake;
    std::condition_variable idle;
    const std::function<void (size_t)>* work = nullptr;
    size_t next = 0, end = 0, running = 0;
    std::exception_ptr fault;
    std::vector<std::jthread> threads; ///< last, so that they end first

    void help (std::unique_lock<std::mutex>&);
};
}
