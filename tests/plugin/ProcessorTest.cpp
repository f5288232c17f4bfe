// The processor in this program: layouts, latency, bypass, names of parameters, and nothing forbidden on the audio thread.
#include "AudioThreadTrap.h"
#include "Processors.h"

#include <catch2/catch.hpp>

#include <chrono>
#include <mutex>
#include <thread>

namespace processorTest
{
using namespace coldiron;
using namespace processors;
using sessions::noise;
using sessions::residualDb;

namespace
{
juce::AudioProcessor::BusesLayout layout (const juce::AudioChannelSet& in, const juce::AudioChannelSet& out)
{
    juce::AudioProcessor::BusesLayout result;
    result.inputBuses.add (in);
    result.outputBuses.add (out);
    return result;
}

const auto mono = juce::AudioChannelSet::mono(), stereo = juce::AudioChannelSet::stereo();

void open (Processor& processor, OptionId heard = OptionId::C, double tone = 10.0)
{
    const auto state = stateOfTwoOptions (heard, tone);
    processor.setStateInformation (state.getData(), static_cast<int> (state.getSize()));
}
}

TEST_CASE ("layouts: mono to mono, mono to stereo, stereo to stereo, and no other")
{
    Processor processor;
    CHECK (processor.checkBusesLayoutSupported (layout (mono, mono)));
    CHECK (processor.checkBusesLayoutSupported (layout (mono, stereo)));
    CHECK (processor.checkBusesLayoutSupported (layout (stereo, stereo)));
    CHECK_FALSE (processor.checkBusesLayoutSupported (layout (stereo, mono)));
    CHECK_FALSE (processor.checkBusesLayoutSupported (layout (juce::AudioChannelSet::create5point1(), stereo)));

    const auto x = noise (24000);
    for (const auto& [in, out] : { std::pair { mono, mono }, { mono, stereo }, { stereo, stereo } })
    {
        Processor each;
        open (each);
        REQUIRE (each.setBusesLayout (layout (in, out)));
        each.prepareToPlay (48000.0, 256);
        CHECK (each.getLatencySamples() == 0);
        const auto y = run (each, std::vector<std::vector<float>> (static_cast<size_t> (in.size()), x), out.size());
        const auto expected = sessions::offline (each.session, OptionId::C, 48000.0, x);
        for (const auto& channel : y)
            CHECK (residualDb (channel, expected) < -90.0);
    }
}

TEST_CASE ("zero latency: an impulse comes out on the sample it went in")
{
    Processor processor;
    open (processor);
    processor.prepareToPlay (48000.0, 256);
    std::vector<float> x (1024, 0.0f);
    x[100] = 1.0f;
    const auto y = run (processor, { x, x }, 2)[0];
    for (size_t i = 0; i < 100; ++i)
        REQUIRE (y[i] == 0.0f);
    CHECK (std::abs (y[100]) > 1e-3f);
    CHECK (processor.getLatencySamples() == 0);
}

TEST_CASE ("bypass gives the host's sound back bit for bit")
{
    Processor processor;
    open (processor);
    const auto x = noise (48000);
    processor.getBypassParameter()->setValueNotifyingHost (1.0f);
    processor.prepareToPlay (48000.0, 256);
    CHECK (run (processor, { x, x }, 2)[0] == x);
    // The check can fail: without bypass it is another sound.
    processor.getBypassParameter()->setValueNotifyingHost (0.0f);
    processor.prepareToPlay (48000.0, 256);
    CHECK (run (processor, { x, x }, 2)[0] != x);
}

TEST_CASE ("parameters: ids, order and ranges are for ever")
{
    Processor processor;
    juce::StringArray ids;
    for (auto* parameter : processor.getParameters())
        ids.add (dynamic_cast<juce::AudioProcessorParameterWithID&> (*parameter).paramID);
    CHECK (ids.joinIntoString (" ")
           == "option knob_01 knob_02 knob_03 knob_04 knob_05 knob_06 knob_07 knob_08 knob_09 knob_10 knob_11 knob_12 "
              "lever_01 lever_02 lever_03 lever_04 lever_05 lever_06 lever_07 lever_08 bypass matched hum trim");

    open (processor);
    CHECK (parameterNamed (processor, "bridge-tone") != nullptr);
    CHECK (parameterNamed (processor, "bridge-volume-pull") != nullptr);
    CHECK (parameterNamed (processor, "unused knob 12") != nullptr);
    CHECK (parameterNamed (processor, "unused lever 08") != nullptr);
    juce::StringArray names;
    for (auto* parameter : processor.getParameters())
        names.addIfNotAlreadyThere (parameter->getName (128));
    CHECK (names.size() == processor.getParameters().size()); // distinct

    auto* option = parameterNamed (processor, "Option");
    CHECK (option->getNumSteps() == 9);
    CHECK (option->getText (3.0f / 8.0f, 64) == "C: Bridge in parallel");
    CHECK (option->getText (0.0f, 64) == "as recorded");
    CHECK (parameterNamed (processor, "bridge-volume-pull")->getCurrentValueAsText() == "up");
}

TEST_CASE ("switching the option brings its own settings to the parameters")
{
    Processor processor;
    open (processor, OptionId::C, 2.5);
    auto* tone = parameterNamed (processor, "bridge-tone");
    CHECK (tone->getValue() == Approx (0.25));
    processor.session.monitor.hear (OptionId::A);
    for (int i = 0; i < 100 && tone->getValue() < 0.9f; ++i)
        juce::MessageManager::getInstance()->runDispatchLoopUntil (10);
    CHECK (tone->getValue() == Approx (1.0));
    tone->setValueNotifyingHost (0.5f);
    CHECK (processor.session.controls.setting (OptionId::A).knob ("bridge-tone") == Approx (5.0));
    CHECK (processor.session.controls.setting (OptionId::C).knob ("bridge-tone") == Approx (2.5));
}

TEST_CASE ("no memory is taken and no mutex locked in processBlock while options and knobs change")
{
    Processor processor;
    open (processor);
    processor.prepareToPlay (48000.0, 256);
    juce::AudioBuffer<float> buffer (2, 256);
    juce::MidiBuffer midi;
    auto* tone = parameterNamed (processor, "bridge-tone");
    auto* option = parameterNamed (processor, "Option");

    trap::Counts total, atTheHost;
    int fades = 0;
    for (int i = 0; i < 400; ++i)
    {
        for (int c = 0; c < 2; ++c)
            for (int k = 0; k < 256; ++k)
                buffer.setSample (c, k, static_cast<float> ((i * 31 + k * 7) % 100) / 400.0f);
        trap::arm(); // a host may move parameters on the audio thread: our own part of that is wait-free
        processor.session.automation.hostMoved (ParameterKind::knob, 3, (i % 11));
        processor.session.automation.hostMoved (ParameterKind::option, 0, i % 20 < 10 ? 1 : 3);
        tone->setValue (static_cast<float> (i % 11) / 10.0f);
        option->setValue (i % 20 < 10 ? 0.125f : 0.375f);
        atTheHost.allocations += trap::disarm().all();
        processor.session.monitor.setBypassed (i % 50 == 0);
        processor.session.noise.setHumDb (i % 3 == 0 ? -20.0 : -80.0);
        if (i == 200)
            processor.session.transport.setSource (Source::take);

        trap::arm();
        processor.processBlock (buffer, midi);
        const auto counts = trap::disarm();
        total.allocations += counts.allocations;
        total.frees += counts.frees;
        total.locks += counts.locks;
        std::this_thread::sleep_for (std::chrono::milliseconds (3));
        fades += processor.session.designSeconds() > 0.0 ? 1 : 0;
    }
    CHECK (fades > 0);
    CHECK (total.allocations == 0);
    CHECK (total.frees == 0);
    CHECK (total.locks == 0);
    CHECK (atTheHost.allocations == 0);
}

namespace
{
/** Broken on purpose, in each of the ways the trap is for. */
struct BrokenProcessor : Processor
{
    enum class Diagnostic { allocates, grows, locks } fault = Diagnostic::allocates;
    std::vector<float> growing;
    std::mutex mutex;

    void processBlock (juce::AudioBuffer<float>& buffer, juce::MidiBuffer& midi) override
    {
        if (fault == Diagnostic::allocates)
            juce::AudioBuffer<float> copy (buffer);
        if (fault == Diagnostic::grows)
            growing.push_back (buffer.getSample (0, 0));
        if (fault == Diagnostic::locks)
            const std::scoped_lock lock (mutex);
        Processor::processBlock (buffer, midi);
    }
    using Processor::processBlock;
};
}

TEST_CASE ("the trap catches a processor that allocates, grows a vector or locks")
{
    for (auto fault :
         { BrokenProcessor::Diagnostic::allocates, BrokenProcessor::Diagnostic::grows, BrokenProcessor::Diagnostic::locks })
    {
        BrokenProcessor processor;
        processor.fault = fault;
        processor.prepareToPlay (48000.0, 256);
        juce::AudioBuffer<float> buffer (2, 256);
        juce::MidiBuffer midi;
        buffer.clear();
        trap::arm();
        static_cast<juce::AudioProcessor&> (processor).processBlock (buffer, midi);
        CHECK (trap::disarm().all() > 0);
    }
}
}
