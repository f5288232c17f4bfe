// A minute of switching with everything on: nothing forbidden on the audio thread, whatever follows the jack.
#include "AudioThreadTrap.h"
#include "Processors.h"

#include <catch2/catch.hpp>

namespace switchingAllocationTest
{
using namespace coldiron;
using namespace processors;

TEST_CASE ("no memory is taken and no mutex locked in a minute of switching with hum, hiss, drive and an impulse response")
{
    const auto folder = std::filesystem::temp_directory_path() / "coldiron-switching";
    std::filesystem::create_directories (folder);
    std::vector<float> impulse (48000);
    for (size_t i = 0; i < impulse.size(); ++i)
        impulse[i] = std::sin (0.3f * static_cast<float> (i * i % 101)) * std::exp (-0.0002f * static_cast<float> (i));
    TakeWriter writer (folder / "long.wav", 48000.0, 1, true);
    writer.write ({ impulse });
    writer.finish();

    Processor processor;
    const auto state = stateOfTwoOptions (OptionId::C, 10.0);
    processor.setStateInformation (state.getData(), static_cast<int> (state.getSize()));
    auto& session = processor.session;
    for (int copies = 1; copies < lastOption; ++copies)
        session.options.duplicate (OptionId::A);
    REQUIRE (session.options.ids().size() == 8);
    processor.prepareToPlay (48000.0, 256);
    session.noise.setHumDb (-20.0);
    session.noise.setHissGainDb (40.0);

    juce::AudioBuffer<float> buffer (2, 256);
    juce::MidiBuffer midi;
    trap::Counts total;
    const OutputChainChoice sounds[] = { { OutputSound::amplifier, {}, 6.0 },
                                         { OutputSound::file, folder / "long.wav", 0.0 },
                                         {},
                                         { OutputSound::amplifier, {}, 0.0 } };
    int turn = 0;
    for (int at = 0; at < 60 * 48000; at += 256)
    {
        if (at >= turn * 4800)
        {
            session.monitor.hear (optionAt (turn % 9));
            if (turn % 20 == 0)
                session.output.setChain (sounds[turn / 20 % 4]);
            session.noise.setFacingDegrees (turn % 90);
            session.noise.setBuzz (0.1 * (turn % 11));
            REQUIRE (processor.session.waitUntilIdle (5.0));
            ++turn;
        }
        for (int c = 0; c < 2; ++c)
            for (int k = 0; k < 256; ++k)
                buffer.setSample (c, k, static_cast<float> ((at / 256 * 31 + k * 7) % 100) / 400.0f);
        trap::arm();
        processor.processBlock (buffer, midi);
        const auto counts = trap::disarm();
        total.allocations += counts.allocations;
        total.frees += counts.frees;
        total.locks += counts.locks;
    }
    CHECK (turn >= 590);
    CHECK (total.allocations == 0);
    CHECK (total.frees == 0);
    CHECK (total.locks == 0);
    CHECK (session.output.chainFault().empty());
    CHECK (processor.getLatencySamples() == 0);
    std::filesystem::remove_all (folder);
}
}
