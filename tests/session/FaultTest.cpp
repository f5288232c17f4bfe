// What fails in the background is a fault in words, in the window's list and in the log; it never looks like a muted guitar.
#include "Sessions.h"
#include "session/TakeExport.h"

#include <catch2/catch.hpp>

#include <iostream>
#include <sstream>

namespace faultTest
{
using namespace coldiron;
using namespace sessions;

namespace
{
/** What goes to the standard error output meanwhile. Nothing may write there while it begins or ends. */
class Log
{
public:
    ~Log() { std::cerr.rdbuf (before); }
    std::string text() const { return words.str(); }

private:
    std::ostringstream words;
    std::streambuf* before = std::cerr.rdbuf (words.rdbuf());
};

bool tells (const Diagnostics& list, const std::string& words)
{
    return std::any_of (list.begin(), list.end(),
                        [&] (const Diagnostic& one) { return one.message.find (words) != std::string::npos; });
}

int linesOf (const std::string& text) { return static_cast<int> (std::count (text.begin(), text.end(), '\n')); }

/** A snapshot of the two options with a take in memory of that many channels. */
Snapshot snapshotWith (size_t channels)
{
    Diagnostics diagnostics;
    Snapshot snapshot;
    snapshot.job = std::make_shared<const Job> (*readJobText (twoOptions, {}, shippedPresets(), diagnostics));
    snapshot.map = ControlMap (*snapshot.job);
    TakeMaterial material;
    auto audio = std::make_shared<TakeAudio>();
    audio->sampleRate = 48000.0;
    audio->channels.assign (channels, noise (48000));
    material.audio = audio;
    snapshot.material.emplace (-1, material);
    snapshot.derivedFrom.fill (-1);
    return snapshot;
}
}

TEST_CASE ("a design that fails says why, in the list and in the log, and is well again when it can be made")
{
    Session session (shippedPresets());
    REQUIRE (session.jobEditor.setText (twoOptions));
    session.monitor.hear (OptionId::C);
    session.audio.prepare (48000.0);
    REQUIRE (session.waitUntilReported (60.0));
    REQUIRE (session.diagnostics().empty());
    const auto before = session.revisions();
    std::string log;
    {
        const Log capture;
        session.audio.prepare (1e6); // no filter can be designed for this rate
        REQUIRE (session.waitUntilReported (60.0));
        log = capture.text();
    }
    CHECK (session.revisions().job != before.job); // the window looks
    CHECK (tells (session.diagnostics(), "option C cannot be heard"));
    CHECK (tells (session.diagnostics(), "a sample rate lies between 8 and 768 kHz"));
    CHECK (log.find ("coldiron: option C cannot be heard: a sample rate") != std::string::npos);
    CHECK (linesOf (log) == 1);

    session.audio.prepare (48000.0);
    REQUIRE (session.waitUntilReported (60.0));
    CHECK (session.diagnostics().empty());
    const auto x = noise (48000);
    CHECK (residualDb (played (session, x), offline (session, OptionId::C, 48000.0, x)) < -90.0);
}

TEST_CASE ("a report that fails says why, the others are told, and what can be computed again is")
{
    SharedState shared;
    shared.sampleRate = 48000.0;
    std::string log;
    {
        Reporter reporter (shared);
        const Log capture;
        shared.put (snapshotWith (3)); // loudness is of one or two channels: this throws inside
        REQUIRE (reporter.waitUntilIdle (60.0));
        log = capture.text();
        for (const OptionId id : { OptionId::A, OptionId::C })
        {
            const auto report = shared.freshReport (id);
            REQUIRE (report != nullptr);
            CHECK (report->complete);
            CHECK (report->fault.find (nameOf (id) + " cannot be computed: loudness") == 0);
        }
        CHECK (tells (shared.faults(), "option A cannot be computed"));
        CHECK (tells (shared.faults(), "the take as recorded cannot be computed"));
        CHECK (linesOf (log) == 3);
        CHECK (log.find ("coldiron: option C cannot be computed: loudness") != std::string::npos);

        shared.put (snapshotWith (1));
        REQUIRE (reporter.waitUntilIdle (60.0));
        CHECK (shared.faults().empty());
        REQUIRE (shared.freshReport (OptionId::A) != nullptr);
        CHECK (shared.freshReport (OptionId::A)->heard.has_value());
        CHECK_FALSE (shared.freshReport (OptionId::A)->silent);
    }
}

TEST_CASE ("an export that fails is in the log, too")
{
    const Log capture;
    Session session (shippedPresets());
    REQUIRE (session.jobEditor.setText (twoOptions));
    TakeExport none (session.exports.renderPlan (false), std::filesystem::temp_directory_path());
    while (! none.isDone())
        std::this_thread::yield();
    CHECK (none.fault().find ("no take") != std::string::npos);
    CHECK (capture.text().find ("coldiron: the sounds cannot be written: the job has no take") == 0);
}
}
