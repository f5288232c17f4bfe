#include "response/Responses.h"

#include <catch2/catch.hpp>

namespace surenessTest
{
using namespace coldiron;
using namespace coldiron::support;

namespace
{
Setting at (const std::string& position)
{
    Setting setting;
    setting.levers["selector"] = position;
    return setting;
}

Similarity playing (const GuitarResponse& recorded, const GuitarResponse& option)
{
    return assessConfidence (recorded, option).playing;
}
}

// The marks follow the table of what 96 synthesized takes showed; the cases are the table's own.
TEST_CASE ("the playing: same coils")
{
    const GuitarResponse series = voiceOf (humbuckerWired (Wiring::series, humbucker ("bridge")));
    CHECK (playing (series, series) == Similarity::sameCoils);
    CHECK (playing (series, voiceOf (humbuckerWired (Wiring::parallel, humbucker ("bridge")))) == Similarity::sameCoils);
    Setting low;
    low.knobs["volume"] = 3.0;
    low.knobs["tone"] = 0.0;
    CHECK (playing (series, voiceOf (humbuckerWired (Wiring::series, humbucker ("bridge")), low)) == Similarity::sameCoils);

    // Unequal coils in series and parallel still count as the same coils.
    auto unequal = humbucker ("bridge");
    unequal.as<PickupPart>()->pickup.coils[1].dcrOhms *= 1.4;
    unequal.as<PickupPart>()->pickup.coils[1].henries *= 1.4;
    CHECK (playing (voiceOf (humbuckerWired (Wiring::series, unequal)), voiceOf (humbuckerWired (Wiring::parallel, unequal)))
           == Similarity::sameCoils);

    // One pickup turned over alone is the same wave upside down.
    CHECK (playing (voiceOf (apart(), at ("neck")), voiceOf (reversedNeck(), at ("neck"))) == Similarity::sameCoils);
}

TEST_CASE ("the playing: close, fair and rough")
{
    const GuitarResponse series = voiceOf (humbuckerWired (Wiring::series, humbucker ("bridge")));
    CHECK (playing (series, voiceOf (humbuckerWired (Wiring::splitOpen, humbucker ("bridge")))) == Similarity::close);
    CHECK (playing (series, voiceOf (humbuckerWired (Wiring::splitShorted, humbucker ("bridge")))) == Similarity::close);
    CHECK (playing (voiceOf (humbuckerWired (Wiring::splitShorted, humbucker ("bridge"))), series) == Similarity::close);
    // A single coil at the same place as a humbucker.
    CHECK (playing (series, voiceOf (oneVolumeOneTone (single ("bridge"), 250e3, "bridge.coil.start", "bridge.coil.finish")))
           == Similarity::close);

    const GuitarResponse neck = voiceOf (apart(), at ("neck")), bridge = voiceOf (apart(), at ("bridge")),
                         both = voiceOf (apart(), at ("both"));
    CHECK (playing (neck, bridge) == Similarity::fair);
    CHECK (playing (bridge, both) == Similarity::fair);
    CHECK (playing (both, neck) == Similarity::fair);

    const GuitarResponse opposed = voiceOf (reversedNeck(), at ("both"));
    CHECK (playing (bridge, opposed) == Similarity::rough);
    CHECK_FALSE (assessConfidence (bridge, opposed).betweenOneAndBothOutOfPhase);
    CHECK (playing (opposed, neck) == Similarity::rough);
    CHECK (playing (both, opposed) == Similarity::rough);
    CHECK (assessConfidence (both, opposed).betweenOneAndBothOutOfPhase);
    CHECK (assessConfidence (both, opposed).loudnessDb() == 2.5);
    CHECK (assessConfidence (bridge, opposed).loudnessDb() == 2.0);
}

TEST_CASE ("basses are never closer than fair")
{
    const auto bass = [] (Wiring wiring)
    { return GuitarResponse (humbuckerWired (wiring, humbucker ("bridge")), {}, {}, fourBassStrings()); };
    CHECK (playing (bass (Wiring::series), bass (Wiring::splitOpen)) == Similarity::fair);
    CHECK (playing (bass (Wiring::series), bass (Wiring::parallel)) == Similarity::sameCoils);
}

TEST_CASE ("the guitar's mark is that of the least known pickup heard")
{
    const auto known = [] (Provenance neckKnown, Provenance bridgeKnown)
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
    const auto half = known (Provenance::measured, Provenance::assumed);
    CHECK (assessConfidence (voiceOf (half, at ("neck")), voiceOf (half, at ("neck"))).guitar == Provenance::measured);
    CHECK (assessConfidence (voiceOf (half, at ("neck")), voiceOf (half, at ("both"))).guitar == Provenance::assumed);
    const auto ohms = known (Provenance::measured, Provenance::fromOhms);
    const auto sure = assessConfidence (voiceOf (ohms, at ("both")), voiceOf (ohms, at ("both")));
    CHECK (sure.guitar == Provenance::fromOhms);
    CHECK (sure.isGuitarWeaker());
}
}
