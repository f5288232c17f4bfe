// Long work asks at least every 10 ms whether its result is still wanted, and is given up within 20 ms when it is not. Measured
// in processor time, so that a busy machine changes nothing.
#include "Sessions.h"
#include "response/Band.h"
#include "session/TakeExport.h"
#include "support/WorkGaps.h"

#include <catch2/catch.hpp>

#include <unistd.h>

#include <chrono>
#include <ctime>
#include <iostream>
#include <thread>

namespace lettingGoTest
{
using namespace coldiron;
using namespace sessions;
using support::WorkGaps;
namespace fs = std::filesystem;

namespace
{
constexpr double rate = 48000.0;
constexpr double mostGap = 0.020, mostLettingGo = 0.020; // [s] the bar; on an idle machine it is 10 ms at most

double processorSeconds()
{
    timespec now {};
    clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &now);
    return static_cast<double> (now.tv_sec) + 1e-9 * static_cast<double> (now.tv_nsec);
}

struct Folder
{
    fs::path path = fs::temp_directory_path() / ("coldiron-letting-go-" + std::to_string (::getpid()));
    Folder()
    {
        fs::remove_all (path);
        fs::create_directories (path);
    }
    ~Folder() { fs::remove_all (path); }

    fs::path take (const char* name, double seconds, double takeRate = rate) const
    {
        const auto second = noise (static_cast<size_t> (takeRate));
        TakeWriter writer (path / name, takeRate, 1, true);
        for (double at = 0.0; at < seconds; at += 1.0)
            writer.write ({ second });
        writer.finish();
        return path / name;
    }
};

std::string jobWith (const fs::path& take)
{
    std::string job = twoOptions;
    return job.insert (job.rfind ('}'),
                       R"(, "takes": [ { "file": ")" + take.string() + R"(", "setting": { "selector": "bridge" } } ],
        "after_the_jack": { "sound": "amplifier", "drive_db": 9 })");
}

/** Of a job with that take, as the reporter's snapshot has it. */
Snapshot snapshotOf (const fs::path& take)
{
    Diagnostics diagnostics;
    Snapshot snapshot;
    snapshot.job = std::make_shared<const Job> (*readJobText (jobWith (take), {}, shippedPresets(), diagnostics));
    snapshot.map = ControlMap (*snapshot.job);
    snapshot.take = 0;
    snapshot.derivedFrom.fill (0);
    snapshot.after = *snapshot.job->outputChain;
    const LoadedTake loaded = TakeLoader::load (take);
    snapshot.material.emplace (0, TakeMaterial { loaded.audio, loaded.spectrum, loaded.noise });
    return snapshot;
}
}

TEST_CASE ("reading and measuring a ten-minute take asks often, and lets go when it is told to")
{
    const Folder folder;
    const auto take = folder.take ("long.wav", 600.0);
    WorkGaps gaps;
    const LoadedTake loaded = TakeLoader::load (take, gaps.cancellation());
    CHECK (loaded.audio->frames() == 600 * 48000);
    std::cout << "reading ten minutes asks " << gaps.count() << " times, " << 1e3 * gaps.longest() << " ms apart at most\n";
    CHECK (gaps.count() > 1000);
    CHECK (gaps.longest() < mostGap);

    double most = 0.0;
    for (const int milliseconds : { 5, 60, 170, 400 })
    {
        double began = 0.0;
        {
            TakeLoader loader ([] (LoadedTake) {}, [] (const std::string& words) { FAIL_CHECK (words); });
            loader.want (take);
            std::this_thread::sleep_for (std::chrono::milliseconds (milliseconds));
            began = processorSeconds();
        }
        most = std::max (most, processorSeconds() - began);
    }
    {
        TakeLoader loader ([] (LoadedTake) { FAIL_CHECK ("nobody wanted it"); },
                           [] (const std::string& words) { FAIL_CHECK (words); });
        loader.want (take);
        std::this_thread::sleep_for (std::chrono::milliseconds (100));
        const double began = processorSeconds();
        loader.forgetAllBut ({});
        CHECK (loader.waitUntilIdle (10.0));
        most = std::max (most, processorSeconds() - began);
    }
    std::cout << "the reading ends after " << 1e3 * most << " ms of work at most\n";
    CHECK (most < mostLettingGo);
}

TEST_CASE ("the parts of a report ask often")
{
    const Folder folder;
    const Snapshot snapshot = snapshotOf (folder.take ("take.wav", 20.0));
    SharedState shared;
    const CircuitConfig recorded = snapshot.recordedConfig (OptionId::C), option = configOf (snapshot, shared.live, OptionId::C);
    const auto& material = snapshot.materialFor (OptionId::C);
    WorkGaps band, figures, levels;
    computeBand (recorded, option, Reporter::curveHz(), band.cancellation());
    computeFigures (recorded, option, material.spectrum, figures.cancellation());
    const GuitarResponse before = recorded.response(), after = option.response();
    RenderSpec spec;
    spec.design = EngineDesign::of (nullptr, before, {}, -20.0, rate, false);
    spec.after = snapshot.after;
    heardLevel (material.audio->channels, spec, -20.0, levels.cancellation());
    for (const auto* gaps : { &band, &figures, &levels })
    {
        std::cout << "asks " << gaps->count() << " times, " << 1e3 * gaps->longest() << " ms apart at most\n";
        CHECK (gaps->count() > 4); // it asks at all; how often is what counts
        CHECK (gaps->longest() < mostGap);
    }

    WorkGaps other;
    const auto x = noise (20 * 44100);
    CHECK (resampled (x, 44100.0, rate, other.cancellation()).size() == 20u * 48000u);
    CHECK (other.count() > 10);
    CHECK (other.longest() < mostGap);
}

