#include "concurrency/WorkerPool.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <atomic>
#include <stdexcept>

namespace workerPoolTest
{
using namespace coldiron;

TEST_CASE ("a pool does each piece of work once, whatever is thrown")
{
    WorkerPool pool;
    for (const size_t count : { 0u, 1u, 2u, 3u, 100u })
        for (int round = 0; round < 200; ++round)
        {
            std::vector<std::atomic<int>> done (count);
            pool.run (count, [&] (size_t i) { ++done[i]; });
            CHECK (std::all_of (done.begin(), done.end(), [] (const auto& n) { return n == 1; }));
        }
    std::atomic<int> begun { 0 };
    CHECK_THROWS_AS (pool.run (1000,
                               [&] (size_t i)
                               {
                                   ++begun;
                                   if (i == 10)
                                       throw std::out_of_range ("");
                               }),
                     std::out_of_range);
    CHECK (begun < 1000);
    pool.run (4, [&] (size_t) { ++begun; });
    CHECK (begun >= 15);
}
}
