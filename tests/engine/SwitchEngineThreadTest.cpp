#include "engine/SwitchEngine.h"

#include <catch2/catch.hpp>

#include <atomic>
#include <cmath>
#include <thread>

namespace switchEngineThreadTest
{
using namespace coldiron;

TEST_CASE ("designs published while another thread plays arrive whole")
{
    // Filter and gain of one design always multiply to 1: a torn one would not. Run under the thread sanitizer too.
    SwitchEngine engine;
    engine.prepare (48000.0);
    std::atomic<bool> over { false };
    std::atomic<int> torn { 0 };

    std::thread player (
        [&]
        {
            std::vector<float> x (64);
            float* channel = x.data();
            for (int i = 0; i < 6000; ++i)
            {
                std::fill (x.begin(), x.end(), 1.0f);
                engine.process (&channel, 1, 64);
                for (float sample : x)
                    torn += std::abs (sample - 1.0f) > 1e-5f ? 1 : 0;
            }
            over = true;
        });

    int published = 0;
    while (! over)
    {
        EngineDesign design;
        design.filter = ModalFilter::unity (48000.0);
        design.filter.direct = 1.0 / (1 + published % 7);
        design.gain = 1 + published % 7;
        for (int p = 0; p < published % 5; ++p) // vectors grow and shrink on the publisher's side
        {
            design.filter.poles.push_back ({ 0.5, 0.1 });
            design.filter.residues.push_back ({ 0.0, 0.0 });
        }
        engine.publish (design);
        engine.setBypassed (published % 100 == 0);
        ++published;
    }
    player.join();
    CHECK (published > 10);
    CHECK (torn == 0);

    std::vector<float> x (64, 1.0f);
    float* channel = x.data();
    engine.setBypassed (false);
    for (int i = 0; i < 100; ++i)
    {
        std::fill (x.begin(), x.end(), 1.0f);
        engine.process (&channel, 1, 64);
    }
    CHECK (x[63] == Approx (1.0f).margin (1e-5));
}
}
