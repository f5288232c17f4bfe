// Times of the window and of a knob's way to the ear, on a real (or virtual) display. Not a test: it asserts nothing.
//   xvfb-run -a build/bench_window
#include "../benchmark/Stopwatch.h"
#include "Folder.h"

#include "editor/MainWindow.h"
#include "plugin/Processor.h"

#include <atomic>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <thread>

using namespace coldiron;
using Clock = std::chrono::steady_clock;

namespace
{
constexpr const char* job = R"({ "coldiron": "job 1", "title": "Walnut two-humbucker", "guitar": "two-humbuckers-four-knobs",
    "options": {
      "A": { "name": "Bridge in parallel", "rewires": [ { "use": "series-parallel", "pickup": "bridge", "pot": "bridge-volume" } ], "setting": { "bridge-volume-pull": "up", "selector": "bridge" } },
      "B": { "name": "Bridge split", "rewires": [ { "use": "split-shorted", "pickup": "bridge", "pot": "bridge-volume" } ], "setting": { "bridge-volume-pull": "up", "selector": "bridge" } },
      "C": { "name": "Tone at 4", "setting": { "bridge-tone": 4, "selector": "bridge" } },
      "D": { "name": "Volume at 6", "setting": { "bridge-volume": 6, "selector": "bridge" } } } })";

void runFor (int milliseconds) { juce::MessageManager::getInstance()->runDispatchLoopUntil (milliseconds); }

double since (Clock::time_point start) { return std::chrono::duration<double, std::milli> (Clock::now() - start).count(); }

void tell (const char* what, std::vector<double> milliseconds)
{
    std::sort (milliseconds.begin(), milliseconds.end());
    const auto at = [&] (double share)
    { return milliseconds[static_cast<size_t> (share * static_cast<double> (milliseconds.size() - 1))]; };
    std::printf ("  %-62s median %6.2f ms, nine in ten %6.2f, worst %6.2f (%zu times)\n", what, at (0.5), at (0.9), at (1.0),
                 milliseconds.size());
}

/** From the call that makes the editor to its first picture on the display. */
void opening (Processor& processor)
{
    std::vector<double> times;
    for (int i = 0; i < 12; ++i)
    {
        const auto start = Clock::now();
        std::unique_ptr<juce::AudioProcessorEditor> editor (processor.createEditor());
        editor->setSize (1200, 800);
        editor->addToDesktop (0);
        editor->setVisible (true);
        editor->getPeer()->performAnyPendingRepaintsNow();
        times.push_back (since (start));
        runFor (30);
    }
    tell ("editor opened and painted, 1200 x 800 (bar 300 ms)", times);
}

/** What the message thread does for one frame while a knob is dragged: read the session, mark, paint what is dirty. */
void dragging (Session& session)
{
    MainWindow window (session, false);
    window.setSize (1200, 800);
    window.addToDesktop (0);
    window.setVisible (true);
    session.monitor.hear (OptionId::C);
    runFor (500);
    session.controls.beginGesture (OptionId::C, "bridge-tone");
    session.reports.wantSweep (OptionId::C, "bridge-tone");
    std::vector<double> times;
    for (int i = 0; i < 120; ++i)
    {
        session.controls.setKnob (OptionId::C, "bridge-tone", 10.0 - 0.08 * i);
        session.waitUntilIdle (1.0);
        std::this_thread::sleep_for (std::chrono::milliseconds (12)); // the background's share of a frame
        const auto start = Clock::now();
        window.refresh();
        window.getPeer()->performAnyPendingRepaintsNow();
        times.push_back (since (start));
    }
    session.controls.endGesture (OptionId::C, "bridge-tone");
    session.reports.wantSweep (OptionId::C, {});
    tell ("one frame while a knob is dragged, dirty parts (bar 8 ms)", times);

    std::vector<double> whole;
    for (int i = 0; i < 30; ++i)
    {
        juce::Image image (juce::Image::ARGB, 1200, 800, true);
        juce::Graphics g (image);
        const auto start = Clock::now();
        window.paintEntireComponent (g, true);
        whole.push_back (since (start));
    }
    tell ("the whole window painted anew", whole);
}

