#include "files/Temporaries.h"

#include <fcntl.h>
#include <pthread.h>
#include <signal.h>
#include <sys/file.h>
#include <sys/random.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <atomic>
#include <cerrno>
#include <cstdint>
#include <cstdio>
#include <cstring>
#include <mutex>
#include <set>
#include <system_error>

namespace coldiron
{
namespace fs = std::filesystem;

namespace
{
constexpr const char* partPrefix = ".coldiron-";
constexpr const char* partEnding = ".part";
constexpr size_t digits = 16;

/** What a signal has to remove: no allocation, no lock, so that a handler may read it. */
struct Slot
{
    enum State { empty, changing, filled };
    std::atomic<int> state { empty };
    std::array<char, 4096> path {};
};
std::array<Slot, 64> slots; // more at a time are written too, and left to the next sweep where a signal comes

void enter (const fs::path& path)
{
    const auto& text = path.native();
    for (auto& slot : slots)
    {
        int expected = Slot::empty;
        if (text.size() >= slot.path.size() || ! slot.state.compare_exchange_strong (expected, Slot::changing))
            continue;
        std::memcpy (slot.path.data(), text.c_str(), text.size() + 1);
        slot.state = Slot::filled;
        return;
    }
}

std::atomic<int> making { 0 };        ///< threads between a file and its entry
std::atomic<bool> isEnding { false }; ///< a signal ends the process: no file is made any more

/** Keeps a signal from coming between a file and its entry: it is blocked in this thread, and its handler in another waits. */
class SignalsHeld
{
public:
    SignalsHeld()
    {
        sigset_t all;
        sigfillset (&all);
        pthread_sigmask (SIG_SETMASK, &all, &before);
        ++making;
        if (isEnding)
        {
            --making;
            for (;;)
                ::pause();
        }
    }
    ~SignalsHeld()
    {
        --making;
        pthread_sigmask (SIG_SETMASK, &before, nullptr);
    }
    SignalsHeld (const SignalsHeld&) = delete;
    SignalsHeld& operator= (const SignalsHeld&) = delete;

private:
    sigset_t before {};
};

std::string freshName()
{
    std::uint64_t number = 0;
    if (getrandom (&number, sizeof number, 0) != sizeof number)
        throw std::system_error (errno, std::generic_category());
    std::array<char, digits + 1> text {};
    std::snprintf (text.data(), text.size(), "%016llx", static_cast<unsigned long long> (number));
    return partPrefix + std::string (text.data()) + partEnding;
}

/** Locks a file just made. Where a sweep was faster, the file is litter by now and another is to be made. A file system
    without locks has no sweeps either. */
bool holds (int descriptor)
{
    if (flock (descriptor, LOCK_EX | LOCK_NB) != 0 && errno == EWOULDBLOCK)
        return false;
    struct stat status
    {
    };
    return fstat (descriptor, &status) == 0 && status.st_nlink > 0;
}

void sweepOnce (const fs::path& folder)
{
    static std::mutex mutex;
    static std::set<fs::path> swept;
    const std::scoped_lock lock (mutex);
    if (swept.insert (folder).second)
        sweepTemporaries (folder);
}
}

Temporary makeTemporary (const fs::path& folder, mode_t mode)
{
    sweepOnce (folder);
    for (int tries = 0;; ++tries)
    {
        const fs::path path = folder / freshName();
        const SignalsHeld held;
        const int descriptor = ::open (path.c_str(), O_RDWR | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, mode);
        if (descriptor >= 0 && holds (descriptor))
        {
            enter (path);
            return { path, descriptor };
        }
        const int why = errno;
        if (descriptor >= 0)
            ::close (descriptor);
        else if (why != EEXIST || tries > 100)
            throw std::system_error (why, std::generic_category());
    }
}

void releaseTemporary (const fs::path& path)
{
    for (auto& slot : slots)
        if (slot.state == Slot::filled && path.native() == slot.path.data())
            slot.state = Slot::empty;
}

void removeTemporary (const fs::path& path)
{
    ::unlink (path.c_str());
    releaseTemporary (path);
}

bool isTemporaryName (const std::string& name)
{
    const std::string front = partPrefix, back = partEnding;
    if (name.size() != front.size() + digits + back.size() || name.rfind (front, 0) != 0
        || name.substr (front.size() + digits) != back)
        return false;
    const auto middle = name.substr (front.size(), digits);
    return middle.find_first_not_of ("0123456789abcdef") == std::string::npos;
}

void sweepTemporaries (const fs::path& folder)
{
    std::error_code fault;
    for (fs::directory_iterator entry (folder, fault), end; ! fault && entry != end; entry.increment (fault))
    {
        if (! isTemporaryName (entry->path().filename().string()))
            continue;
        const int descriptor = ::open (entry->path().c_str(), O_RDWR | O_NOFOLLOW | O_CLOEXEC | O_NONBLOCK);
        if (descriptor < 0)
            continue;
        struct stat status
        {
        };
        if (fstat (descriptor, &status) == 0 && S_ISREG (status.st_mode) && flock (descriptor, LOCK_EX | LOCK_NB) == 0)
            ::unlink (entry->path().c_str()); // while locked: a writer that has just made it sees that it is gone
        ::close (descriptor);
    }
}

void removeAllTemporaries() noexcept
{
    isEnding = true;
    for (int waits = 0; making > 0 && waits < 5000; ++waits) // a file is made within a moment, unless its disk hangs
    {
        const timespec moment { 0, 1000000 };
        ::nanosleep (&moment, nullptr);
    }
    for (auto& slot : slots)
        if (slot.state == Slot::filled)
            ::unlink (slot.path.data());
}
}
