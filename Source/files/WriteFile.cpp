#include "files/WriteFile.h"

#include "files/Temporaries.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <system_error>
#include <utility>

namespace coldiron
{
namespace fs = std::filesystem;

namespace
{
constexpr int mostLinks = 40; // as the system counts them

/** Whether it stands for one of our open descriptors (/dev/stdout, /dev/fd/3): the system makes those links up. */
bool isDescriptor (const fs::path& path)
{
    std::error_code fault;
    const auto folder = fs::canonical (path.has_parent_path() ? path.parent_path() : ".", fault);
    return ! fault && folder == "/proc/" + std::to_string (::getpid()) + "/fd";
}

int descriptorNumber (const fs::path& path)
{
    const auto name = path.filename().string();
    return ! name.empty() && name.size() < 9 && name.find_first_not_of ("0123456789") == std::string::npos ? std::stoi (name)
                                                                                                           : -1;
}

/** One that a pipe's reader may open a moment later. */
int openPipe (const fs::path& path)
{
    for (int tries = 0; tries < 100; ++tries)
    {
        const int file = ::open (path.c_str(), O_WRONLY | O_CLOEXEC | O_NOCTTY | O_NONBLOCK);
        if (file >= 0)
        {
            ::fcntl (file, F_SETFL, ::fcntl (file, F_GETFL) & ~O_NONBLOCK);
            return file;
        }
        if (errno != ENXIO)
            return -1;
        ::usleep (10000);
    }
    errno = ENXIO;
    return -1;
}

/** Some file systems cannot be synchronized; then there is nothing to wait for. */
bool toDisk (int descriptor) { return ::fsync (descriptor) == 0 || errno == EINVAL || errno == ENOTSUP || errno == EROFS; }

std::string whyNot (int code)
{
    switch (code)
    {
    case ENOENT: return "there is no such folder to write it into";
    case EACCES:
    case EPERM: return "may not be written there; choose another place, or ask for the right to write";
    case EISDIR: return "is a folder; name a file in it";
    case ENOSPC:
    case EDQUOT: return "could not be written whole: the disk is full; make room and try again";
    case ENXIO: return "is a pipe that nobody reads; start its reader first";
    default: return "could not be written: " + std::generic_category().message (code);
    }
}
}

fs::path behindLinks (const fs::path& path)
{
    fs::path at = fs::absolute (path);
    for (int links = 0; links < mostLinks; ++links)
    {
        std::error_code fault;
        const auto folder = fs::canonical (at.parent_path(), fault);
        if (fault)
            throw std::system_error (fault);
        at = folder / at.filename();
        if (isDescriptor (at) || ! fs::is_symlink (fs::symlink_status (at, fault)))
            return at;
        const auto next = fs::read_symlink (at);
        at = next.is_absolute() ? next : folder / next;
    }
    throw std::system_error (ELOOP, std::generic_category());
}

bool wouldReplace (const fs::path& target)
{
    try
    {
        const auto place = behindLinks (target);
        return ! isDescriptor (place) && fs::is_regular_file (place);
    }
    catch (const std::system_error&) // nothing is there, and writing will say why
    {
        return false;
    }
}

WholeFile::WholeFile (const fs::path& target) : asked (target)
{
    try
    {
        place = behindLinks (target);
        struct stat status
        {
        };
        const bool isThere = ::stat (place.c_str(), &status) == 0;
        if (! isThere && errno != ENOENT)
            fail ("", errno);
        if (isThere && S_ISDIR (status.st_mode))
            fail ("", EISDIR);
        if ((isThere && ! S_ISREG (status.st_mode)) || isDescriptor (place))
            openStraight();
        else
            openBeside (isThere, status.st_mode & 07777, status.st_uid, status.st_gid);
    }
    catch (const std::system_error& fault)
    {
        fail ("", fault.code().value());
    }
}

void WholeFile::openStraight()
{
    struct stat status
    {
    };
    const bool isPipe = ::stat (place.c_str(), &status) == 0 && S_ISFIFO (status.st_mode);
    if (isDescriptor (place)) // the same one, with its place in the file
        file = ::fcntl (descriptorNumber (place), F_DUPFD_CLOEXEC, 3);
    else
        file = isPipe ? openPipe (place) : ::open (place.c_str(), O_WRONLY | O_CLOEXEC | O_NOCTTY);
    if (file < 0)
        fail ("", errno);
}

void WholeFile::openBeside (bool isThere, unsigned oldMode, unsigned oldOwner, unsigned oldGroup)
{
    if (isThere && ::faccessat (AT_FDCWD, place.c_str(), W_OK, AT_EACCESS) != 0)
        fail (errno == EACCES ? "is there already and write-protected; it was left as it is" : "", errno);
    auto made = makeTemporary (place.parent_path(), isThere ? 0600 : 0666);
    file = made.descriptor;
    beside = std::move (made.path);
    if (! isThere)
        return;
    if (oldOwner != ::geteuid() || oldGroup != ::getegid())
        if (::fchown (file, oldOwner, oldGroup) != 0) // then it is ours, as a file copied would be
            oldMode &= 0777;
    if (::fchmod (file, oldMode) != 0)
        fail ("", errno);
}

WholeFile::~WholeFile() { discard(); }

void WholeFile::discard()
{
    if (! beside.empty())
        removeTemporary (beside);
    beside.clear();
    if (file >= 0)
        ::close (file);
    file = -1;
}

void WholeFile::fail (const std::string& why, int code)
{
    const auto text = (asked.empty() ? "\"\"" : asked.string()) + ": " + (why.empty() ? whyNot (code) : why);
    discard();
    throw WriteError (text);
}

bool WholeFile::canSeek() const { return ::lseek (file, 0, SEEK_CUR) >= 0; }

void WholeFile::write (const void* bytes, std::size_t count)
{
    const auto* from = static_cast<const char*> (bytes);
    while (count > 0)
    {
        const auto done = ::write (file, from, count);
        if (done < 0 && errno == EINTR)
            continue;
        if (done <= 0)
            fail ("", done < 0 ? errno : ENOSPC);
        from += done;
        count -= static_cast<std::size_t> (done);
    }
}

void WholeFile::finish()
{
    if (file < 0)
        fail ("is finished already, or failed before", 0);
    if (! toDisk (file))
        fail ("", errno);
    if (! beside.empty())
    {
        if (::rename (beside.c_str(), place.c_str()) != 0)
            fail ("", errno);
        releaseTemporary (beside);
        beside.clear();
        const int folder = ::open (place.parent_path().c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
        if (folder >= 0) // the new name reaches the disk too; the file is whole either way
        {
            ::fsync (folder);
            ::close (folder);
        }
    }
    const int closed = std::exchange (file, -1);
    if (::close (closed) != 0 && errno != EINTR)
        fail ("", errno);
}

void writeFile (const fs::path& target, const std::string& content)
{
    WholeFile file (target);
    file.write (content.data(), content.size());
    file.finish();
}
}
