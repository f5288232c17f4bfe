#pragma once

#include "audition/Spectrum.h"
#include "job/TakeFile.h"
#include "plugin/Bench.h"

#include <condition_variable>
#include <functional>
#include <mutex>
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
};

/** The thread that reads takes; the newest one asked for wins. */
class TakeLoader
{
public:
    /** @param finished  called on the thread for every take read */
    explicit TakeLoader (std::function<void (LoadedTake)> finished);
    ~TakeLoader();

    void want (std::filesystem::path);
    bool isLoading() const;

    static LoadedTake load (const std::filesystem::path&);

private:
    std::function<void (LoadedTake)> done;
    mutable std::mutex mutex;
    std::condition_variable wake;
    std::optional<std::filesystem::path> wanted;
    bool quit = false, busy = false;
    std::thread thread;

    void run();
};
}
