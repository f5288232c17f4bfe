// Rendering faster than real time: what is heard waits for the take, its loudness, the levels and the designs, so that an
// export is the same on every run, in blocks of any size, and as playing it.
#include "Sessions.h"

#include <catch2/catch.hpp>

#include <chrono>
#include <functional>
#include <thread>

namespace renderTest
{
using namespace coldiron;
using namespace sessions;

namespace
{
constexpr double rate = 48000.0;

struct Folder
{
    std::filesystem::path path =
        std::filesystem::temp_directory_path()
        / ("coldiron-render-" + std::to_string (std::chrono::steady_clock::now().time_since_epoch().count()));
    Folder() { std::filesystem::create_directories (path); }
    ~Folder() { std::filesystem::remove_all (path); }

    std::string write (const char* name, const std::vector<float>& samples) const
    {
        TakeWriter writer (path / name, rate, 1, true);
        writer.write ({ samples });
        writer.finish();
        return (path / name).string();
    }
};

std::vector<float> rendered (Session& session, std::vector<float> x, int block, const std::function<void (int64_t)>& before = {})
{
    for (size_t at = 0; at < x.size(); at += static_cast<size_t> (block))
    {
        if (before)
            before (static_cast<int64_t> (at));
        float* channel = x.data() + at;
        session.audio.process (&channel, 1, static_cast<int> (std::min (static_cast<size_t> (block), x.size() - at)), true);
    }
    return x;
}

/** Single coils, so that there is hum; a soft take, so that all that stands against its loudness shows. */
std::string jobWith (const std::string& take, const std::string& after)
{
    return R"({ "coldiron": "job 1", "title": "Render", "guitar": "two-single-coils", "takes": [ { "file": ")" + take
           + R"(", "setting": { "selector": "bridge" } } ], "after_the_jack": )" + after
           + R"(, "options": { "A": { "name": "Darker", "setting": { "selector": "bridge", "bridge-tone": 3 } } } })";
}

/** What a host keeps: option A, level matched, hum, hiss. */
std::string stateWith (const std::string& job, Source source)
{
    Session session (shippedPresets());
    REQUIRE (session.jobEditor.setText (job));
    session.monitor.hear (OptionId::A);
    session.monitor.setLevelMatched (true);
    session.noise.setHumDb (-20.0);
    session.noise.setHissGainDb (40.0);
    session.transport.setSource (source);
    return session.state();
}
}

TEST_CASE ("an export begun as soon as a state is loaded is the export begun long after")
{
    const Folder folder;
    auto soft = noise (static_cast<size_t> (6 * rate)); // long enough to take its time to be read
    for (float& sample : soft)
        sample *= 0.1f;
    const std::string take = folder.write ("soft.wav", soft);
    std::vector<float> impulse (24000);
    for (size_t i = 0; i < impulse.size(); ++i)
        impulse[i] = std::sin (0.3f * static_cast<float> (i * i % 101)) * std::exp (-0.001f * static_cast<float> (i));
    const std::string file = folder.write ("speaker.wav", impulse);
    const auto x = noise (24000);

    for (const Source source : { Source::host, Source::take })
        for (const std::string& after : { std::string (R"({ "sound": "amplifier", "drive_db": 12 })"),
                                          R"({ "sound": "file", "file": ")" + file + R"(", "drive_db": 6 })" })
        {
            INFO (after << (source == Source::take ? ", the take plays" : ""));
            const std::string state = stateWith (jobWith (take, after), source);
            const auto begin = [&] (Session& session)
            {
                REQUIRE (session.restore (state));
                session.audio.prepare (rate);
                if (source == Source::take)
                    session.transport.play();
            };
            Session patient (shippedPresets());
            begin (patient);
            REQUIRE (patient.waitUntilReported (60.0));
            const auto expected = rendered (patient, x, 512);
            REQUIRE (patient.diagnostics().empty());

            for (int run = 0; run < (source == Source::host ? 5 : 2); ++run)
            {
                Session hasty (shippedPresets());
                begin (hasty);
                CHECK (residualDb (rendered (hasty, x, 512), expected) < -120.0);
                CHECK (hasty.diagnostics().empty());
            }
            // Played in real time after the wait it is the same.
            Session playing (shippedPresets());
            begin (playing);
            REQUIRE (playing.waitUntilReported (60.0));
            REQUIRE (playing.waitUntilIdle (10.0));
            CHECK (residualDb (played (playing, x, 512), expected) < -120.0);
        }
}

