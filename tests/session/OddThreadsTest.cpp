// Hosts keep and restore states on threads of their own, while a person edits and takes are read: nobody waits for ever, and
// what comes out is one of the states or the edit, whole.
#include "Folder.h"
#include "Sessions.h"

#include <catch2/catch.hpp>

#include <chrono>
#include <future>
#include <thread>

namespace oddThreadsTest
{
using namespace coldiron;
using sessions::shippedPresets;
using sessions::twoOptions;

TEST_CASE ("states are kept and restored on other threads while the job is edited and judged and takes are read")
{
    const ScratchFolder folder ("odd-threads");
    for (const char* name : { "verse.wav", "chorus.wav" })
    {
        TakeWriter writer (folder.path / name, 48000.0, 1, true);
        writer.write ({ sessions::noise (48000) });
        writer.finish();
    }
    Session session (shippedPresets());
    REQUIRE (session.jobEditor.setText (twoOptions));
    REQUIRE (session.takes.add (folder.path / "verse.wav"));
    REQUIRE (session.takes.add (folder.path / "chorus.wav"));
    session.audio.prepare (48000.0);
    const std::string kept = session.state();
    const auto takes = session.jobEditor.job()->takes.size();

    const auto until = std::chrono::steady_clock::now() + std::chrono::milliseconds (1500);
    const auto goesOn = [until] { return std::chrono::steady_clock::now() < until; };
    auto host = std::async (std::launch::async,
                            [&]
                            {
                                int whole = 0;
                                for (; goesOn(); ++whole)
                                    if (session.state().empty() || ! session.restore (kept))
                                        return -1;
                                return whole;
                            });
    auto audio = std::async (std::launch::async,
                             [&]
                             {
                                 std::vector<float> block (256);
                                 while (goesOn())
                                 {
                                     float* channel = block.data();
                                     session.automation.hostMoved (ParameterKind::knob, 0, 5.0);
                                     session.audio.process (&channel, 1, 256, false);
                                     std::this_thread::sleep_for (std::chrono::milliseconds (2));
                                 }
                             });
    int edits = 0;
    for (; goesOn(); ++edits)
    {
        session.options.rename (OptionId::A, "Name " + std::to_string (edits));
        session.monitor.hear (edits % 2 == 0 ? OptionId::A : OptionId::C);
        session.transport.setSource (edits % 3 == 0 ? Source::host : Source::take);
        session.takes.select (edits % 2);
        session.blindTest.startRanking ({ OptionId::A, OptionId::C }, 1);
        session.blindTest.view();
        session.blindTest.stop();
        session.controls.beginGesture (OptionId::A, "bridge-tone");
        session.controls.setKnob (OptionId::A, "bridge-tone", edits % 10);
        session.controls.endGesture (OptionId::A, "bridge-tone");
        session.jobEditor.undo();
        session.monitor.setOnlyString (edits % 7 - 1);
    }
    CHECK (host.get() > 3);
    audio.get();
    CHECK (edits > 3);
    REQUIRE (session.restore (kept));
    CHECK (session.waitUntilReported (30.0));
    CHECK (session.jobEditor.job()->takes.size() == takes);
    CHECK (session.state() == kept);
}
}
