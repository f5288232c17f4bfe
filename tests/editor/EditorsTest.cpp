// Editors of whole plugins come and go while sound runs. Under the address sanitizer (preset address-window) this is also
// the proof that nothing is leaked.
#include "Windows.h"

#include "plugin/Processor.h"

#include <atomic>
#include <cmath>
#include <thread>

namespace editorsTest
{
using namespace coldiron;
using namespace windows;

namespace
{
/** A plugin that a host plays a steady tone through, on a thread of its own, until it ends. */
class SoundingPlugin
{
public:
    static constexpr int frames = 480; // ten whole periods of 1 kHz at 48 kHz: at rest every block is like the last

    explicit SoundingPlugin (OptionId id)
    {
        processor.prepareToPlay (48000.0, frames);
        auto& session = processor.session;
        const Fixture fixture;
        REQUIRE (session.jobEditor.setText (fixture.session.jobEditor.text()));
        session.monitor.hear (id);
        REQUIRE (session.waitUntilReported (20.0));
        runFor (300); // the host's parameters follow, which asks for the sound anew
        REQUIRE (session.waitUntilIdle (20.0));
        for (int i = 0; i < 200; ++i) // fades and tails are over
            block();
        atRest = last;
        thread = std::thread (
            [this]
            {
                while (! quit)
                {
                    block();
                    for (size_t i = 0; i < atRest.size(); ++i)
                        worst = std::max (worst, std::abs (last[i] - atRest[i]));
                    ++blocks;
                    std::this_thread::sleep_for (std::chrono::milliseconds (2));
                }
            });
    }

    ~SoundingPlugin() { stop(); }

    void stop()
    {
        quit = true;
        if (thread.joinable())
            thread.join();
    }

    Processor processor;
    std::vector<float> atRest, last;
    float worst = 0.0f; ///< read it after stop()
    std::atomic<int> blocks { 0 };

private:
    std::atomic<bool> quit { false };
    std::thread thread;
    juce::AudioBuffer<float> buffer { 2, frames };
    juce::MidiBuffer midi;

    void block()
    {
        for (int i = 0; i < frames; ++i)
            for (int c = 0; c < 2; ++c)
                buffer.setSample (
                    c, i, 0.1f * static_cast<float> (std::sin (juce::MathConstants<double>::twoPi * 1000.0 / 48000.0 * i)));
        processor.processBlock (buffer, midi);
        last.assign (buffer.getReadPointer (0), buffer.getReadPointer (0) + frames);
    }
};
}

TEST_CASE ("a hundred editors of two plugins open and close while both sound, and the sound goes on as it was", "[editors]")
{
    ::setenv ("COLDIRON_PRESETS", (std::filesystem::path (COLDIRON_SOURCE) / "presets").c_str(), 0);
    SoundingPlugin one (OptionId::A), two (OptionId::B);
    for (int i = 0; i < 50; ++i)
    {
        std::unique_ptr<juce::AudioProcessorEditor> first (one.processor.createEditor()), second (two.processor.createEditor());
        REQUIRE (first != nullptr);
        REQUIRE (second != nullptr);
        first->setSize (1200, 800);
        second->setSize (960, 600);
        for (auto* editor : { first.get(), second.get() })
        {
            editor->addToDesktop (0);
            editor->setVisible (true);
        }
        runFor (20);
        if (i % 2 == 0)
            first.reset(); // in either order
    }
    one.stop();
    two.stop();
    for (const auto* plugin : { &one, &two })
    {
        const auto loudest = *std::max_element (plugin->atRest.begin(), plugin->atRest.end());
        CHECK (loudest > 0.01f); // it sounds
        CHECK (plugin->blocks > 100);
        CHECK (plugin->worst < 1e-6f * loudest + 1e-7f); // no block missing, none faded, none cut: -120 dB
    }
    CHECK (std::abs (one.atRest[12] - two.atRest[12]) > 1e-4f); // two plugins, two wirings
}
}
