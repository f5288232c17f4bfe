#include "wording/BenchWords.h"

#include <catch2/catch.hpp>

namespace benchWordsTest
{
using namespace coldiron;
using namespace coldiron::wording;

// Source: IEC 60062:2016, the examples of its tables for resistance and capacitance codes and for the letters of tolerance
// (from memory).
TEST_CASE ("values and tolerances are coded as IEC 60062 codes them", "[wording]")
{
    const std::pair<double, const char*> ohms[] = { { 0.1, "R10" },  { 0.47, "R47" },   { 1.0, "1R0" },    { 3.32, "3R32" },
                                                    { 10.0, "10R" }, { 100.0, "100R" }, { 1e3, "1K0" },    { 4.7e3, "4K7" },
                                                    { 10e3, "10K" }, { 59.0e3, "59K" }, { 250e3, "250K" }, { 500e3, "500K" },
                                                    { 1e6, "1M0" },  { 3.3e6, "3M3" },  { 10e6, "10M" } };
    for (const auto& [value, code] : ohms)
        CHECK (valueCode (value, false) == code);
    const std::pair<double, const char*> farads[] = { { 0.1e-12, "p10" },  { 3.3e-12, "3p3" }, { 100e-12, "100p" },
                                                      { 680e-12, "680p" }, { 1e-9, "1n0" },    { 4.7e-9, "4n7" },
                                                      { 22e-9, "22n" },    { 47e-9, "47n" },   { 100e-9, "100n" },
                                                      { 1e-6, "1µ0" } };
    for (const auto& [value, code] : farads)
        CHECK (valueCode (value, true) == code);
    CHECK (valueCode (0.0, false).empty());

    const std::pair<double, char> letters[] = { { 0.001, 'B' }, { 0.0025, 'C' }, { 0.005, 'D' }, { 0.01, 'F' }, { 0.02, 'G' },
                                                { 0.05, 'J' },  { 0.1, 'K' },    { 0.2, 'M' },   { 0.3, 'N' },  { 0.07, 0 } };
    for (const auto& [share, letter] : letters)
        CHECK (toleranceLetter (share) == letter);
}

// Common practice of the trade, no source: a push-pull's lugs are found by ringing them out at both ends of its travel.
TEST_CASE ("a switch is rung out position by position", "[wording]")
{
    SwitchType type;
    type.name = "Push-pull, two poles";
    type.points = { "a", "a-down", "a-up" };
    type.positions = { { "down", { { "a", "a-down" } } }, { "up", { { "a", "a-up" } } }, { "out", {} } };
    const auto lines = ringOut (type);
    REQUIRE (lines.size() == 3);
    CHECK (lines[0] == "down: a rings to a down, nothing else");
    CHECK (lines[1] == "up: a rings to a up, nothing else");
    CHECK (lines[2] == "out: nothing rings");
}
}