TEST_CASE ("a take that is not there does not hold an export up")
{
    const Folder folder;
    Session session (shippedPresets());
    REQUIRE (session.restore (stateWith (jobWith ((folder.path / "gone.wav").string(), R"({ "sound": "none" })"), Source::host)));
    session.audio.prepare (rate);
    const auto x = noise (4800);
    CHECK (rendered (session, x, 512) != x);
    CHECK (session.takes.picture()->fault.find ("gone.wav") != std::string::npos);
}

TEST_CASE ("an export that could wait no longer says so, until one is whole")
{
    const Folder folder;
    const std::string take = folder.write ("take.wav", noise (static_cast<size_t> (20 * rate)));
    Session session (shippedPresets());
    REQUIRE (session.restore (stateWith (jobWith (take, R"({ "sound": "none" })"), Source::host)));
    session.audio.setLongestWait (0.0);
    session.audio.prepare (rate);
    rendered (session, noise (4800), 512);
    REQUIRE (session.diagnostics().size() == 1);
    CHECK (session.diagnostics()[0].message.find ("render") != std::string::npos);
    REQUIRE (session.waitUntilReported (60.0));
    rendered (session, noise (4800), 512);
    CHECK (session.diagnostics().empty());
}

TEST_CASE ("an automated export is the same in small blocks and large ones")
{
    const auto x = noise (3 * 48000);
    const auto automated = [&] (int block)
    {
        Session session (shippedPresets());
        REQUIRE (session.jobEditor.setText (twoOptions));
        session.monitor.hear (OptionId::C);
        session.audio.prepare (rate);
        const int tone = session.controls.map().find ("bridge-tone")->place,
                  volume = session.controls.map().find ("bridge-volume")->place;
        return rendered (session, x, block,
                         [&] (int64_t at) // as a host does: the value of the moment where each block begins
                         {
                             const double seconds = static_cast<double> (at) / rate;
                             session.automation.hostMoved (ParameterKind::option, 0,
                                                           seconds < 2.0 ? 3 : 1); // before the knobs, which are its own
                             session.automation.hostMoved (ParameterKind::knob, tone, 5.0 + 5.0 * std::sin (3.0 * seconds));
                             session.automation.hostMoved (ParameterKind::knob, volume, 10.0 - 2.0 * seconds);
                             session.automation.hostMoved (ParameterKind::trim, 0, -6.0 * seconds);
                         });
    };
    const auto small = automated (64);
    CHECK (residualDb (automated (1024), small) < -120.0);
    CHECK (residualDb (automated (64), small) < -120.0);
    CHECK (residualDb (automated (441), small) > -120.0); // its moments are others: the check can fail
    CHECK (residualDb (automated (441), small) < -20.0);
}

TEST_CASE ("an export waits for the levels of a knob that is automated, too")
{
    const Folder folder;
    const std::string state =
        stateWith (jobWith (folder.write ("take.wav", noise (48000)), R"({ "sound": "amplifier" })"), Source::host);
    const auto x = noise (24000);
    const auto automated = [&] (int block)
    {
        Session session (shippedPresets());
        REQUIRE (session.restore (state));
        session.audio.prepare (rate);
        const int tone = session.controls.map().find ("bridge-tone")->place;
        return rendered (session, x, block,
                         [&] (int64_t at) { session.automation.hostMoved (ParameterKind::knob, tone, at < 9000 ? 8.0 : 1.0); });
    };
    const auto once = automated (64);
    CHECK (residualDb (automated (64), once) < -120.0);
    CHECK (residualDb (automated (1024), once) < -90.0);
}

TEST_CASE ("after an export the designs follow by themselves again")
{
    Session session (shippedPresets());
    REQUIRE (session.jobEditor.setText (twoOptions));
    session.monitor.hear (OptionId::C);
    session.audio.prepare (rate);
    const auto x = noise (4800);
    rendered (session, x, 512);
    played (session, x);
    session.automation.hostMoved (ParameterKind::option, 0, 1);
    std::vector<float> y, expected = offline (session, OptionId::A, rate, x);
    for (int tries = 0; tries < 500 && (y.empty() || residualDb (y, expected) > -20.0); ++tries)
    {
        std::this_thread::sleep_for (std::chrono::milliseconds (5));
        y = played (session, x);
    }
    CHECK (residualDb (y, expected) < -20.0);
}
}
