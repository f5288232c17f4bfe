// The list of takes: renamed, removed, found again, kept relative to the job, never dropped.
#include "Sessions.h"

#include "session/TakeEdits.h"
#include "session/TakeExport.h"
#include "takes/TakeFile.h"

#include <catch2/catch.hpp>

#include <unistd.h>

#include <fstream>

namespace takeEditsTest
{
using namespace coldiron;
namespace fs = std::filesystem;

namespace
{
struct Folder
{
    fs::path path = fs::temp_directory_path() / ("coldiron-takes-" + std::to_string (::getpid()));
    Folder()
    {
        fs::remove_all (path);
        fs::create_directories (path / "job");
    }
    ~Folder() { fs::remove_all (path); }

    fs::path take (const std::string& name) const
    {
        TakeWriter writer (path / name, 48000.0, 1, false);
        writer.write ({ sessions::noise (48000) });
        writer.finish();
        return path / name;
    }
};

std::string jobWith (const std::string& takes, const std::string& options)
{
    return "{ \"coldiron\": \"job 1\", \"title\": \"Takes\", \"guitar\": \"two-humbuckers-four-knobs\", \"takes\": [" + takes
           + "], \"options\": {" + options + "} }";
}
}

TEST_CASE ("Takes are added, renamed and removed, each undone as one step")
{
    Folder folder;
    folder.take ("job/bridge.wav");
    folder.take ("job/neck.wav");
    const auto file = folder.path / "job" / "job.json";
    std::ofstream (file) << jobWith (
        R"({ "file": "bridge.wav" }, { "file": "neck.wav", "setting": { "selector": "neck" }, "strings": ["E2"] })",
        R"("A": { "take": 1 }, "B": { "take": 2 })");
    Session session (sessions::shippedPresets());
    REQUIRE (session.jobEditor.open (file));
    CHECK (takeLines (session.jobEditor)[1].name == "neck.wav");
    REQUIRE (renameTake (session.jobEditor, 1, "Neck, slow"));
    CHECK (takeLines (session.jobEditor)[1].name == "Neck, slow");
    const auto before = session.jobEditor.text();
    session.takes.select (1);
    REQUIRE (removeTake (session.jobEditor, session.takes, 0));
    CHECK (session.takes.playing() == 0); // the same take is loaded still
    CHECK (takeLines (session.jobEditor)[0].name == "Neck, slow");
    CHECK (session.jobEditor.job()->find ("B")->take == 0); // and option B is heard on it
    CHECK (session.jobEditor.job()->takes[0].strings == std::vector<std::string> { "E2" });
    REQUIRE (removeTake (session.jobEditor, session.takes, 0));
    CHECK (session.jobEditor.job()->takes.empty());
    CHECK (session.options.ids().size() == 2);
    REQUIRE (session.jobEditor.undo());
    REQUIRE (session.jobEditor.undo());
    CHECK (session.jobEditor.text() == before);
    CHECK_FALSE (removeTake (session.jobEditor, session.takes, 7));
    CHECK_FALSE (renameTake (session.jobEditor, -1, "x"));
}

TEST_CASE ("A take whose file is gone stays in the job, also through a host's state, and is found again")
{
    Folder folder;
    const auto taken = folder.take ("job/verse.wav");
    const auto file = folder.path / "job" / "job.json";
    std::ofstream (file) << jobWith (R"({ "file": "verse.wav", "setting": { "selector": "bridge" }, "strings": ["E2", "A2"] })",
                                     R"("A": { "name": "As it is" })");
    Session session (sessions::shippedPresets());
    REQUIRE (session.jobEditor.open (file));
    fs::create_directories (folder.path / "job" / "sound");
    fs::rename (taken, folder.path / "job" / "sound" / "moved.wav");

    Session again (sessions::shippedPresets());
    REQUIRE (again.restore (session.state()));
    REQUIRE (again.waitUntilReported (20.0));
    REQUIRE (again.jobEditor.job()->takes.size() == 1);
    CHECK (takeLines (again.jobEditor)[0].isMissing);
    REQUIRE (again.takes.picture() != nullptr);
    CHECK_FALSE (again.takes.picture()->fault.empty());
    CHECK (again.reports.report (OptionId::A) != nullptr); // the options still read

    REQUIRE (relinkTake (again.jobEditor, 0, folder.path / "job" / "sound" / "moved.wav"));
    REQUIRE (again.waitUntilReported (20.0));
    CHECK (again.takes.picture()->fault.empty());
    CHECK (again.takes.picture()->seconds == Approx (1.0));
    CHECK (again.jobEditor.job()->takes[0].setting.levers.at ("selector") == "bridge");
    CHECK (again.jobEditor.job()->takes[0].strings.size() == 2);
    CHECK (again.jobEditor.text().find ("\"sound/moved.wav\"") != std::string::npos); // relative to the job
    CHECK (again.jobEditor.undoName() == "Find the take's file");
}

TEST_CASE ("Saved in another folder, a job still finds its takes, and so does what undo brings back")
{
    Folder folder;
    folder.take ("job/verse.wav");
    fs::create_directories (folder.path / "other");
    const auto file = folder.path / "job" / "job.json";
    std::ofstream (file) << jobWith (R"({ "file": "verse.wav" })", R"("A": { "name": "As it is" })");
    Session session (sessions::shippedPresets());
    REQUIRE (session.jobEditor.open (file));
    REQUIRE (session.options.rename (OptionId::A, "Another name"));
    REQUIRE (session.jobEditor.save (folder.path / "other" / "copy.json"));
    CHECK_FALSE (session.jobEditor.isChanged());
    Session again (sessions::shippedPresets());
    REQUIRE (again.jobEditor.open (folder.path / "other" / "copy.json"));
    CHECK_FALSE (takeLines (again.jobEditor)[0].isMissing);
    REQUIRE (session.jobEditor.undo());
    CHECK_FALSE (takeLines (session.jobEditor)[0].isMissing);
    CHECK (session.jobEditor.job()->takes[0].file == folder.path / "job" / "verse.wav");
}

TEST_CASE ("All options are written as sound on a thread of their own, the same as by the command's functions")
{
    Folder folder;
    folder.take ("job/verse.wav");
    const auto file = folder.path / "job" / "job.json";
    std::ofstream (file) << jobWith (
        R"({ "file": "verse.wav", "setting": { "selector": "bridge" } })",
        R"("A": { "setting": { "bridge-tone": 2 } }, "B": { "rewires": [ { "use": "parallel", "pickup": "bridge" } ] })");
    Session session (sessions::shippedPresets());
    REQUIRE (session.jobEditor.open (file));
    TakeExport render (session.exports.renderPlan (false), folder.path / "out");
    for (int i = 0; i < 1000 && ! render.isDone(); ++i)
        ::usleep (10000);
    REQUIRE (render.isDone());
    CHECK (render.fault() == "");
    CHECK (render.progress() == 1.0);
    CHECK (render.written() == std::vector<std::string> { "now.wav", "A.wav", "B.wav" });
    const auto take = readTake (folder.path / "job" / "verse.wav");
    const auto a = readTake (folder.path / "out" / "A.wav");
    CHECK (a.frames() == take.frames());
    CHECK (sessions::residualDb (a.channels[0], sessions::offline (session, OptionId::A, 48000.0, take.channels[0]))
           < -90.0); // 24 bits
    CHECK (sessions::residualDb (readTake (folder.path / "out" / "now.wav").channels[0], take.channels[0]) < -120.0);

    fs::remove (folder.path / "job" / "verse.wav");
    TakeExport gone (session.exports.renderPlan (false), folder.path / "out");
    for (int i = 0; i < 1000 && ! gone.isDone(); ++i)
        ::usleep (10000);
    CHECK_FALSE (gone.fault().empty());
}

TEST_CASE ("Neither a rendering nor the job takes the place of a take")
{
    Folder folder;
    const auto take = folder.take ("job/now.wav");
    const auto file = folder.path / "job" / "job.json";
    std::ofstream (file) << jobWith (R"({ "file": "now.wav" })", R"("A": { "name": "As it is" })");
    const auto written = fs::last_write_time (take);
    Session session (sessions::shippedPresets());
    REQUIRE (session.jobEditor.open (file));
    {
        TakeExport render (session.exports.renderPlan (false), folder.path / "job");
        for (int i = 0; i < 1000 && ! render.isDone(); ++i)
            ::usleep (10000);
        REQUIRE (render.isDone());
        CHECK (render.fault().find ("now.wav: is a take of the job") == 0);
        CHECK (render.written().empty());
    }
    fs::create_symlink ("now.wav", folder.path / "job" / "link.json");
    for (const char* name : { "now.wav", "link.json" })
        CHECK_FALSE (session.jobEditor.save (folder.path / "job" / name));
    CHECK (fs::last_write_time (take) == written);
    CHECK_FALSE (fs::exists (folder.path / "job" / "A.wav"));
    CHECK (session.jobEditor.save (file));
}
}
