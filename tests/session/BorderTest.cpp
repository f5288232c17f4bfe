// What a host or a window hands over that is no number: it moves nothing, and the last good value stays.
#include "Sessions.h"

#include <catch2/catch.hpp>

#include <limits>

namespace borderTest
{
using namespace coldiron;
using namespace sessions;

namespace
{
const double bads[] = { std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity(),
                        -std::numeric_limits<double>::infinity() };
}

TEST_CASE ("a parameter that is no number moves nothing, and the host is shown the last good value")
{
    Session session (shippedPresets());
    REQUIRE (session.jobEditor.setText (twoOptions));
    session.monitor.hear (OptionId::C);
    session.controls.setKnob (OptionId::C, "bridge-tone", 4.0);
    session.controls.setLever (OptionId::C, "bridge-volume-pull", "up");
    session.output.setTrimDb (-6.0);
    session.noise.setHumDb (-30.0);
    session.monitor.setLevelMatched (true);
    session.audio.prepare (48000.0);
    REQUIRE (session.waitUntilReported (60.0));
    REQUIRE (session.waitUntilIdle (5.0));
    const auto x = noise (4800);
    played (session, x);
    const auto map = session.controls.map();
    const std::string before = session.state();
    const std::pair<ParameterKind, int> lanes[] = { { ParameterKind::option, 0 },
                                                    { ParameterKind::bypass, 0 },
                                                    { ParameterKind::matched, 0 },
                                                    { ParameterKind::hum, 0 },
                                                    { ParameterKind::trim, 0 },
                                                    { ParameterKind::knob, map.find ("bridge-tone")->place },
                                                    { ParameterKind::lever, map.find ("bridge-volume-pull")->place } };
    for (const auto& [lane, place] : lanes)
        for (const double bad : bads)
        {
            const double value = session.automation.hostValue (lane, place);
            const Revisions then = session.revisions();
            session.automation.hostMoved (lane, place, bad);
            CHECK (session.automation.hostValue (lane, place) == value);
            // Whoever holds the bad value is told to look again.
            CHECK ((session.revisions().heard != then.heard || session.revisions().settings != then.settings));
        }
    CHECK (session.state() == before);
    float peak = 0.0f;
    for (float sample : played (session, x))
    {
        REQUIRE (std::isfinite (sample));
        peak = std::max (peak, std::abs (sample));
    }
    CHECK (peak > 0.01f);
}

TEST_CASE ("values of the window that are no numbers change nothing")
{
    Session session (shippedPresets());
    REQUIRE (session.jobEditor.setText (twoOptions));
    session.transport.setLoop (1.0, 2.0);
    const std::string before = session.state();
    for (const double bad : bads)
    {
        session.output.setTrimDb (bad);
        session.noise.setHumDb (bad);
        session.noise.setMainsHz (bad);
        session.noise.setFacingDegrees (bad);
        session.noise.setBuzz (bad);
        session.noise.setHissGainDb (bad);
        session.controls.setKnob (OptionId::A, "bridge-tone", bad);
        session.controls.setKnob (OptionId::C, "bridge-tone", bad);
        CHECK (session.state() == before);
        session.transport.seek (bad);
        session.transport.setLoop (0.0, bad);
        session.transport.setLoop (bad, bad);
        CHECK (session.transport.loop().first <= session.transport.loop().second);
        session.transport.setLoop (1.0, 2.0);
    }
    session.audio.prepare (48000.0);
    for (float sample : played (session, noise (4800)))
        REQUIRE (std::isfinite (sample));
}

TEST_CASE ("absurd input is muted in a session too, and the meters stay numbers")
{
    Session session (shippedPresets());
    REQUIRE (session.jobEditor.setText (twoOptions));
    session.monitor.hear (OptionId::C);
    session.audio.prepare (48000.0);
    auto x = noise (9600);
    for (size_t i = 2048; i < 2304; ++i)
        x[i] = i % 3 == 0 ? 1e10f : i % 3 == 1 ? std::numeric_limits<float>::infinity() : std::numeric_limits<float>::quiet_NaN();
    const auto y = played (session, x, 256);
    for (size_t i = 0; i < y.size(); ++i)
        REQUIRE (std::abs (y[i]) < 2.0f);
    CHECK (std::isfinite (session.audio.takeInputPeak()));
    CHECK (std::isfinite (session.audio.takeOutputPeak()));
}
}
