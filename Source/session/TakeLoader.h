#pragma once

#include "metering/Spectrum.h"
#include "session/Bench.h"
#include "takes/TakeFile.h"

#include <condition_variable>
#include <deque>
#include <functional>
#include <mutex>
#include <set>
#include <thread>

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
    /** @param finished  called on the thread for every take read */
    explicit TakeLoader (std::function<void (LoadedTake)> finished);
    ~TakeLoader();

    void want (std::filesystem::path);                          ///< one that waits already is not read twice
    void forgetAllBut (const std::set<std::filesystem::path>&); ///< what waits and is wanted no more
    bool isLoading() const;

    static LoadedTake load (const std::filesystem::path&);

private:
    std::function<void (LoadedTake)> done;
    mutable std::mutex mutex;
    std::condition_variable wake;
    std::deque<std::filesystem::path> wanted;
    bool quit = false, busy = false;
    std::thread thread;

    void run();
};
}
