#pragma once

#include <array>
#include <atomic>

namespace coldiron
{
/** A wait-free hand-over of the newest value from one writer to one reader (triple buffer).
    acquire-release both ways: release alone is a data race. Old values are overwritten, never freed, on the
    writer's side; T's copy assignment must not allocate on the reader's side (the reader only looks). */
template <typename T>
class LatestValue
{
public:
    /** [writer] */
    void write (const T& value)
    {
        slots[static_cast<size_t> (writing)] = value;
        const int before = middle.exchange (writing | fresh, std::memory_order_acq_rel);
        writing = before & index;
    }

    /** [reader] The newest value if one came since the last call, else nullptr. Valid until the next call. */
    const T* read()
    {
        if ((middle.load (std::memory_order_relaxed) & fresh) == 0)
            return nullptr;
        const int before = middle.exchange (reading, std::memory_order_acq_rel);
        reading = before & index;
        return &slots[static_cast<size_t> (reading)];
    }

private:
    static constexpr int fresh = 4, index = 3;
    std::array<T, 3> slots {};
    int writing = 0, reading = 1;
    std::atomic<int> middle { 2 };
};
}
