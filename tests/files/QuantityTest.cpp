#include "files/Quantity.h"

#include <catch2/catch.hpp>

namespace quantityTest
{
using namespace coldiron;

// SI prefixes: the International System of Units (BIPM, SI brochure), table of prefixes; from memory of it.
TEST_CASE ("Quantities are read as the doubles nearest to what is written")
{
    CHECK (parseQuantity ("4.1k") == 4100.0);
    CHECK (parseQuantity ("22n") == 22e-9);
    CHECK (parseQuantity ("500p") == 500e-12);
    CHECK (parseQuantity ("2.2") == 2.2);
    CHECK (parseQuantity ("1M") == 1e6);
    CHECK (parseQuantity ("1.2G") == 1.2e9);
    CHECK (parseQuantity ("3u") == 3e-6);
    CHECK (parseQuantity ("3\xc2\xb5") == 3e-6);
    CHECK (parseQuantity ("3\xce\xbc") == 3e-6);
    CHECK (parseQuantity ("5m") == 5e-3);
    CHECK (parseQuantity ("150 k") == 150e3);
    CHECK (parseQuantity ("1e3") == 1000.0);
    CHECK (parseQuantity ("-2") == -2.0);
    CHECK (*parseQuantity ("1e3k") == Approx (1e6));
}

TEST_CASE ("What is no quantity is none")
{
    for (const char* text :
         { "", "k", "4.1kk", "22nF", "nan", "inf", "-inf", "1e999", "0x10", "1,5", "4k1", "500K", "two", "1.2.3", "--1" })
    {
        INFO (text);
        CHECK_FALSE (parseQuantity (text).has_value());
    }
}

TEST_CASE ("Quantities are written as people write them, and read back the same")
{
    CHECK (quantityText (4100.0) == "4.1k");
    CHECK (quantityText (22e-9) == "22n");
    CHECK (quantityText (1e6) == "1M");
    CHECK (quantityText (0.0) == "0");
    CHECK (quantityText (-1500.0) == "-1.5k");
    for (double value : { 4.7e-12, 33e-9, 0.15, 1.6, 999.0, 130e3, 2.2e6 })
        CHECK (*parseQuantity (quantityText (value)) == Approx (value).epsilon (1e-9));
}

TEST_CASE ("A misspelled name finds its neighbour, a strange one none")
{
    CHECK (nearest ("brigde", { "neck", "bridge", "middle" }) == "bridge");
    CHECK (nearest ("capacitanse", { "capacitance", "inductance" }) == "capacitance");
    CHECK (nearest ("zzzzzz", { "neck", "bridge" }).empty());
}
}