/** From a knob's move to the first sample that it changed, while blocks are played at their time. */
void knobToSound (Session& session)
{
    constexpr int frames = 64;
    constexpr double rate = 48000.0;
    session.monitor.hear (OptionId::C);
    session.waitUntilIdle (5.0);
    std::atomic<bool> running { true };
    std::atomic<double> gain { 0.0 }; // of the last block, at 5.25 kHz: seven whole cycles
    std::thread sound (
        [&]
        {
            double phase = 0.0;
            std::vector<float> block (frames);
            auto next = Clock::now();
            while (running)
            {
                double in = 0.0, out = 0.0;
                for (auto& x : block)
                {
                    x = 0.1f * static_cast<float> (std::sin (phase += 2.0 * juce::MathConstants<double>::pi * 5250.0 / rate));
                    in += static_cast<double> (x) * x;
                }
                float* channels[] = { block.data() };
                session.audio.process (channels, 1, frames, false);
                for (float x : block)
                    out += static_cast<double> (x) * x;
                gain = 10.0 * std::log10 ((out + 1e-20) / in);
                next += std::chrono::microseconds (static_cast<int> (1e6 * frames / rate));
                std::this_thread::sleep_until (next);
            }
        });
    std::vector<double> begins, arrives;
    for (int i = 0; i < 60; ++i)
    {
        std::this_thread::sleep_for (std::chrono::milliseconds (150));
        const double before = gain, wanted = i % 2 ? 10.0 : 5.0;
        const auto start = Clock::now();
        session.controls.setKnob (OptionId::C, "bridge-tone", wanted);
        while (std::abs (gain - before) < 0.1 && since (start) < 500.0)
            std::this_thread::sleep_for (std::chrono::microseconds (100));
        begins.push_back (since (start));
        double last = gain;
        auto still = Clock::now();
        while (since (still) < 15.0 && since (start) < 500.0) // settled: no more than 0.05 dB in 15 ms
        {
            if (std::abs (gain - last) > 0.05)
            {
                last = gain;
                still = Clock::now();
            }
            std::this_thread::sleep_for (std::chrono::microseconds (100));
        }
        arrives.push_back (since (start) - 15.0);
    }
    running = false;
    sound.join();
    tell ("a knob's move heard first, 0.1 dB, blocks of 64 (bar 20 ms)", begins);
    tell ("a knob's move heard whole, its fade included", arrives);
}

/** What a person waits for the machine between a take of 30 s landing and three options with all their figures. */
void takeToTags (Session& session)
{
    const windows::Folder folder;
    const auto file = folder.take ("verse.wav", 30);
    std::vector<double> lands, lists, figures;
    for (int i = 0; i < 5 && session.jobEditor.newJob ("three-single-coils"); ++i)
    {
        MainWindow window (session, false);
        window.setSize (1200, 800);
        auto start = Clock::now();
        session.takes.add (file);
        while (session.takes.picture() == nullptr && since (start) < 20000.0)
            runFor (1);
        lands.push_back (since (start));
        start = Clock::now();
        window.sheets().showStarter ("brighter");
        lists.push_back (since (start));
        start = Clock::now();
        if (auto* field = dynamic_cast<juce::TextEditor*> (window.sheets().top()->getChildComponent (1));
            field != nullptr && field->onReturnKey)
            field->onReturnKey();
        session.waitUntilReported (60.0);
        figures.push_back (since (start));
        if (session.options.ids().size() != 3)
            std::puts ("  the starter set was not taken");
    }
    tell ("a take of 30 s read and drawn", lands);
    tell ("the list of starter sets and rewires opened", lists);
    tell ("three options with every figure and band", figures);
}
}

int main()
{
    // Told that it is an application, JUCE forgives an X server without a window manager.
    juce::JUCEApplicationBase::createInstance = []() -> juce::JUCEApplicationBase* { return nullptr; };
    const juce::ScopedJuceInitialiser_GUI juceIsUp;
    const auto home =
        std::filesystem::temp_directory_path() / "coldiron-bench-home"; // what the window remembers is not the person's
    ::setenv ("HOME", home.c_str(), 1);
    ::setenv ("XDG_CONFIG_HOME", (home / ".config").c_str(), 1);
    ::setenv ("COLDIRON_PRESETS", (std::filesystem::path (COLDIRON_SOURCE) / "presets").c_str(), 0);
    Processor processor;
    Session& session = processor.session;
    processor.prepareToPlay (48000.0, 64);
    if (! session.jobEditor.setText (job))
    {
        std::puts ("the job of this benchmark does not read");
        return 1;
    }
    session.waitUntilReported (30.0);
    std::puts ("The window and the ear:");
    knobToSound (session);
    opening (processor);
    dragging (session);
    takeToTags (session);
}
