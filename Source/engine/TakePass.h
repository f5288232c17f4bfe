#pragma once

#include "concurrency/Cancellation.h"
#include "concurrency/WorkerPool.h"

namespace coldiron
{
/** Samples of a take or a part of it, channels apart and of equal length. */
using Channels = std::vector<std::vector<float>>;

/** Gives the next samples of a take, from its start and in order, at most blockFrames of each channel; false: no more. */
using BlockSource = std::function<bool (Channels&)>;

/** Hears a take block by block. */
using BlockListener = std::function<void (const Channels&)>;

/** Told the share done, 0..1. May be empty. */
using PassProgress = std::function<void (double)>;

inline constexpr size_t blockFrames = 16384;

/** A take in memory; it must stay there. */
BlockSource blocksOf (const Channels&);

/** One pass over a take for any number of listeners, in constant memory. Each hears every block in order; they work on one
    block at a time on all cores while the next is being read. @param frames  of the whole take, for the progress
    @throws Cancelled where it is asked to stop, after what some listeners hear of a block others may not */
void runPass (const BlockSource&, const std::vector<BlockListener>&, WorkerPool&, double frames = 0.0, const PassProgress& = {},
              const Cancellation& = {});
}
