// Objects handed to the reader arrive whole, in order, and are freed by the publisher alone. Run under the thread sanitizer too.
#include "concurrency/Handover.h"

#include <catch2/catch.hpp>

#include <atomic>
#include <set>
#include <thread>
#include <vector>

namespace handoverTest
{
using namespace coldiron;

namespace
{
/** Counts how many there are, and notes which thread frees one. */
struct Counted
{
    static inline std::atomic<int> alive { 0 };
    static inline std::atomic<int> freedElsewhere { 0 };

    const std::thread::id maker = std::this_thread::get_id();
    std::vector<int> values;

    explicit Counted (int value) : values (64, value) { ++alive; }
    ~Counted()
    {
        --alive;
        freedElsewhere += std::this_thread::get_id() != maker ? 1 : 0;
    }
};
}

TEST_CASE ("the reader gets the newest, once, and what it never took is freed at once")
{
    Counted::alive = 0;
    {
        Handover<Counted> handover;
        CHECK_FALSE (handover.take());
        handover.publish (std::make_unique<Counted> (1));
        handover.publish (std::make_unique<Counted> (2));
        CHECK (Counted::alive == 1);
        auto held = handover.take();
        REQUIRE (held);
        CHECK (held->values.front() == 2);
        CHECK_FALSE (handover.take());

        handover.publish (std::make_unique<Counted> (3));
        auto next = handover.take();
        CHECK (Counted::alive == 2);
        held = std::move (next); // gives back the first
        CHECK (held->values.front() == 3);
        CHECK (Counted::alive == 2); // the reader frees nothing
        handover.free();
        CHECK (Counted::alive == 1);
        handover.publish (std::make_unique<Counted> (4)); // never taken
        held.reset();
        CHECK_FALSE (held);
    }
    CHECK (Counted::alive == 0);
}

TEST_CASE ("what one thread publishes another uses, and frees nothing of")
{
    Counted::alive = 0;
    Counted::freedElsewhere = 0;
    std::atomic<bool> over { false };
    std::atomic<int> torn { 0 }, taken { 0 }, backwards { 0 };
    Handover<Counted> handover;
    std::thread reader (
        [&]
        {
            Handover<Counted>::Held now, before; // as two heads of a player
            int last = 0;
            while (! over || taken < 2)
            {
                auto fresh = handover.take();
                if (! fresh)
                    continue;
                before = std::move (now);
                now = std::move (fresh);
                ++taken;
                backwards += now->values.front() <= last ? 1 : 0;
                last = now->values.front();
                torn += std::set<int> (now->values.begin(), now->values.end()).size() != 1 ? 1 : 0;
                torn += before && before->values.front() != before->values.back() ? 1 : 0;
            }
        });
    for (int i = 1; i <= 20000 || taken < 2; ++i)
        handover.publish (std::make_unique<Counted> (i));
    over = true;
    reader.join();
    CHECK (torn == 0);
    CHECK (backwards == 0);
    CHECK (Counted::freedElsewhere == 0);
    handover.free();
    CHECK (Counted::alive <= 1); // one may be left that was never taken
}
}
