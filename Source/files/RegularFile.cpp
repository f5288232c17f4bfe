#include "files/RegularFile.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <chrono>

namespace coldiron
{
namespace
{
std::string fileKind (mode_t mode)
{
    return S_ISDIR (mode) ? "a folder" : S_ISFIFO (mode) ? "a pipe" : S_ISSOCK (mode) ? "a socket" : "a device";
}

/** What the system says, in words that tell what to do. */
std::string inWords (int error, const std::string& thing)
{
    switch (error)
    {
    case ENOENT:
    case ENOTDIR: return "there is no such " + thing + "; check the name";
    case EACCES:
    case EPERM: return "you may not read this " + thing + ", or search the folder it is in; ask for the right to";
    case ENAMETOOLONG: return "the name is longer than the system allows; give a shorter one";
    case ELOOP: return "links that go round in a circle; give the " + thing + " itself";
    default: return "the " + thing + " cannot be read; is its disk there and well?";
    }
}
}

RegularFile::RegularFile (const std::filesystem::path& path, const std::string& what)
{
    const auto thing = "file";
    const auto check = [&] (const struct stat& found)
    {
        if (! S_ISREG (found.st_mode))
            reason = "this is " + fileKind (found.st_mode) + ", not " + what;
        bytes = static_cast<std::uint64_t> (std::max<off_t> (0, found.st_size));
    };
    struct stat found
    {
    };
    if (stat (path.c_str(), &found) != 0)
    {
        missing = errno == ENOENT || errno == ENOTDIR;
        reason = inWords (errno, thing);
        return;
    }
    check (found);
    if (! reason.empty())
        return;
    // Something else may have taken the name meanwhile, so what was opened is checked again; opening does not block.
    descriptor = open (path.c_str(), O_RDONLY | O_NONBLOCK | O_NOCTTY | O_CLOEXEC);
    if (descriptor < 0 || fstat (descriptor, &found) != 0)
        reason = inWords (errno, thing);
    else
        check (found);
}

bool FileStamp::isSettled() const
{
    constexpr std::int64_t tickNs = 100'000'000; // coarser than the clock of any file system met on a desktop but FAT
    const auto now = std::chrono::system_clock::now().time_since_epoch();
    return std::chrono::duration_cast<std::chrono::nanoseconds> (now).count() - changedNs > tickNs;
}

std::optional<FileStamp> stampOf (const std::filesystem::path& path)
{
    struct stat found
    {
    };
    if (stat (path.c_str(), &found) != 0 || ! S_ISREG (found.st_mode))
        return std::nullopt;
    return FileStamp { found.st_dev, found.st_ino, static_cast<std::uint64_t> (std::max<off_t> (0, found.st_size)),
                       static_cast<std::int64_t> (found.st_mtim.tv_sec) * 1'000'000'000 + found.st_mtim.tv_nsec };
}

RegularFile::~RegularFile()
{
    if (descriptor >= 0)
        close (descriptor);
}

size_t RegularFile::read (std::uint64_t at, void* to, size_t count) const
{
    size_t total = 0;
    while (total < count)
    {
        const auto got = pread (descriptor, static_cast<char*> (to) + total, count - total, static_cast<off_t> (at + total));
        if (got < 0 && errno == EINTR)
            continue;
        if (got <= 0)
            break;
        total += static_cast<size_t> (got);
    }
    return total;
}

std::optional<std::string> RegularFile::text (std::uint64_t most) const
{
    if (! reason.empty() || bytes > most)
        return std::nullopt;
    std::string all (static_cast<size_t> (bytes), '\0');
    if (read (0, all.data(), all.size()) != all.size())
        return std::nullopt;
    return all;
}

std::filesystem::path inFolder (const std::filesystem::path& folder, const std::string& name)
{
    std::error_code error;
    const auto whole =
        std::filesystem::absolute (folder.empty() ? "." : folder, error); // fails where the program's own folder is gone
    return ((error ? folder : whole) / name).lexically_normal();
}

bool isThere (const std::filesystem::path& path)
{
    struct stat found
    {
    };
    return stat (path.c_str(), &found) == 0;
}

bool isFolder (const std::filesystem::path& path)
{
    struct stat found
    {
    };
    return stat (path.c_str(), &found) == 0 && S_ISDIR (found.st_mode);
}

std::string whyNoFolder (const std::filesystem::path& path)
{
    struct stat found
    {
    };
    if (stat (path.c_str(), &found) != 0)
        return inWords (errno, "folder");
    if (! S_ISDIR (found.st_mode))
        return std::string ("this is ") + (S_ISREG (found.st_mode) ? "a file" : fileKind (found.st_mode)) + ", not a folder";
    return access (path.c_str(), R_OK | X_OK) == 0 ? std::string() : inWords (errno, "folder");
}
}
