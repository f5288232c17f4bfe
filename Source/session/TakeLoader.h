#pragma once

#include "concurrency/Worker.h"
#include "metering/NoiseFloor.h"
#include "metering/Spectrum.h"
#include "session/TakePicture.h"
#include "takes/TakeFile.h"

#include <deque>
#include <functional>
#include <mutex>
#include <optional>
#include <set>

namespace coldiron
{
/** A take with all that is told of it. */
struct LoadedTake
{
    std::filesystem::path file;
    std::shared_ptr<const TakeAudio> audio; ///< null where it could not be read
    std::shared_ptr<const TakePicture> picture;
    Spectrum spectrum;
    NoiseFloor noise;
};

/** The thread that reads takes, one after another in the order they were asked for. */
class TakeLoader
{
public:
    /** @param finished  called on the thread for every take read
        @param failed    told the words of what no take's own fault is */
    TakeLoader (std::function<void (LoadedTake)> finished, Worker::Failed failed);

    void want (std::filesystem::path);                          ///< one that waits or is being read is not read twice
    void forgetAllBut (const std::set<std::filesystem::path>&); ///< what is wanted no more, the one being read too
    bool isLoading() const;
    bool waitUntilIdle (double seconds); ///< @returns whether nothing is left to read

    /** Reads and measures, in one pass. What cannot be read says why. @throws Cancelled */
    static LoadedTake load (const std::filesystem::path&, const Cancellation& = {});

private:
    std::function<void (LoadedTake)> done;
    mutable std::mutex mutex;
    std::deque<std::filesystem::path> wanted;
    std::optional<std::filesystem::path> reading; ///< wanted still
    bool busy = false;
    Worker worker; ///< last

    bool turn (const Cancellation& stop);
};
}
