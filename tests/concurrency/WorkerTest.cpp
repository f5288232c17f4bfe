// One kind of thread for all that happens in the background: it sleeps until it is woken, ends when it is told to, and says
// what failed. Run under the thread sanitizer too.
#include "concurrency/Worker.h"
#include "support/Wakeups.h"

#include <catch2/catch.hpp>

#include <atomic>
#include <chrono>
#include <stdexcept>

namespace workerTest
{
using namespace coldiron;

namespace
{
using Clock = std::chrono::steady_clock;

double since (Clock::time_point began) { return std::chrono::duration<double> (Clock::now() - began).count(); }

void fails (const std::string& words) { FAIL_CHECK (words); }
}

TEST_CASE ("a worker takes a turn when it begins and when it is woken, and else sleeps")
{
    std::atomic<int> turns { 0 };
    Worker worker (
        "test-sleeper",
        [&] (const Cancellation&)
        {
            ++turns;
            return false;
        },
        fails);
    REQUIRE (worker.waitUntilIdle (10.0));
    CHECK (turns == 1);
    for (int i = 2; i <= 50; ++i)
    {
        worker.wake();
        REQUIRE (worker.waitUntilIdle (10.0));
        CHECK (turns == i);
    }
    std::this_thread::sleep_for (std::chrono::milliseconds (50)); // it may be on its way to sleep
    int seen = 0;
    const auto before = support::threadWaits();
    std::this_thread::sleep_for (std::chrono::milliseconds (500));
    CHECK (support::mostWaits (before, support::threadWaits(), "test-sleeper", &seen) == 0);
    CHECK (seen == 1);
    CHECK (turns == 50);

    worker.wake(); // the count can rise
    REQUIRE (worker.waitUntilIdle (10.0));
    std::this_thread::sleep_for (std::chrono::milliseconds (50));
    CHECK (support::mostWaits (before, support::threadWaits(), "test-sleeper") > 0);
}

TEST_CASE ("many wake-ups during a turn are one turn more, and none is lost")
{
    std::atomic<bool> goes { false };
    std::atomic<int> turns { 0 }, asked { 0 }, seen { -1 };
    Worker worker (
        "test-coalesce",
        [&] (const Cancellation&)
        {
            seen = asked.load();
            ++turns;
            while (! goes)
                std::this_thread::yield();
            return false;
        },
        fails);
    while (turns == 0)
        std::this_thread::yield();
    for (int i = 0; i < 1000; ++i)
    {
        ++asked;
        worker.wake();
    }
    CHECK_FALSE (worker.waitUntilIdle (0.01));
    goes = true;
    REQUIRE (worker.waitUntilIdle (10.0));
    CHECK (turns == 2);
    CHECK (seen == 1000);
    for (int i = 0; i < 20000; ++i) // woken at every moment of a turn and of falling asleep
    {
        ++asked;
        worker.wake();
    }
    REQUIRE (worker.waitUntilIdle (10.0));
    CHECK (seen == 21000);
}

TEST_CASE ("a worker goes on without sleeping as long as there is more to do")
{
    std::atomic<int> left { 100 };
    Worker worker (
        "test-more", [&] (const Cancellation&) { return --left > 0; }, fails);
    REQUIRE (worker.waitUntilIdle (10.0));
    CHECK (left == 0);
    left = 10;
    worker.wake();
    CHECK (worker.waitFor (10.0, [&] { return left <= 5; }));
    CHECK_FALSE (worker.waitFor (0.01, [&] { return left == 1000; }));
}

TEST_CASE ("what a turn throws is told in its words, and the worker goes on; to give work up is no fault")
{
    std::vector<std::string> told;
    std::atomic<int> turns { 0 };
    Worker worker (
        "test-faults",
        [&] (const Cancellation&) -> bool
        {
            switch (++turns)
            {
            case 1: throw std::runtime_error ("the tape is torn");
            case 2: throw Cancelled();
            case 4: throw 5;
            default: return false;
            }
        },
        [&] (const std::string& words) { told.push_back (words); });
    REQUIRE (worker.waitUntilIdle (10.0));
    CHECK (told == std::vector<std::string> { "the tape is torn" });
    CHECK (turns == 1); // it does not try again by itself
    worker.wake();
    REQUIRE (worker.waitUntilIdle (10.0));
    CHECK (turns == 3); // what was given up is looked at again at once
    CHECK (told.size() == 1);
    worker.wake();
    REQUIRE (worker.waitUntilIdle (10.0));
    REQUIRE (told.size() == 2);
    CHECK_FALSE (told[1].empty());
}

TEST_CASE ("work that asks is given up when its worker ends, and when a newer result is wanted")
{
    std::atomic<int> newest { 1 }, working { 0 }, done { 0 };
    double tookToEnd = 0.0;
    {
        Worker worker (
            "test-cancel",
            [&] (const Cancellation& stop)
            {
                const int mine = newest;
                if (done == mine)
                    return false;
                working = mine;
                const Cancellation isUnwanted ([&] { return stop.isRequested() || newest != mine; });
                for (int i = 0; i < 60000 && mine != 2; ++i) // a minute
                {
                    isUnwanted.check();
                    std::this_thread::sleep_for (std::chrono::milliseconds (1));
                }
                done = mine;
                return true;
            },
            fails);
        while (working != 1)
            std::this_thread::yield();
        newest = 2;
        REQUIRE (worker.waitFor (10.0, [&] { return done == 2; }));
        newest = 3;
        worker.wake();
        while (working != 3)
            std::this_thread::yield();
        tookToEnd = -since (Clock::time_point());
    }
    tookToEnd += since (Clock::time_point());
    CHECK (tookToEnd < 1.0);
    CHECK (done == 2);
    CHECK_FALSE (Cancellation().isRequested());
    CHECK_NOTHROW (Cancellation().check());
}

TEST_CASE ("workers that share a signal are woken by it together")
{
    ChangeSignal changes;
    std::atomic<int> first { 0 }, second { 0 };
    const auto counting = [] (std::atomic<int>& count)
    {
        return [&count] (const Cancellation&)
        {
            ++count;
            return false;
        };
    };
    Worker one ("test-one", changes, counting (first), fails);
    {
        Worker two ("test-two", changes, counting (second), fails);
        REQUIRE ((one.waitUntilIdle (10.0) && two.waitUntilIdle (10.0)));
        changes.raise();
        REQUIRE ((one.waitUntilIdle (10.0) && two.waitUntilIdle (10.0)));
        CHECK (first == 2);
        CHECK (second == 2);
    }
    changes.raise();
    REQUIRE (one.waitUntilIdle (10.0));
    CHECK (second == 2);
}
}
