// A loaded plugin that nothing moves wakes no thread of its own; and what the host moves on any thread is followed without polling.
#include "Processors.h"
#include "support/Wakeups.h"

#include <catch2/catch.hpp>

#include <thread>

namespace idleTest
{
using namespace coldiron;
using namespace processors;

namespace
{
void play (Processor& processor, double seconds)
{
    juce::AudioBuffer<float> buffer (2, 256);
    juce::MidiBuffer midi;
    for (double at = 0.0; at < seconds; at += 256.0 / 48000.0)
    {
        buffer.clear();
        processor.processBlock (buffer, midi);
        std::this_thread::sleep_for (std::chrono::duration<double> (256.0 / 48000.0));
    }
}
}

TEST_CASE ("a loaded plugin that nothing moves wakes none of its threads")
{
    Processor processor;
    const auto state = stateOfTwoOptions (OptionId::C, 5.0);
    processor.setStateInformation (state.getData(), static_cast<int> (state.getSize()));
    processor.prepareToPlay (48000.0, 256);
    REQUIRE (processor.session.waitUntilReported (60.0));
    juce::MessageManager::getInstance()->runDispatchLoopUntil (300);

    int threads = 0;
    const auto before = support::threadWaits();
    play (processor, 2.0);
    CHECK (support::mostWaits (before, support::threadWaits(), "coldiron-", &threads) == 0);
    CHECK (threads >= 5);
}

TEST_CASE ("a knob that the session moves stands there in the host soon, and the job's names too")
{
    Processor processor;
    const auto state = stateOfTwoOptions (OptionId::C, 5.0);
    processor.setStateInformation (state.getData(), static_cast<int> (state.getSize()));
    processor.prepareToPlay (48000.0, 256);
    REQUIRE (processor.session.waitUntilReported (60.0));
    auto* tone = parameterNamed (processor, "bridge-tone");
    REQUIRE (tone != nullptr);
    CHECK (tone->getValue() == Approx (0.5f));
    const int place = processor.session.controls.map().find ("bridge-tone")->place;

    std::thread ([&] { processor.session.automation.hostMoved (ParameterKind::knob, place, 8.0); })
        .join(); // behind the parameter's back
    CHECK (tone->getValue() == Approx (0.5f));
    for (int i = 0; i < 100 && tone->getValue() != Approx (0.8f); ++i)
        juce::MessageManager::getInstance()->runDispatchLoopUntil (10);
    CHECK (tone->getValue() == Approx (0.8f));
}
}
