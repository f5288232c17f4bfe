// A host keeps our state: it comes back whole in a second session, and a broken one does no harm.
#include "Sessions.h"

#include <catch2/catch.hpp>

#include <fstream>

namespace stateTest
{
using namespace coldiron;
using namespace sessions;

namespace
{
/** All that a state must bring back, compared one by one. */
bool sameBench (const Session& a, const Session& b)
{
    bool same = a.jobEditor.text() == b.jobEditor.text() && a.monitor.heard() == b.monitor.heard()
                && a.monitor.bypassed() == b.monitor.bypassed() && a.monitor.levelMatched() == b.monitor.levelMatched()
                && a.noise.humDb() == b.noise.humDb() && a.output.trimDb() == b.output.trimDb()
                && a.noise.mainsHz() == b.noise.mainsHz() && a.noise.facingDegrees() == b.noise.facingDegrees()
                && a.noise.buzz() == b.noise.buzz() && a.noise.hissGainDb() == b.noise.hissGainDb()
                && a.jobEditor.isChanged() == b.jobEditor.isChanged() && a.transport.source() == b.transport.source()
                && a.transport.loop() == b.transport.loop();
    for (OptionId id : a.options.ids())
        same = same && a.controls.setting (id) == b.controls.setting (id);
    for (int place = 0; place < numKnobs; ++place)
        same = same && a.automation.hostValue (ParameterKind::knob, place) == b.automation.hostValue (ParameterKind::knob, place);
    return same;
}

void arrange (Session& session)
{
    REQUIRE (session.jobEditor.setText (twoOptions));
    session.monitor.hear (OptionId::C);
    session.controls.setKnob (OptionId::C, "bridge-tone", 3.3333);
    session.controls.setLever (OptionId::A, "selector", "both");
    session.output.setTrimDb (-3.0);
    session.noise.setMainsHz (60.0);
    session.noise.setFacingDegrees (35.0);
    session.noise.setBuzz (0.25);
    session.noise.setHissGainDb (40.0);
    session.monitor.setLevelMatched (true);
    session.transport.setLoop (1.0, 2.5);
}
}

TEST_CASE ("a second session restored from a state is the same with the same sound")
{
    Session first (shippedPresets()), second (shippedPresets());
    arrange (first);
    first.audio.prepare (48000.0);
    second.audio.prepare (48000.0);
    CHECK_FALSE (sameBench (first, second));
    const auto x = noise (24000);
    CHECK (residualDb (played (second, x), played (first, x)) > -40.0); // the two differ before

    REQUIRE (second.restore (first.state()));
    CHECK (sameBench (first, second));
    REQUIRE (first.waitUntilReported (60.0));
    REQUIRE (second.waitUntilReported (60.0));
    first.audio.prepare (48000.0);
    second.audio.prepare (48000.0);
    CHECK (played (first, x) == played (second, x));
    CHECK (second.state() == first.state());
}

TEST_CASE ("a state that drops a part is noticed")
{
    // The broken variant of the check above: each part taken out of a good state must make a difference.
    Session first (shippedPresets());
    arrange (first);
    const JobTree good = JobTree::parse (first.state());
    for (const char* part : { "changed", "heard", "matched", "mains_hz", "trim_db", "loop" })
    {
        JobTree broken = good;
        broken.erase (part);
        Session second (shippedPresets());
        REQUIRE (second.restore (broken.dump()));
        INFO (part);
        CHECK_FALSE (sameBench (first, second));
    }
    JobTree broken = good;
    broken["job"] = twoOptions;
    broken.erase ("knobs");
    broken.erase ("levers");
    Session second (shippedPresets());
    REQUIRE (second.restore (broken.dump()));
    CHECK_FALSE (sameBench (first, second));
}

TEST_CASE ("a state brings the presets it names along")
{
    Session first (shippedPresets());
    arrange (first);
    PresetFolders none;
    Session second (none); // nothing installed
    REQUIRE (second.restore (first.state()));
    CHECK (sameBench (first, second));
    JobTree bare = JobTree::parse (first.state());
    bare.erase ("presets");
    Session third (none);
    CHECK_FALSE (third.restore (bare.dump()));
}

TEST_CASE ("a corrupt state keeps the last good one")
{
    Session session (shippedPresets());
    arrange (session);
    const std::string good = session.state();
    std::vector<std::string> broken { "",
                                      "{",
                                      "[]",
                                      "null",
                                      "\"x\"",
                                      "{}",
                                      R"({"coldiron":"state 1"})",
                                      R"({"coldiron":"state 2","job":"{}"})",
                                      R"({"coldiron":"state 1","job":"{"})",
                                      R"({"coldiron":"state 1","job":7})",
                                      std::string (100000, '['),
                                      std::string ("\xff\xfe\x00\x01", 4) };
    for (size_t cut = 1; cut < good.size(); cut += good.size() / 23)
        broken.push_back (good.substr (0, cut));
    for (const std::string& state : broken)
    {
        CHECK_FALSE (session.restore (state));
        CHECK_FALSE (session.diagnostics().empty());
        CHECK (session.state() == good);
    }
    // Values of a wrong kind or out of their range are left at their standard, and nothing is thrown.
    JobTree odd = JobTree::parse (good);
    odd["heard"] = 1e9;
    odd["trim_db"] = "loud";
    odd["loop"] = { 1 };
    odd["knobs"] = { "x" };
    odd["levers"] = 3;
    CHECK (session.restore (odd.dump()));
    CHECK (session.monitor.heard() == OptionId::H);
    CHECK (session.output.trimDb() == 0.0);
}

TEST_CASE ("a saved job opens as the same job")
{
    Session first (shippedPresets()), second (shippedPresets());
    arrange (first);
    const auto file = std::filesystem::temp_directory_path() / "coldiron-session-test.json";
    REQUIRE (first.jobEditor.save (file));
    CHECK_FALSE (first.jobEditor.isChanged());
    REQUIRE (second.jobEditor.open (file));
    CHECK (second.jobEditor.text() == first.jobEditor.text());
    first.controls.setKnob (OptionId::A, "bridge-volume", 5.0);
    CHECK (first.jobEditor.isChanged());
    std::filesystem::remove (file);
    CHECK_FALSE (second.jobEditor.open (file));
    CHECK_FALSE (second.jobEditor.save (std::filesystem::path ("/no/such/folder/x.json")));
}
}
