// Files are written whole or not at all, into what the name stands for: POSIX.1-2017, open(), rename(), fsync().

#include "support/JobFixture.h"

#include "files/Temporaries.h"
#include "files/WriteFile.h"

#include <fcntl.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>

#include <csignal>
#include <sstream>
#include <thread>

namespace writeFileTest
{
using namespace coldiron;
using support::Folder;
namespace fs = std::filesystem;

namespace
{
std::string contents (const fs::path& path)
{
    std::ostringstream text;
    text << std::ifstream (path, std::ios::binary).rdbuf();
    return text.str();
}

size_t entries (const fs::path& folder) { return static_cast<size_t> (std::distance (fs::directory_iterator (folder), {})); }

/** What is said in refusing; empty: it was written. */
std::string refusal (const fs::path& target)
{
    try
    {
        writeFile (target, "new");
        return "";
    }
    catch (const WriteError& fault)
    {
        return fault.what();
    }
}

struct stat statusOf (const fs::path& path)
{
    struct stat status
    {
    };
    REQUIRE (lstat (path.c_str(), &status) == 0);
    return status;
}

/** A child that begins to write there and then ends as told, or waits to be ended. */
pid_t writerIn (const fs::path& folder, bool waits)
{
    int ready[2];
    REQUIRE (pipe (ready) == 0);
    const pid_t child = fork();
    if (child == 0)
    {
        WholeFile file (folder / "never.txt");
        file.write ("half", 4);
        (void)! write (ready[1], "y", 1);
        if (waits)
            pause();
        _exit (0); // no destructor runs, as after a crash
    }
    char answer = 0;
    REQUIRE (read (ready[0], &answer, 1) == 1);
    close (ready[0]);
    close (ready[1]);
    return child;
}

void end (pid_t child)
{
    ::kill (child, SIGKILL);
    waitpid (child, nullptr, 0);
}
}

TEST_CASE ("a new file is written, an old one replaced, and its mode kept")
{
    const Folder folder;
    const auto file = folder.path / "a.txt";
    const mode_t mask = umask (022);
    writeFile (file, "one");
    umask (mask);
    CHECK (contents (file) == "one");
    CHECK ((statusOf (file).st_mode & 07777) == 0644);
    REQUIRE (chmod (file.c_str(), 0640) == 0);
    writeFile (file, "two");
    CHECK (contents (file) == "two");
    CHECK ((statusOf (file).st_mode & 07777) == 0640);
    CHECK (entries (folder.path) == 1);
}

TEST_CASE ("a link stays a link, and the file it names is written, there or not yet there")
{
    const Folder folder;
    fs::create_directories (folder.path / "far");
    folder.write ("far/there.txt", "old");
    fs::create_symlink ("far/there.txt", folder.path / "link");
    fs::create_symlink ("link", folder.path / "second-link");
    fs::create_symlink ("far/new.txt", folder.path / "dangling");
    writeFile (folder.path / "second-link", "new");
    writeFile (folder.path / "dangling", "new");
    CHECK (contents (folder.path / "far/there.txt") == "new");
    CHECK (contents (folder.path / "far/new.txt") == "new");
    for (const char* name : { "link", "second-link", "dangling" })
        CHECK (fs::is_symlink (folder.path / name));
    CHECK (entries (folder.path) == 4);
    CHECK (entries (folder.path / "far") == 2);

    fs::create_symlink ("round", folder.path / "round");
    CHECK (refusal (folder.path / "round").find ("round: could not be written: ") != std::string::npos);
}

TEST_CASE ("what is no file is written straight into")
{
    const Folder folder;
    writeFile ("/dev/null", "gone");
    CHECK (S_ISCHR (statusOf ("/dev/null").st_mode));

    const auto pipe = folder.path / "pipe";
    REQUIRE (mkfifo (pipe.c_str(), 0600) == 0);
    std::string heard;
    std::thread reader ([&] { heard = contents (pipe); });
    writeFile (pipe, "through the pipe");
    reader.join();
    CHECK (heard == "through the pipe");
    CHECK (S_ISFIFO (statusOf (pipe).st_mode));
    CHECK (refusal (pipe).find ("a pipe that nobody reads") != std::string::npos);

    const int open = ::open ((folder.path / "open.txt").c_str(), O_RDWR | O_CREAT, 0600);
    REQUIRE (::write (open, "before ", 7) == 7);
    writeFile ("/dev/fd/" + std::to_string (open), "after");
    ::close (open);
    CHECK (contents (folder.path / "open.txt") == "before after");
    CHECK (entries (folder.path) == 2);
}

TEST_CASE ("a full disk is said, and nothing of it is left")
{
    CHECK (refusal ("/dev/full").find ("/dev/full: could not be written whole: the disk is full") == 0);

    const Folder folder;
    folder.write ("kept.txt", "old");
    rlimit before {};
    REQUIRE (getrlimit (RLIMIT_FSIZE, &before) == 0);
    const auto ignored = std::signal (SIGXFSZ, SIG_IGN);
    const rlimit small { 1000, before.rlim_max };
    setrlimit (RLIMIT_FSIZE, &small);
    std::string why;
    try
    {
        writeFile (folder.path / "kept.txt", std::string (100000, 'x'));
    }
    catch (const WriteError& fault)
    {
        why = fault.what();
    }
    setrlimit (RLIMIT_FSIZE, &before);
    std::signal (SIGXFSZ, ignored);
    CHECK (why.find ("kept.txt: could not be written") != std::string::npos);
    CHECK (contents (folder.path / "kept.txt") == "old");
    CHECK (entries (folder.path) == 1);
}

TEST_CASE ("where nothing can be written, one line says why")
{
    const Folder folder;
    CHECK (refusal (folder.path).find ("is a folder") != std::string::npos);
    CHECK (refusal (folder.path / "no" / "a.txt").find ("no such folder") != std::string::npos);
    CHECK (refusal ("").find ("\"\": ") == 0);
    CHECK_FALSE (refusal (folder.path / std::string (300, 'n')).empty());
    CHECK (entries (folder.path) == 0);

    const auto file = folder.write ("protected.txt", "old");
    REQUIRE (chmod (file.c_str(), 0444) == 0);
    REQUIRE (chmod (folder.path.c_str(), 0777) == 0);
    const pid_t child = fork();
    if (child == 0) // without the rights of root, to whom nothing is write-protected
    {
        if (geteuid() == 0 && setuid (65534) != 0)
            _exit (2);
        _exit (refusal (file).find ("write-protected") != std::string::npos ? 0 : 1);
    }
    int status = -1;
    waitpid (child, &status, 0);
    CHECK (status == 0);
    CHECK (contents (file) == "old");
    CHECK (entries (folder.path) == 1);
}

TEST_CASE ("what was not finished leaves the old file, and no other")
{
    const Folder folder;
    folder.write ("a.txt", "old");
    {
        WholeFile file (folder.path / "a.txt");
        file.write ("half", 4);
        CHECK (entries (folder.path) == 2);
    }
    CHECK (contents (folder.path / "a.txt") == "old");
    CHECK (entries (folder.path) == 1);
}

TEST_CASE ("litter of dead writers is swept, that of living ones and of others is not")
{
    const Folder folder;
    folder.write (".coldiron-notes.part", "a person's own");
    fs::create_symlink (folder.write ("target.txt", "kept"), folder.path / ".coldiron-0123456789abcdef.part");
    const pid_t living = writerIn (folder.path, true);
    end (writerIn (folder.path, false)); // its litter lies there
    CHECK (entries (folder.path) == 5);
    sweepTemporaries (folder.path);
    CHECK (entries (folder.path) == 4);
    CHECK (contents (folder.path / "target.txt") == "kept");
    end (living);
    CHECK (entries (folder.path) == 4);
    writeFile (folder.path / "a.txt", "the first to be written here by this process: it sweeps");
    CHECK (entries (folder.path) == 4);
    CHECK (fs::exists (folder.path / ".coldiron-notes.part"));
    CHECK (contents (folder.path / "a.txt").size() > 10);
}

TEST_CASE ("what a process is writing can be removed at once, as a signal asks")
{
    const Folder folder;
    folder.write ("old.txt", "old");
    const pid_t child = fork();
    if (child == 0)
    {
        WholeFile one (folder.path / "old.txt"), two (folder.path / "new.txt");
        WholeFile done (folder.path / "done.txt");
        done.finish();
        removeAllTemporaries();
        _exit (0);
    }
    waitpid (child, nullptr, 0);
    CHECK (contents (folder.path / "old.txt") == "old");
    CHECK (fs::exists (folder.path / "done.txt"));
    CHECK (entries (folder.path) == 2);
}

TEST_CASE ("a temporary's name is told from all others")
{
    CHECK (isTemporaryName (".coldiron-0123456789abcdef.part"));
    for (const char* name : { "take.wav", ".part", ".coldiron-.part", ".coldiron-0123456789ABCDEF.part",
                              ".coldiron-0123456789abcdef.parts", "x.coldiron-0123456789abcdef.part" })
        CHECK_FALSE (isTemporaryName (name));
}
}
