#pragma once

#include "concurrency/Worker.h"

#include <filesystem>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

namespace coldiron
{
/** Work that was never saved, as it is kept. */
struct Unsaved
{
    std::string jobText, title;
    std::filesystem::path file;   ///< of the job; empty when it never had one
    std::filesystem::path folder; ///< that its takes are relative to
};

/** Keeps the unsaved work of one window in a file of its own, written beside and renamed, on a thread of its own.

    The file is called after the process and held by a lock as long as the owner lives, so two instances never touch each
    other's; the system lets go of the lock of a process that dies, and its work is then there for others to offer. */
class Autosave
{
public:
    explicit Autosave (std::filesystem::path folder);
    ~Autosave(); ///< what was kept and not dropped stays, to be offered next time
    Autosave (const Autosave&) = delete;
    Autosave& operator= (const Autosave&) = delete;

    void keep (Unsaved);                 ///< returns at once; of several the newest is written
    void drop();                         ///< saved, or given up: nothing is left
    bool waitUntilIdle (double seconds); ///< until all that was asked for is on disk
    std::string fault() const;           ///< why the last of it could not be kept; empty: it could

    const std::filesystem::path& file() const { return kept; }

private:
    std::filesystem::path kept;
    int lock = -1;
    mutable std::mutex mutex;
    std::optional<Unsaved> wanted;
    bool wantsDrop = false;
    std::string why;
    Worker worker; ///< last

    bool turn();
    void tellFault (const std::string& words);
};

/** Work left behind by a process that is gone. */
struct Recovery
{
    std::filesystem::path file; ///< where it is kept
    Unsaved work;
    std::filesystem::file_time_type when;
};

/** Newest first. Work of a process that still runs is not among it; a file that cannot be read is left alone. */
std::vector<Recovery> leftWork (const std::filesystem::path& folder);

/** Removes one that was taken over or given up, unless a living owner holds it. */
void forget (const Recovery&);
}
