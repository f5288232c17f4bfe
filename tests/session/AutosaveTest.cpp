// Nothing lost: unsaved work outlives a process that is killed, two processes keep apart, a clean end leaves nothing.
#include "Sessions.h"

#include "session/Autosave.h"

#include <catch2/catch.hpp>

#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <fstream>

namespace autosaveTest
{
using namespace coldiron;
namespace fs = std::filesystem;

namespace
{
struct Folder
{
    fs::path path = fs::temp_directory_path() / ("coldiron-unsaved-" + std::to_string (::getpid()));
    Folder() { fs::remove_all (path); }
    ~Folder() { fs::remove_all (path); }
};

/** A process of its own that edits a job, keeps it, tells so through a pipe and waits to be killed. */
pid_t workElsewhere (const fs::path& folder, const std::string& name, int& ready)
{
    int ends[2];
    REQUIRE (::pipe (ends) == 0);
    const pid_t child = ::fork();
    if (child == 0)
    {
        Session session (sessions::shippedPresets());
        const bool edited = session.jobEditor.setText (sessions::twoOptions) && session.options.rename (OptionId::A, name)
                            && session.jobEditor.isChanged();
        Autosave autosave (folder);
        autosave.keep ({ session.jobEditor.text(), session.jobEditor.job()->title, {}, {} });
        const char answer = edited && autosave.waitUntilIdle (10.0) ? 'y' : 'n';
        if (::write (ends[1], &answer, 1) != 1)
            ::_exit (1);
        for (;;)
            ::pause();
    }
    ::close (ends[1]);
    ready = ends[0];
    return child;
}

void kill (pid_t child)
{
    REQUIRE (::kill (child, SIGKILL) == 0);
    int status = 0;
    REQUIRE (::waitpid (child, &status, 0) == child);
    CHECK (WIFSIGNALED (status));
}

char answerOf (int ready)
{
    char answer = 0;
    REQUIRE (::read (ready, &answer, 1) == 1);
    ::close (ready);
    return answer;
}
}

TEST_CASE ("Unsaved work of a killed process is offered and opens as it was; that of a living one is not")
{
    Folder folder;
    int first = -1, second = -1;
    const pid_t one = workElsewhere (folder.path, "Work of the first", first);
    CHECK (answerOf (first) == 'y');
    const pid_t two = workElsewhere (folder.path, "Work of the second", second);
    CHECK (answerOf (second) == 'y');
    CHECK (leftWork (folder.path).empty()); // both live: two instances keep apart

    kill (one);
    auto left = leftWork (folder.path);
    REQUIRE (left.size() == 1);
    CHECK (left[0].work.title == "Two options");
    Session session (sessions::shippedPresets());
    REQUIRE (session.jobEditor.setText (left[0].work.jobText));
    CHECK (session.jobEditor.job()->find ("A")->name == "Work of the first");
    forget (left[0]);
    CHECK (leftWork (folder.path).empty());

    kill (two);
    left = leftWork (folder.path);
    REQUIRE (left.size() == 1);
    CHECK (left[0].work.jobText.find ("Work of the second") != std::string::npos);
}

TEST_CASE ("The newest work is kept, whole, and a clean end leaves nothing behind")
{
    Folder folder;
    {
        Autosave autosave (folder.path), other (folder.path);
        CHECK (autosave.file() != other.file());
        for (int i = 0; i < 200; ++i)
            autosave.keep ({ "{ \"number\": " + std::to_string (i) + " }", "Many", "/somewhere/job.json", "/somewhere" });
        other.keep ({ "{ \"other\": true }", "Other", {}, {} });
        REQUIRE (autosave.waitUntilIdle (10.0));
        REQUIRE (other.waitUntilIdle (10.0));
        CHECK (fs::exists (autosave.file()));
        CHECK (leftWork (folder.path).empty()); // the owner lives
        for (const auto& entry : fs::directory_iterator (folder.path))
            CHECK (entry.path().extension() != ".part");
        other.drop();
        REQUIRE (other.waitUntilIdle (10.0));
        CHECK_FALSE (fs::exists (other.file()));
        CHECK (fs::exists (autosave.file()));
    }
    auto left = leftWork (folder.path); // closed with unsaved work: kept
    REQUIRE (left.size() == 1);
    CHECK (left[0].work.jobText == "{ \"number\": 199 }");
    CHECK (left[0].work.file == "/somewhere/job.json");
    forget (left[0]);
    CHECK (fs::is_empty (folder.path));
}

TEST_CASE ("What is no kept work is left alone")
{
    Folder folder;
    fs::create_directories (folder.path);
    std::ofstream (folder.path / "1-1.unsaved") << "{ \"coldiron\": \"unsaved 1\", \"job\": ";
    std::ofstream (folder.path / "2-1.unsaved") << "[]";
    std::ofstream (folder.path / "notes.txt") << "not ours";
    CHECK (leftWork (folder.path).empty());
    CHECK_FALSE (fs::exists (folder.path / "1-1.unsaved.lock")); // to look leaves nothing
    CHECK (fs::exists (folder.path / "1-1.unsaved"));
    CHECK (fs::exists (folder.path / "notes.txt"));
    CHECK (leftWork (folder.path / "nowhere").empty());
}

TEST_CASE ("What dead processes left behind is swept away, and nothing of the living")
{
    Folder folder;
    int first = -1, second = -1;
    const pid_t dead = workElsewhere (folder.path, "Work of a dead one", first),
                living = workElsewhere (folder.path, "Work of a living one", second);
    CHECK (answerOf (first) == 'y');
    CHECK (answerOf (second) == 'y');
    kill (dead);
    const auto left = leftWork (folder.path);
    REQUIRE (left.size() == 1);
    const fs::path kept = left[0].file;

    std::ofstream (folder.path / "999999-1.unsaved.lock"); // as a crash leaves it: a lock of nothing
    const auto filesThere = [&] { return std::distance (fs::directory_iterator (folder.path), fs::directory_iterator()); };
    CHECK (filesThere() == 5);
    {
        Autosave next (folder.path);
        CHECK_FALSE (fs::exists (folder.path / "999999-1.unsaved.lock"));
        CHECK (fs::exists (kept)); // somebody's work
        CHECK (filesThere() == 5); // with the next one's own lock
        Autosave other (folder.path);
        CHECK (filesThere() == 6); // a living lock without work stays
    }
    CHECK (filesThere() == 4);
    REQUIRE (::kill (living, SIGKILL) == 0);
    int status = 0;
    REQUIRE (::waitpid (living, &status, 0) == living);
}
}
