// Unsaved work kept as it changes and taken up again, without a window.
#include "Folder.h"
#include "Sessions.h"

#include "session/UnsavedWork.h"

#include <catch2/catch.hpp>

namespace unsavedWorkTest
{
using namespace coldiron;
using sessions::shippedPresets;
using sessions::twoOptions;
namespace fs = std::filesystem;

TEST_CASE ("what was left unsaved is taken up with its own file, as one step of undo")
{
    const ScratchFolder folder ("unsaved-work");
    const fs::path job = folder.path / "job.json", unsaved = folder.path / "unsaved";
    {
        Session before (shippedPresets());
        REQUIRE (before.jobEditor.setText (twoOptions));
        REQUIRE (before.jobEditor.save (job));
        UnsavedWork work (before, unsaved);
        REQUIRE (before.options.rename (OptionId::A, "Kept"));
        before.controls.setKnob (OptionId::A, "bridge-tone", 3.0);
        work.keep();
        REQUIRE (work.autosave().waitUntilIdle (10.0));
        CHECK (fs::exists (work.autosave().file()));
        REQUIRE (before.options.rename (OptionId::A, "Changed a moment before the end"));
    }

    Session session (shippedPresets());
    UnsavedWork work (session, unsaved);
    const auto left = work.left();
    REQUIRE (left.size() == 1);
    REQUIRE (work.takeUp (left.front()));
    CHECK (session.jobEditor.file() == job);
    CHECK (session.jobEditor.isChanged());
    CHECK (session.jobEditor.job()->find ("A")->name == "Changed a moment before the end");
    CHECK (session.controls.setting (OptionId::A).knob ("bridge-tone") == Approx (3.0));
    CHECK (work.left().empty());
    REQUIRE (session.jobEditor.undo()); // back to what the file says
    CHECK (session.jobEditor.job()->find ("A")->name == "Bridge");

    REQUIRE (session.jobEditor.redo());
    REQUIRE (session.jobEditor.save (job));
    work.keep();
    REQUIRE (work.autosave().waitUntilIdle (10.0));
    CHECK_FALSE (fs::exists (work.autosave().file()));
}

TEST_CASE ("work whose file is gone opens without one, its takes named in full")
{
    const ScratchFolder folder ("unsaved-alone");
    const fs::path unsaved = folder.path / "unsaved";
    {
        const Unsaved lost { R"({ "coldiron": "job 1", "title": "Lost", "guitar": "two-humbuckers-four-knobs",
            "takes": [ { "file": "verse.wav" } ], "options": { "A": { "name": "Bridge" } } })",
                             "Lost", folder.path / "gone" / "job.json", folder.path / "gone" };
        Autosave autosave (unsaved);
        autosave.keep (lost);
        REQUIRE (autosave.waitUntilIdle (10.0));
    }
    Session session (shippedPresets());
    UnsavedWork work (session, unsaved);
    const auto left = work.left();
    REQUIRE (left.size() == 1);
    REQUIRE (work.takeUp (left.front()));
    CHECK (session.jobEditor.file().empty());
    CHECK (session.jobEditor.job()->title == "Lost");
    CHECK (session.jobEditor.job()->takes.at (0).file == folder.path / "gone" / "verse.wav");
}

TEST_CASE ("what is open as it was left is not offered, and what cannot be read is not forgotten")
{
    const ScratchFolder folder ("unsaved-same");
    {
        Session before (shippedPresets());
        REQUIRE (before.jobEditor.setText (twoOptions));
        const UnsavedWork work (before, folder.path);
    }
    Session session (shippedPresets());
    REQUIRE (session.jobEditor.setText (twoOptions)); // a clean close kept it in the app's own state too
    {
        const UnsavedWork again (session, folder.path);
        CHECK (again.left().empty());
        CHECK (leftWork (folder.path).empty());
    }
    for (const auto& own : leftWork (folder.path)) // what it kept as it closed
        forget (own);

    {
        Autosave autosave (folder.path);
        autosave.keep ({ R"({ "coldiron": "job 1", "guitar": "no-such-guitar" })", "Broken", {}, {} });
        REQUIRE (autosave.waitUntilIdle (10.0));
    }
    UnsavedWork work (session, folder.path);
    const auto left = work.left();
    REQUIRE (left.size() == 1);
    CHECK_FALSE (work.takeUp (left.front()));
    CHECK_FALSE (session.diagnostics().empty());
    CHECK (work.left().size() == 1);
}
}
