#include "audition/Voices.h"

#include <catch2/catch.hpp>

namespace surenessTest
{
using namespace coldiron;
using namespace coldiron::bench;

namespace
{
Setting at (const std::string& position)
{
    Setting setting;
    setting.levers["selector"] = position;
    return setting;
}

Playing playing (const Voice& recorded, const Voice& option) { return judge (recorded, option).playing; }
}

// The marks follow the table of what 96 synthesized takes showed; the cases are the table's own.
TEST_CASE ("the playing: same coils")
{
    const Voice series = voiceOf (humbuckerWired (Wiring::series, humbucker ("bridge")));
    CHECK (playing (series, series) == Playing::sameCoils);
    CHECK (playing (series, voiceOf (humbuckerWired (Wiring::parallel, humbucker ("bridge")))) == Playing::sameCoils);
    Setting low;
    low.knobs["volume"] = 3.0;
    low.knobs["tone"] = 0.0;
    CHECK (playing (series, voiceOf (humbuckerWired (Wiring::series, humbucker ("bridge")), low)) == Playing::sameCoils);

    // Unequal coils in series and parallel still count as the same coils.
    auto unequal = humbucker ("bridge");
    unequal.as<PickupPart>()->pickup.coils[1].dcrOhms *= 1.4;
    unequal.as<PickupPart>()->pickup.coils[1].henries *= 1.4;
    CHECK (playing (voiceOf (humbuckerWired (Wiring::series, unequal)), voiceOf (humbuckerWired (Wiring::parallel, unequal))) == Playing::sameCoils);

    // One pickup turned over alone is the same wave upside down.
    CHECK (playing (voiceOf (apart(), at ("neck")), voiceOf (reversedNeck(), at ("neck"))) == Playing::sameCoils);
}

TEST_CASE ("the playing: close, fair and rough")
{
    const Voice series = voiceOf (humbuckerWired (Wiring::series, humbucker ("bridge")));
    CHECK (playing (series, voiceOf (humbuckerWired (Wiring::splitOpen, humbucker ("bridge")))) == Playing::close);
    CHECK (playing (series, voiceOf (humbuckerWired (Wiring::splitShorted, humbucker ("bridge")))) == Playing::close);
    CHECK (playing (voiceOf (humbuckerWired (Wiring::splitShorted, humbucker ("bridge"))), series) == Playing::close);
    // A single coil at the same place as a humbucker.
    CHECK (playing (series, voiceOf (oneVolumeOneTone (single ("bridge"), 250e3, "bridge.coil.start", "bridge.coil.finish"))) == Playing::close);

    const Voice neck = voiceOf (apart(), at ("neck")), bridge = voiceOf (apart(), at ("bridge")), both = voiceOf (apart(), at ("both"));
    CHECK (playing (neck, bridge) == Playing::fair);
    CHECK (playing (bridge, both) == Playing::fair);
    CHECK (playing (both, neck) == Playing::fair);

    const Voice opposed = voiceOf (reversedNeck(), at ("both"));
    CHECK (playing (bridge, opposed) == Playing::rough);
    CHECK_FALSE (judge (bridge, opposed).betweenOneAndBothOutOfPhase);
    CHECK (playing (opposed, neck) == Playing::rough);
    CHECK (playing (both, opposed) == Playing::rough);
    CHECK (judge (both, opposed).betweenOneAndBothOutOfPhase);
    CHECK (judge (both, opposed).loudnessDb() == 2.5);
    CHECK (judge (bridge, opposed).loudnessDb() == 2.0);
}

TEST_CASE ("basses are never closer than fair")
{
    const auto bass = [] (Wiring wiring)
    { return Voice (humbuckerWired (wiring, humbucker ("bridge")), {}, {}, fourBassStrings()); };
    CHECK (playing (bass (Wiring::series), bass (Wiring::splitOpen)) == Playing::fair);
    CHECK (playing (bass (Wiring::series), bass (Wiring::parallel)) == Playing::sameCoils);
}

TEST_CASE ("the guitar's mark is that of the least known pickup heard")
{
    const auto known = [] (Knowledge neckKnown, Knowledge bridgeKnown)
    {
        auto harness = apart();
        for (const auto& [name, knowledge] : { std::pair { "neck", neckKnown }, { "bridge", bridgeKnown } })
        {
            Part part = *harness.find (name);
            part.as<PickupPart>()->pickup.known = knowledge;
            harness.replacePart (name, part, {});
        }
        return harness;
    };
    const auto half = known (Knowledge::measured, Knowledge::assumed);
    CHECK (judge (voiceOf (half, at ("neck")), voiceOf (half, at ("neck"))).guitar == Knowledge::measured);
    CHECK (judge (voiceOf (half, at ("neck")), voiceOf (half, at ("both"))).guitar == Knowledge::assumed);
    const auto ohms = known (Knowledge::measured, Knowledge::fromOhms);
    const auto sure = judge (voiceOf (ohms, at ("both")), voiceOf (ohms, at ("both")));
    CHECK (sure.guitar == Knowledge::fromOhms);
    CHECK (sure.pillWord() == "from ohms");
    CHECK (sure.explanation().find ("exact") == std::string::npos);
}
}
