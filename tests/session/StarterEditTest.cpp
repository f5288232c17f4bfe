// A starter set put into a job: one edit, undone as one.
#include "Sessions.h"

#include "session/StarterEdit.h"

#include <catch2/catch.hpp>

namespace starterEditTest
{
using namespace coldiron;

namespace
{
StarterOffer offerFor (const Session& session, const std::string& set)
{
    Diagnostics diagnostics;
    const auto starter = readStarter (set, session.jobEditor.presets(), diagnostics);
    REQUIRE (starter.has_value());
    return offerStarter (*starter, session.jobEditor.job()->guitar, {}, session.jobEditor.job()->listening,
                         session.jobEditor.presets());
}
}

TEST_CASE ("A starter set fills A to C of an empty job and is undone as one step")
{
    Session session (sessions::shippedPresets());
    REQUIRE (session.jobEditor.newJob ("two-humbuckers-four-knobs"));
    const auto before = session.jobEditor.text();
    const auto edit = withStarter (before, offerFor (session, "brighter"));
    CHECK (edit.letters == std::vector<std::string> { "A", "B", "C" }); // the option that changed nothing made room
    REQUIRE (session.jobEditor.edit ("/options", edit.options, "Starter set: Brighter"));
    CHECK (session.options.ids() == std::vector<OptionId> { OptionId::A, OptionId::B, OptionId::C });
    for (const auto& option : session.jobEditor.job()->options)
        CHECK_FALSE (option.rewires.empty());
    CHECK (session.controls.setting (OptionId::A).levers.at ("neck-volume-pull") == "up");
    CHECK (session.jobEditor.undoName() == "Starter set: Brighter");
    REQUIRE (session.jobEditor.undo());
    CHECK (session.jobEditor.text() == before);
}

TEST_CASE ("A starter set takes the letters that are free and says how many it could not place")
{
    Session session (sessions::shippedPresets());
    REQUIRE (session.jobEditor.setText (sessions::twoOptions));
    const auto offer = offerFor (session, "brighter");
    REQUIRE (offer.options.size() == 3);
    const auto edit = withStarter (session.jobEditor.text(), offer);
    CHECK (edit.letters == std::vector<std::string> { "B", "D", "E" });
    CHECK (edit.left == 0);
    while (session.options.ids().size() < 7)
        REQUIRE (session.options.duplicate (OptionId::C) != asRecorded);
    const auto last = withStarter (session.jobEditor.text(), offer);
    CHECK (last.letters.size() == 1);
    CHECK (last.left == 2);
    REQUIRE (session.jobEditor.edit ("/options", last.options, "Starter set: Brighter"));
    CHECK (withStarter (session.jobEditor.text(), offer).options.empty());
    CHECK (withStarter ("not a job", offer).options.empty());
}
}
