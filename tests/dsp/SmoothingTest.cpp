// The parts that keep a change from being heard as a click.
#include "dsp/Crossfade.h"
#include "dsp/Smoother.h"

#include <catch2/catch.hpp>

#include <vector>

namespace smoothingTest
{
using namespace coldiron;

TEST_CASE ("a crossfade goes from one sound to the next, level at both ends, on its last frame whole")
{
    Crossfade fade;
    CHECK_FALSE (fade.isActive());
    CHECK_FALSE (fade.advance (100));
    fade.start (480);
    REQUIRE (fade.isActive());
    CHECK (fade.left() == 480);
    std::vector<double> shares;
    for (int i = 0; i < 480; ++i)
        shares.push_back (fade.share (i));
    for (size_t i = 1; i < shares.size(); ++i)
        CHECK (shares[i] > shares[i - 1]);
    CHECK (shares.front() < 1e-4);
    CHECK (shares[239] == Approx (0.5));
    CHECK (shares.back() == 1.0);
    CHECK (fade.share (1000) == 1.0);
    for (int i = 0; i < 240; ++i) // the same way down
        CHECK (shares[static_cast<size_t> (239 + i)] == Approx (1.0 - shares[static_cast<size_t> (239 - i)]));
}

TEST_CASE ("a crossfade is the same in blocks of any size, and ends once")
{
    Crossfade whole, parts;
    whole.start (100);
    parts.start (100);
    int at = 0;
    for (const int block : { 1, 7, 30, 62 })
    {
        REQUIRE (parts.left() == 100 - at);
        for (int i = 0; i < block; ++i)
            CHECK (parts.share (i) == whole.share (at + i));
        CHECK_FALSE ((at + block < 100 && parts.advance (block)));
        at += block;
    }
    CHECK (parts.left() == 62);
    CHECK (parts.advance (62));
    CHECK_FALSE (parts.isActive());
    CHECK_FALSE (parts.advance (62));
    whole.stop();
    CHECK_FALSE (whole.isActive());
    whole.start (0); // at least a frame
    CHECK (whole.share (0) == 1.0);
    CHECK (whole.advance (1));
}

TEST_CASE ("a smoothed value goes by equal steps and reaches its target exactly, from either side")
{
    Smoother level;
    std::vector<double> way;
    while (level.value != 1.0)
        way.push_back (level.next (1.0, 0.3));
    REQUIRE (way.size() == 4);
    CHECK (way[1] == Approx (0.6));
    CHECK (level.next (1.0, 0.3) == 1.0);
    CHECK (level.next (0.25, 0.5) == 0.5);
    CHECK (level.next (0.25, 0.5) == 0.25);
    CHECK (level.next (0.5, 0.0) == 0.25);
}
}
