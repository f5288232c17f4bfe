// Reading a number by a stream is reading it by the standard library's own way, which some standard libraries lack.
#include "files/ReadNumber.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <cstdio>
#include <random>
#include <string>

namespace readNumberTest
{
using namespace coldiron;

namespace
{
using Way = NumberEnd (*) (const char*, const char*, double&);

struct Read
{
    double number = -7.0; ///< left alone where none is read
    long used = -1;       ///< letters

    bool operator== (const Read&) const = default;
};

Read readBy (Way way, const std::string& text)
{
    Read read;
    if (const char* end = way (text.data(), text.data() + text.size(), read.number))
        read.used = end - text.data();
    return read;
}
}

TEST_CASE ("A number ends where it ends, and what is none is left alone")
{
    for (const Way way : { readNumber, readNumberByStream })
    {
        CHECK (readBy (way, "4.1k") == Read { 4.1, 3 });
        CHECK (readBy (way, "-.5e") == Read { -0.5, 3 });
        CHECK (readBy (way, "5.e+") == Read { 5.0, 2 });
        CHECK (readBy (way, "1e-3F") == Read { 1e-3, 4 });
        CHECK (readBy (way, "0x10") == Read { 0.0, 1 });
        CHECK (readBy (way, "1,5") == Read { 1.0, 1 });
        for (const char* none : { "", "-", ".", "+1", " 1", "e5", "inf", "nan", "-inf", "1e999" })
        {
            INFO (none);
            CHECK (readBy (way, none) == Read {});
        }
    }
}

TEST_CASE ("Both ways read the same double, to the last bit")
{
    std::mt19937_64 random (5);
    std::uniform_real_distribution<double> exponent (-300.0, 300.0), sign (-1.0, 1.0);
    for (int i = 0; i < 20000; ++i)
    {
        char text[64];
        const double value = sign (random) * std::pow (10.0, exponent (random));
        std::snprintf (text, sizeof text, i % 2 == 0 ? "%.17g" : "%.6g", value);
        INFO (text);
        REQUIRE (readBy (readNumberByStream, text) == readBy (readNumber, text));
    }
}
}