TEST_CASE ("a reporter in the middle of a long take lets go when it ends and when it is asked for another option")
{
    const Folder folder;
    const auto snapshot = snapshotOf (folder.take ("long.wav", 179.0)); // the longest whose levels are rendered
    double most = 0.0, mostAgain = 0.0;
    for (const int milliseconds : { 30, 150, 300, 700, 1500 })
    {
        SharedState shared;
        shared.sampleRate = rate;
        shared.put (OutputChainInUse { snapshot.after, nullptr, {} });
        shared.put (snapshot);
        double began = 0.0;
        {
            Reporter reporter (shared);
            std::this_thread::sleep_for (std::chrono::milliseconds (milliseconds));
            REQUIRE (reporter.isWorking (OptionId::A));
            began = processorSeconds();
        }
        most = std::max (most, processorSeconds() - began);
    }
    {
        SharedState shared;
        shared.sampleRate = rate;
        shared.heard = OptionId::C;
        shared.live.load (*snapshot.job, snapshot.map);
        shared.put (OutputChainInUse { snapshot.after, nullptr, {} });
        shared.put (snapshot);
        Reporter reporter (shared);
        const int place = snapshot.map.find ("bridge-tone")->place;
        for (int turn = 1; turn <= 5; ++turn)
        {
            while (shared.freshReport (OptionId::C) == nullptr) // the curve is told, then the rest is computed
                std::this_thread::sleep_for (std::chrono::milliseconds (1));
            std::this_thread::sleep_for (std::chrono::milliseconds (20 + 50 * turn));
            REQUIRE (reporter.isWorking (OptionId::C));
            const double began = processorSeconds();
            shared.live.setKnob (OptionId::C, place, 9.0f - static_cast<float> (turn));
            reporter.wake();
            while (shared.freshReport (OptionId::C) == nullptr)
                std::this_thread::sleep_for (std::chrono::milliseconds (1));
            mostAgain = std::max (mostAgain, processorSeconds() - began);
        }
    }
    std::cout << "a reporter ends after " << 1e3 * most << " ms of work at most; a new curve is told after " << 1e3 * mostAgain
              << " ms\n";
    CHECK (most < mostLettingGo);
    CHECK (mostAgain < 2 * mostLettingGo); // letting go, and the curve
}

TEST_CASE ("closing a session does not wait for its work")
{
    const Folder folder;
    const auto take = folder.take ("long.wav", 600.0, 44100.0); // read, then resampled, then measured behind the chain
    double most = 0.0, mostWall = 0.0;
    for (const int milliseconds : { 20, 300, 900, 2500, 5000 })
    {
        auto session = std::make_unique<Session> (shippedPresets());
        session->audio.prepare (rate);
        REQUIRE (session->jobEditor.setText (jobWith (take)));
        session->monitor.hear (OptionId::C);
        session->monitor.setLevelMatched (true);
        session->transport.setSource (Source::take);
        std::this_thread::sleep_for (std::chrono::milliseconds (milliseconds));
        const double began = processorSeconds();
        const auto then = std::chrono::steady_clock::now();
        session.reset();
        most = std::max (most, processorSeconds() - began);
        mostWall = std::max (mostWall, std::chrono::duration<double> (std::chrono::steady_clock::now() - then).count());
    }
    std::cout << "closing a session takes " << 1e3 * most << " ms of work at most, " << 1e3 * mostWall << " ms on the clock\n";
    CHECK (most < mostLettingGo);
}

TEST_CASE ("an export lets go, and leaves nothing")
{
    const Folder folder;
    Session session (shippedPresets());
    REQUIRE (session.jobEditor.setText (jobWith (folder.take ("take.wav", 179.0))));
    REQUIRE (session.waitUntilReported (60.0));
    double most = 0.0;
    for (const int milliseconds : { 20, 300, 1000 })
    {
        double began = 0.0;
        {
            TakeExport sounds (session.exports.renderPlan (true), folder.path / "out");
            std::this_thread::sleep_for (std::chrono::milliseconds (milliseconds));
            REQUIRE_FALSE (sounds.isDone());
            began = processorSeconds();
        }
        most = std::max (most, processorSeconds() - began);
        CHECK (fs::is_empty (folder.path / "out"));
    }
    std::cout << "an export ends after " << 1e3 * most << " ms of work at most\n";
    CHECK (most < 2 * mostLettingGo); // of two processors
}
}
