#include "wording/OhmWords.h"

#include <catch2/catch.hpp>

namespace ohmWordsTest
{
using namespace coldiron;
using namespace coldiron::wording;

TEST_CASE ("what a meter shows where it shows no ohms")
{
    OhmReading reading;
    CHECK (noOhms (reading).empty());
    reading.kind = OhmReading::Kind::open;
    CHECK (noOhms (reading) == "open");
    reading.kind = OhmReading::Kind::shorted;
    CHECK (noOhms (reading) == "short");
    reading.kind = OhmReading::Kind::buffered;
    CHECK (noOhms (reading) == "a buffer, no reading");
}

TEST_CASE ("a reading at the jack that no pickup gives is refused in words")
{
    LeadsReading reading;
    CHECK (jackRefusal (reading, "neck").empty());
    reading.refusal = LeadsReading::Refusal::noSuchPickup;
    CHECK (jackRefusal (reading, "neck") == "the guitar has no pickup neck");
    reading.refusal = LeadsReading::Refusal::buffered;
    CHECK (jackRefusal (reading, "neck") == "A buffer drives the jack: read the pickup at its own leads.");
    reading.refusal = LeadsReading::Refusal::abovePots;
    reading.potsOhms = 499999.2;
    CHECK (jackRefusal (reading, "neck") == "The pots alone read 500k there: more cannot be. Are all knobs at 10?");
    reading.refusal = LeadsReading::Refusal::tooLittle;
    CHECK (jackRefusal (reading, "neck") == "Too little for this pickup: a short, or another pickup beside it?");
}
}
