#include "session/Autosave.h"

#include "files/Log.h"
#include "files/WriteFile.h"
#include "session/JobTree.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <atomic>
#include <fstream>
#include <sstream>

namespace coldiron
{
namespace fs = std::filesystem;

namespace
{
constexpr const char* autosaveKind = "unsaved 1";
constexpr const char* ending = ".unsaved";

fs::path lockOf (const fs::path& kept) { return kept.string() + ".lock"; }

/** @returns the open file that holds the lock; -1 where another holds it or there is no such place */
int takeLock (const fs::path& path, bool makes)
{
    for (;;)
    {
        const int file = ::open (path.c_str(), O_RDWR | O_CLOEXEC | O_NOFOLLOW | (makes ? O_CREAT : 0), 0600);
        if (file < 0)
            return -1;
        struct stat held
        {
        }, named {};
        if (::flock (file, LOCK_EX | LOCK_NB) == 0 && ::fstat (file, &held) == 0)
        {
            // Another may have swept it away between the two calls: then the lock is on a file that nobody finds.
            if (::stat (path.c_str(), &named) == 0 && named.st_ino == held.st_ino && named.st_dev == held.st_dev)
                return file;
            ::close (file);
            continue;
        }
        ::close (file);
        return -1;
    }
}

/** Locks of dead processes that left no work behind. */
void sweepLocks (const fs::path& folder)
{
    std::error_code ignored;
    std::vector<fs::path> locks;
    for (const auto& entry : fs::directory_iterator (folder, ignored))
        if (entry.path().string().ends_with (std::string (ending) + ".lock"))
            locks.push_back (entry.path());
    for (const fs::path& path : locks)
    {
        const int lock = takeLock (path, false);
        if (lock < 0)
            continue; // its owner lives
        fs::path kept = path;
        kept.replace_extension();
        if (! fs::exists (kept, ignored))
            fs::remove (path, ignored);
        ::close (lock);
    }
}

void write (const fs::path& path, const Unsaved& work)
{
    JobTree tree;
    tree["coldiron"] = autosaveKind;
    tree["title"] = work.title;
    tree["file"] = work.file.string();
    tree["folder"] = work.folder.string();
    tree["job"] = work.jobText;
    writeFile (path, tree.dump (-1, ' ', false, JobTree::error_handler_t::replace));
}

std::optional<Unsaved> read (const fs::path& path)
{
    std::ifstream stream (path, std::ios::binary);
    std::ostringstream text;
    if (! stream || ! (text << stream.rdbuf()))
        return std::nullopt;
    const JobTree tree = parseJobTree (text.str());
    const auto textAt = [&] (const char* key)
    { return tree.contains (key) && tree[key].is_string() ? tree[key].get<std::string>() : std::string(); };
    if (! tree.is_object() || textAt ("coldiron") != autosaveKind || textAt ("job").empty())
        return std::nullopt;
    return Unsaved { textAt ("job"), textAt ("title"), textAt ("file"), textAt ("folder") };
}
}

Autosave::Autosave (fs::path folder)
    : worker (
        "coldiron-save", [this] (const Cancellation&) { return turn(); },
        [this] (const std::string& words) { tellFault (words); })
{
    static std::atomic<int> count { 0 };
    std::error_code ignored;
    fs::create_directories (folder, ignored);
    sweepLocks (folder);
    for (int tries = 0; tries < 100 && lock < 0; ++tries) // a dead process may have had this number
    {
        kept = folder / (std::to_string (::getpid()) + "-" + std::to_string (++count) + ending);
        if (! fs::exists (kept, ignored))
            lock = takeLock (lockOf (kept), true);
    }
}

Autosave::~Autosave()
{
    while (! worker.waitUntilIdle (60.0)) // everything asked for before the end is done before the end
    {
    }
    std::error_code ignored;
    if (lock >= 0 && ! fs::exists (kept, ignored))
        fs::remove (lockOf (kept), ignored);
    if (lock >= 0)
        ::close (lock);
}

void Autosave::keep (Unsaved work)
{
    {
        const std::scoped_lock guard (mutex);
        wanted = std::move (work);
        wantsDrop = false;
    }
    worker.wake();
}

void Autosave::drop()
{
    {
        const std::scoped_lock guard (mutex);
        wanted.reset();
        wantsDrop = true;
    }
    worker.wake();
}

bool Autosave::waitUntilIdle (double seconds) { return worker.waitUntilIdle (seconds); }

std::string Autosave::fault() const
{
    const std::scoped_lock guard (mutex);
    return why;
}

void Autosave::tellFault (const std::string& words)
{
    logFault ("unsaved work cannot be kept: " + words);
    const std::scoped_lock guard (mutex);
    why = words;
}

bool Autosave::turn()
{
    std::optional<Unsaved> work;
    {
        const std::scoped_lock guard (mutex);
        if (! wanted && ! wantsDrop)
            return false;
        work = std::exchange (wanted, std::nullopt);
        wantsDrop = false;
    }
    std::error_code ignored;
    if (lock >= 0 && work)
        write (kept, *work);
    else if (lock >= 0)
        fs::remove (kept, ignored);
    const std::scoped_lock guard (mutex);
    why.clear();
    return true;
}

std::vector<Recovery> leftWork (const fs::path& folder)
{
    std::vector<Recovery> left;
    std::error_code ignored;
    for (const auto& entry : fs::directory_iterator (folder, ignored))
    {
        if (entry.path().extension() != ending)
            continue;
        const bool hadLock = fs::exists (lockOf (entry.path()), ignored);
        const int lock = takeLock (lockOf (entry.path()), true);
        if (lock < 0)
            continue; // its owner lives
        if (auto work = read (entry.path()))
            left.push_back ({ entry.path(), std::move (*work), fs::last_write_time (entry.path(), ignored) });
        if (! hadLock)
            fs::remove (lockOf (entry.path()), ignored); // only looked
        ::close (lock);
    }
    std::sort (left.begin(), left.end(), [] (const Recovery& a, const Recovery& b) { return a.when > b.when; });
    return left;
}

void forget (const Recovery& left)
{
    const int lock = takeLock (lockOf (left.file), true);
    if (lock < 0)
        return;
    std::error_code ignored;
    fs::remove (left.file, ignored);
    fs::remove (lockOf (left.file), ignored);
    ::close (lock);
}
}
