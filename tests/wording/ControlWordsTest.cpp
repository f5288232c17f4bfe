#include "wording/ControlWords.h"

#include <catch2/catch.hpp>

namespace controlWordsTest
{
using namespace coldiron;
using namespace coldiron::wording;

TEST_CASE ("what a control does, in words")
{
    ControlUse use;
    CHECK (control (use, false) == "knob, 0 to 10");
    use.kind = ControlUse::Kind::volume;
    CHECK (control (use, false) == "volume, 0 to 10: 10 is all the way up");
    use.kind = ControlUse::Kind::tone;
    CHECK (control (use, false) == "tone, 0 to 10: 10 is brightest");
    use.kind = ControlUse::Kind::blend;
    use.blended = { PickupsOn { { "neck", {} } }, PickupsOn { { "bridge", {} }, { "neck", {} } },
                    PickupsOn { { "bridge", {} } } };
    CHECK (control (use, false) == "blend, 0 to 10: at 0 neck alone, at 5 bridge and neck together, at 10 bridge alone");
    use.kind = ControlUse::Kind::lever;
    use.control.positions = { "a", "b", "c" };
    CHECK (control (use, false) == "switch, 3 positions");
}

TEST_CASE ("what is heard at a position, in words")
{
    CHECK (pickupsOn ({}, false) == "silent");
    CHECK (pickupsOn ({ { "bridge", {} } }, true) == "bridge");
    CHECK (pickupsOn ({ { "bridge-two", { "north" } } }, false) == "bridge two (its north coil alone) alone");
    PositionUse use { "series", { { "bridge", {} }, { "neck", {} } }, "both" };
    CHECK (position (use, false) == "bridge and neck together");
    use.louder = 1;
    CHECK (position (use, false) == "bridge and neck together, louder than \"both\"");
    use.brighter = -1;
    CHECK (position (use, false) == "bridge and neck together, louder and darker than \"both\"");
    use.louder = 0;
    CHECK (position (use, false) == "bridge and neck together, darker than \"both\"");
    use.louder = use.brighter = 0;
    CHECK (position (use, false) == "bridge and neck together");
}
}
