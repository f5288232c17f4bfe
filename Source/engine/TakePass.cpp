#include "engine/TakePass.h"

#include <algorithm>
#include <memory>

namespace coldiron
{
BlockSource blocksOf (const Channels& take)
{
    return [&take, from = size_t { 0 }] (Channels& block) mutable
    {
        const size_t frames = take.empty() ? 0 : take.front().size();
        const size_t count = std::min (blockFrames, frames - from);
        block.resize (take.size());
        for (size_t c = 0; c < take.size(); ++c)
            block[c].assign (take[c].begin() + static_cast<std::ptrdiff_t> (from),
                             take[c].begin() + static_cast<std::ptrdiff_t> (from + count));
        from += count;
        return count > 0;
    };
}

void runPass (const BlockSource& source, const std::vector<BlockListener>& listeners, WorkerPool& pool, double frames,
              const PassProgress& progress, const Cancellation& isUnwanted)
{
    Channels now, next;
    double done = 0.0;
    for (bool more = source (now); more;)
    {
        pool.run (listeners.size() + 1,
                  [&] (size_t i)
                  {
                      isUnwanted.check(); // before each piece: a block of many is more than some milliseconds
                      if (i == 0)
                          more = source (next);
                      else
                          listeners[i - 1](now);
                  });
        done += static_cast<double> (now.front().size());
        std::swap (now, next);
        if (progress)
            progress (frames > 0.0 ? std::min (1.0, done / frames) : 0.0);
    }
}
}
