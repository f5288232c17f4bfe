#pragma once

#include <atomic>
#include <cstdint>

namespace coldiron
{
/** Says that something changed to threads that sleep until it does. Raised often it wakes a sleeper once. */
class ChangeSignal
{
public:
    /** [any thread, the audio thread too] After the change it tells of. Neither locks nor allocates; a system call only
        where somebody sleeps. */
    void raise() noexcept
    {
        count.fetch_add (1);
        count.notify_all();
    }

    uint32_t now() const { return count.load(); }                ///< how often it was raised, in 32 bits
    void waitBeyond (uint32_t seen) const { count.wait (seen); } ///< sleeps until it is not `seen` any more

private:
    std::atomic<uint32_t> count { 0 };
};
}
