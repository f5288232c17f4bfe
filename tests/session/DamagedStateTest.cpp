// States that a crash, a sync or another program damaged: each is refused or used, none harms, and the last good state
// comes back. Every key spoilt in many ways, every embedded preset broken, a broken one used twice.
#include "DamagedStates.h"

#include <catch2/catch.hpp>

#include <chrono>
#include <cstdlib>

namespace damagedStateTest
{
using namespace coldiron;
using namespace sessions;

namespace
{
/** Puts a state into a session that has a good one, plays a little and brings the good one back.
    @returns whether it was taken */
bool survives (Session& session, const std::string& good, const std::string& text)
{
    const bool taken = session.restore (text);
    if (! taken)
        CHECK_FALSE (session.diagnostics().empty());
    for (float sample : played (session, std::vector<float> (256, 0.0005f))) // too soft to count as listened to
        REQUIRE (std::isfinite (sample));
    if (! taken)
        CHECK (session.state() == good);
    const std::string now = session.state();
    CHECK (JobTree::parse (now, nullptr, false).is_object());
    REQUIRE (session.restore (good));
    CHECK (session.state() == good);
    return taken;
}
}

TEST_CASE ("every key of a state spoilt in every way: none harms")
{
    const JobTree good = damaged::goodState();
    Session session (shippedPresets());
    session.audio.prepare (48000.0);
    REQUIRE (session.restore (good.dump()));
    const auto states = damaged::keysSpoilt (good);
    int refused = 0;
    for (const auto& [what, text] : states)
    {
        INFO (what);
        refused += survives (session, good.dump(), text) ? 0 : 1;
    }
    CHECK (states.size() > 300);
    CHECK (refused > 20);
    CHECK (refused < static_cast<int> (states.size()));
}

TEST_CASE ("every preset of a state broken in every way, one of them used twice: none harms")
{
    const JobTree good = damaged::goodState();
    REQUIRE (good["presets"].contains ("switches/push-pull"));
    REQUIRE (good["presets"].size() >= 4);
    Session session (shippedPresets()), bare (PresetFolders {}); // one with presets installed, one without
    session.audio.prepare (48000.0);
    bare.audio.prepare (48000.0);
    REQUIRE (session.restore (good.dump()));
    REQUIRE (bare.restore (good.dump()));
    const auto states = damaged::presetsBroken (good);
    int refused = 0;
    for (const auto& [what, text] : states)
    {
        INFO (what);
        refused += survives (session, good.dump(), text) ? 0 : 1;
        survives (bare, good.dump(), text);
    }
    CHECK (states.size() > 100);
    CHECK (refused > static_cast<int> (states.size()) / 2);
}

TEST_CASE ("a preset within a state that is too deep is never walked, even where nothing reads it as a preset")
{
    JobTree deep = damaged::goodState();
    std::string job = damaged::usedTwice;
    deep["job"] = job.replace (job.find ("Twice"), 5, "deep");
    deep["presets"]["pickups/deep"] = std::string (1000000, '[') + std::string (1000000, ']');
    Session session (shippedPresets());
    REQUIRE (session.restore (deep.dump()));
    CHECK (JobTree::parse (session.state()).is_object());
}

TEST_CASE ("the presets of a state are used from memory, and nothing is written anywhere")
{
    const auto scratch = std::filesystem::temp_directory_path()
                         / ("coldiron-nothing-" + std::to_string (std::chrono::steady_clock::now().time_since_epoch().count()));
    std::filesystem::create_directories (scratch);
    const char* before = std::getenv ("TMPDIR");
    const std::string kept = before != nullptr ? before : "";
    ::setenv ("TMPDIR", scratch.c_str(), 1);

    JobTree state = damaged::goodState();
    JobTree guitar = parseJobTree (state["presets"]["guitars/two-humbuckers-four-knobs"].get<std::string>());
    guitar["name"] = "As it was kept";
    state["presets"]["guitars/two-humbuckers-four-knobs"] = guitar.dump();
    {
        Session session (shippedPresets());
        REQUIRE (session.restore (state.dump()));
        CHECK (session.jobEditor.job()->guitar.name == "As it was kept"); // before the one that is installed
        CHECK (std::filesystem::is_empty (scratch));
        Session again (PresetFolders {});
        REQUIRE (again.restore (session.state())); // and it travels on
        CHECK (again.jobEditor.job()->guitar.name == "As it was kept");
        // A preset spoilt is told by its name and where it is.
        state["presets"]["guitars/two-humbuckers-four-knobs"] = "{";
        CHECK_FALSE (session.restore (state.dump()));
        REQUIRE_FALSE (session.diagnostics().empty());
        CHECK (session.diagnostics()[0].text().find ("guitars/two-humbuckers-four-knobs, kept with the job:1")
               != std::string::npos);
    }
    CHECK (std::filesystem::is_empty (scratch));
    if (before != nullptr)
        ::setenv ("TMPDIR", kept.c_str(), 1);
    else
        ::unsetenv ("TMPDIR");
    std::filesystem::remove_all (scratch);
}
}
