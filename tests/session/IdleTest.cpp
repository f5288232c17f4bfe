// An instance that nothing moves wakes no thread of its own, however many blocks it plays.
#include "Sessions.h"
#include "support/Wakeups.h"

#include <catch2/catch.hpp>

#include <unistd.h>

#include <chrono>
#include <iostream>
#include <thread>

namespace idleTest
{
using namespace coldiron;
using namespace sessions;
namespace fs = std::filesystem;

namespace
{
constexpr double rate = 48000.0;

struct Folder
{
    fs::path path = fs::temp_directory_path() / ("coldiron-idle-" + std::to_string (::getpid()));
    Folder() { fs::create_directories (path); }
    ~Folder() { fs::remove_all (path); }
};

/** Two seconds of blocks as a sound device asks for them. */
void play (Session& session, double seconds)
{
    std::vector<float> left (256), right (256);
    float* channels[] = { left.data(), right.data() };
    for (double at = 0.0; at < seconds; at += 256.0 / rate)
    {
        std::fill (left.begin(), left.end(), 0.0f);
        std::fill (right.begin(), right.end(), 0.0f);
        session.audio.process (channels, 2, 256, false);
        std::this_thread::sleep_for (std::chrono::duration<double> (256.0 / rate));
    }
}

/** The most that any of a session's threads woke in that time. */
long wakeups (const std::function<void()>& meanwhile, int& threads)
{
    std::this_thread::sleep_for (std::chrono::milliseconds (100)); // the last of them may be on its way to sleep
    const auto before = support::threadWaits();
    meanwhile();
    threads = 0;
    return support::mostWaits (before, support::threadWaits(), "coldiron-", &threads);
}
}

TEST_CASE ("a loaded session that nothing moves wakes none of its threads")
{
    const Folder folder;
    TakeWriter writer (folder.path / "take.wav", 44100.0, 1, true); // another rate than the device's
    writer.write ({ noise (5 * 44100) });
    writer.finish();
    Session session (shippedPresets());
    std::string job = twoOptions;
    job.insert (job.rfind ('}'),
                R"(, "takes": [ { "file": ")" + (folder.path / "take.wav").string()
                    + R"(", "setting": { "selector": "bridge" } } ], "after_the_jack": { "sound": "amplifier" })");
    REQUIRE (session.jobEditor.setText (job));
    session.monitor.hear (OptionId::C);
    session.monitor.setLevelMatched (true);
    session.output.setHeadroomKept (true);
    session.audio.prepare (rate);
    REQUIRE (session.waitUntilReported (60.0));
    play (session, 0.2);

    int threads = 0;
    const long silent = wakeups ([&] { play (session, 2.0); }, threads);
    CHECK (silent == 0);
    CHECK (threads >= 4);

    session.transport.play();
    REQUIRE (session.waitUntilReported (60.0));
    play (session, 0.2);
    const long playing = wakeups ([&] { play (session, 2.0); }, threads);
    CHECK (playing == 0);

    const int place = session.controls.map().find ("bridge-tone")->place;
    const long moved = wakeups (
        [&]
        {
            session.automation.hostMoved (ParameterKind::knob, place, 3.0);
            REQUIRE (session.waitUntilReported (60.0));
        },
        threads);
    CHECK (moved > 0); // it can be seen
    const long same = wakeups (
        [&]
        {
            for (int i = 0; i < 100; ++i)
                session.automation.hostMoved (ParameterKind::knob, place, 3.0); // a host that repeats itself
            play (session, 0.2);
        },
        threads);
    CHECK (same == 0);
    std::cout << threads << " threads; the busiest of them woke " << silent << " times in 2 s of silence, " << playing
              << " in 2 s of a take\n";
}
}
