#pragma once

/** Counts what an audio thread must not do: memory taken or given back, mutexes locked. The functions of the C library
    themselves are stood in for in this program, so that vectors, strings, Eigen and JUCE are all caught. */
namespace trap
{
struct Counts
{
    int allocations = 0, frees = 0, locks = 0;
    int all() const { return allocations + frees + locks; }
};

void arm();      ///< on this thread, from zero
Counts disarm(); ///< on this thread
}
