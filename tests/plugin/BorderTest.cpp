// The processor at its borders: what a host hands over that is broken, and a host that renders as soon as it has loaded.
#include "DamagedStates.h"
#include "Processors.h"

#include "takes/TakeFile.h"

#include <catch2/catch.hpp>

#include <limits>

namespace borderTest
{
using namespace coldiron;
using namespace processors;
using sessions::noise;
using sessions::residualDb;

namespace
{
void give (Processor& processor, const std::string& state)
{
    processor.setStateInformation (state.data(), static_cast<int> (state.size()));
}

std::string kept (Processor& processor)
{
    juce::MemoryBlock block;
    processor.getStateInformation (block);
    return { static_cast<const char*> (block.getData()), block.getSize() };
}
}

TEST_CASE ("hundreds of damaged states leave the processor playing")
{
    const JobTree good = damaged::goodState();
    Processor processor;
    processor.prepareToPlay (48000.0, 256);
    give (processor, good.dump());
    auto states = damaged::keysSpoilt (good);
    for (auto& state : damaged::presetsBroken (good))
        states.push_back (std::move (state));
    CHECK (states.size() > 400);
    const std::vector<float> x (256, 0.1f);
    for (const auto& [what, text] : states)
    {
        INFO (what);
        give (processor, text);
        const auto y = run (processor, { x, x }, 2);
        for (float sample : y[0])
            REQUIRE (std::isfinite (sample));
    }
    give (processor, good.dump());
    CHECK (JobTree::parse (kept (processor))["job"] == good["job"]);
}

TEST_CASE ("parameters that a host sets to no number come back to the last good value")
{
    Processor processor;
    const auto state = stateOfTwoOptions (OptionId::C, 4.0);
    processor.setStateInformation (state.getData(), static_cast<int> (state.getSize()));
    processor.prepareToPlay (48000.0, 256);
    juce::MessageManager::getInstance()->runDispatchLoopUntil (100);
    const auto before = JobTree::parse (kept (processor));
    const auto x = noise (4800);
    const auto sound = run (processor, { x, x }, 2)[0];
    for (auto* parameter : processor.getParameters())
    {
        // JUCE makes a whole number, the lowest, of what is no number before anyone is told.
        if (dynamic_cast<juce::AudioParameterInt*> (parameter) != nullptr)
            continue;
        INFO (parameter->getName (64));
        const float good = parameter->getValue();
        parameter->setValue (std::numeric_limits<float>::quiet_NaN());
        const auto y = run (processor, { x, x }, 2);
        for (float sample : y[0])
            REQUIRE (std::isfinite (sample));
        for (int i = 0; i < 200 && ! (std::abs (parameter->getValue() - good) < 1e-5f); ++i)
            juce::MessageManager::getInstance()->runDispatchLoopUntil (10);
        CHECK (parameter->getValue() == Approx (good).margin (1e-5));
    }
    auto after = JobTree::parse (kept (processor));
    after["heard_true"] = before["heard_true"]; // it was listened to meanwhile
    CHECK (after == before);
    processor.prepareToPlay (48000.0, 256);
    CHECK (residualDb (run (processor, { x, x }, 2)[0], sound) < -60.0);
}

TEST_CASE ("a host that renders as soon as it has loaded gets what one gets that waits")
{
    const auto folder = juce::File::createTempFile ("coldiron-offline");
    REQUIRE (folder.createDirectory().wasOk());
    const auto file = folder.getChildFile ("take.wav").getFullPathName().toStdString();
    {
        TakeWriter writer (file, 48000.0, 1, true);
        auto soft = noise (10 * 48000);
        for (float& sample : soft)
            sample *= 0.1f;
        writer.write ({ soft });
        writer.finish();
    }
    Session maker (sessions::shippedPresets());
    REQUIRE (maker.jobEditor.setText (
        R"({ "coldiron": "job 1", "title": "Render", "guitar": "two-single-coils", "takes": [ { "file": ")" + file
        + R"(", "setting": { "selector": "bridge" } } ], "after_the_jack": { "sound": "amplifier", "drive_db": 12 },
                                 "options": { "A": { "name": "Darker", "setting": { "selector": "bridge", "bridge-tone": 3 } } } })"));
    maker.monitor.hear (OptionId::A);
    maker.monitor.setLevelMatched (true);
    maker.noise.setHumDb (-20.0);
    const std::string state = maker.state();

    const auto x = noise (24000);
    const auto rendered = [&] (bool waits)
    {
        Processor processor;
        give (processor, state);
        if (waits)
            REQUIRE (processor.session.waitUntilReported (60.0));
        processor.setNonRealtime (true);
        processor.prepareToPlay (48000.0, 256);
        return run (processor, { x, x }, 2)[0];
    };
    const auto expected = rendered (true);
    for (int i = 0; i < 3; ++i)
        CHECK (residualDb (rendered (false), expected) < -120.0);
    folder.deleteRecursively();
}
}
