// What is heard after the jack, hum, hiss and headroom in a session: the sound is the same as by the functions alone.
#include "Sessions.h"

#include "response/Hiss.h"

#include <catch2/catch.hpp>
#include <sndfile.h>

#include <chrono>
#include <thread>

namespace afterJackSessionTest
{
using namespace coldiron;
using namespace sessions;

namespace
{
struct Folder
{
    std::filesystem::path path =
        std::filesystem::temp_directory_path()
        / ("coldiron-after-" + std::to_string (std::chrono::steady_clock::now().time_since_epoch().count()));
    Folder() { std::filesystem::create_directories (path); }
    ~Folder() { std::filesystem::remove_all (path); }

    std::filesystem::path write (const char* name, const std::vector<float>& samples) const
    {
        TakeWriter writer (path / name, 48000.0, 1, true);
        writer.write ({ samples });
        writer.finish();
        return path / name;
    }
};

bool until (const std::function<bool()>& holds)
{
    for (int i = 0; i < 1000 && ! holds(); ++i)
        std::this_thread::sleep_for (std::chrono::milliseconds (5));
    return holds();
}
}

TEST_CASE ("the amplifier and a file sound as they do by themselves, and are kept in job and state")
{
    const Folder folder;
    Session session (shippedPresets());
    REQUIRE (session.jobEditor.setText (twoOptions));
    session.monitor.hear (OptionId::C);
    CHECK (session.output.chain().sound == OutputSound::none); // a plugin leaves the host's chain alone
    session.audio.prepare (48000.0);
    const auto x = noise (24000);

    REQUIRE (session.output.setChain ({ OutputSound::amplifier, {}, 6.0 }));
    CHECK (session.jobEditor.undoName() == "Sound after the jack");
    session.audio.prepare (48000.0);
    std::vector<std::vector<float>> expected { offline (session, OptionId::C, 48000.0, x) };
    OutputChain ({ OutputSound::amplifier, {}, 6.0 }, {}, 48000.0, -20.0).run (expected);
    CHECK (residualDb (played (session, x), expected[0]) < -90.0);

    std::vector<float> impulse (3000);
    for (size_t i = 0; i < impulse.size(); ++i)
        impulse[i] = std::sin (0.3f * static_cast<float> (i * i % 101)) * std::exp (-0.002f * static_cast<float> (i));
    const auto file = folder.write ("loudspeaker.wav", impulse);
    REQUIRE (session.jobEditor.save (folder.path / "job.json"));
    REQUIRE (session.output.setChain ({ OutputSound::file, file, 0.0 }));
    CHECK (session.jobEditor.text().find ("\"loudspeaker.wav\"") != std::string::npos); // relative to the job
    session.audio.prepare (48000.0);
    CHECK (session.output.chainFault().empty());
    expected = { offline (session, OptionId::C, 48000.0, x) };
    OutputChain ({ OutputSound::file, file, 0.0 }, impulse, 48000.0, -20.0).run (expected);
    CHECK (residualDb (played (session, x), expected[0]) < -90.0);
    CHECK (session.output.tailSeconds() > 3000.0 / 48000.0);

    Session second (shippedPresets());
    REQUIRE (second.restore (session.state()));
    second.audio.prepare (48000.0);
    CHECK (second.output.chain() == session.output.chain());
    CHECK (residualDb (played (second, x), expected[0]) < -90.0);

    REQUIRE (session.jobEditor.undo());
    CHECK (session.output.chain() == OutputChainChoice { OutputSound::amplifier, {}, 6.0 });
}

TEST_CASE ("a file that cannot be used leaves the sound before it, and says why")
{
    const Folder folder;
    Session session (shippedPresets());
    REQUIRE (session.jobEditor.setText (twoOptions));
    REQUIRE (session.output.setChain ({ OutputSound::amplifier, {}, 0.0 }));
    session.audio.prepare (48000.0);
    const auto x = noise (24000);
    const auto before = played (session, x);

    const auto silent = folder.write ("silent.wav", std::vector<float> (4800, 0.0f)),
               longer = folder.write ("long.wav", std::vector<float> (100000, 0.1f));
    for (const auto& [file, words] :
         { std::pair { silent, "is silent" }, { longer, "2.1 s long" }, { folder.path / "missing.wav", "missing.wav" } })
    {
        REQUIRE (session.output.setChain ({ OutputSound::file, file, 0.0 }));
        REQUIRE (session.waitUntilIdle (5.0));
        CHECK (session.output.chainFault().find (words) != std::string::npos);
        session.audio.prepare (48000.0);
        CHECK (residualDb (played (session, x), before) < -120.0);
    }
    REQUIRE (session.output.setChain ({}));
    REQUIRE (session.waitUntilIdle (5.0));
    CHECK (session.output.chainFault().empty());

    // A file that is mended is read when it is chosen again.
    REQUIRE (session.output.setChain ({ OutputSound::file, folder.path / "missing.wav", 0.0 }));
    REQUIRE (session.waitUntilIdle (5.0));
    CHECK_FALSE (session.output.chainFault().empty());
    folder.write ("missing.wav", { 1.0f });
    REQUIRE (session.output.setChain ({ OutputSound::file, folder.path / "missing.wav", 1.0 }));
    REQUIRE (session.waitUntilIdle (5.0));
    CHECK (session.output.chainFault().empty());
}

TEST_CASE ("standing alone the amplifier is usual, unless the job says otherwise")
{
    Session session (shippedPresets());
    session.output.setStandsAlone();
    CHECK (session.output.chain().sound == OutputSound::amplifier);
    CHECK (session.output.headroomKept());
    REQUIRE (session.jobEditor.setText (twoOptions));
    CHECK (session.output.chain().sound == OutputSound::amplifier);
    REQUIRE (session.output.setChain ({}));
    CHECK (session.output.chain().sound == OutputSound::none);
}

TEST_CASE ("headroom: the same gain for all, only as much as the loudest needs, held while options are switched")
{
    const Folder folder;
    auto loud = noise (3 * 48000);
    for (float& s : loud)
        s *= 7.2f; // peaks of 0.9
    folder.write ("loud.wav", loud);
    Session session (shippedPresets());
    session.output.setStandsAlone();
    std::string job = twoOptions;
    job.replace (job.find ("\"options\""), 9,
                 R"("after_the_jack": { "sound": "none" }, "takes": [ { "file": ")" + (folder.path / "loud.wav").string()
                     + R"(", "setting": { "selector": "both" } } ], "options")");
    REQUIRE (session.jobEditor.setText (job));
    session.audio.prepare (48000.0);
    REQUIRE (session.waitUntilReported (60.0));
    const auto most = [&]
    {
        double peak = -300.0;
        for (OptionId id : { asRecorded, OptionId::A, OptionId::C })
            peak = std::max (peak, session.reports.report (id)->heard->truePeakDb);
        return peak;
    };
    REQUIRE (until ([&] { return session.output.headroomDb() < 0.0; }));
    CHECK (session.output.headroomDb() == Approx (std::min (0.0, -0.01 - most())).margin (1e-6));
    const double held = session.output.headroomDb();

    session.transport.setLooping (true);
    session.transport.play();
    const auto peakOf = [&] (OptionId id)
    {
        session.monitor.hear (id);
        REQUIRE (session.waitUntilIdle (5.0));
        played (session, std::vector<float> (12000, 0.0f));
        float peak = 0.0f;
        for (float s : played (session, std::vector<float> (3 * 48000, 0.0f)))
            peak = std::max (peak, std::abs (s));
        CHECK (session.output.headroomDb() == held);
        return peak;
    };
    for (OptionId id : { asRecorded, OptionId::A, OptionId::C })
        CHECK (peakOf (id) <= 1.0f);

    session.noise.setHissGainDb (80.0); // what hiss may reach is counted in; these humbuckers do not hum
    CHECK (until ([&] { return session.output.headroomDb() < held - 0.3; }));
    session.output.setHeadroomKept (false);
    session.noise.setHissGainDb (-1.0);
    session.monitor.hear (asRecorded);
    played (session, std::vector<float> (24000, 0.0f));
    const auto open = played (session, std::vector<float> (3 * 48000, 0.0f));
    CHECK (*std::max_element (open.begin(), open.end()) > 0.85f); // as it comes
}

TEST_CASE ("hiss is heard with the option that makes it, in the level that was computed")
{
    Session session (shippedPresets());
    REQUIRE (session.jobEditor.setText (twoOptions));
    session.monitor.hear (OptionId::C);
    session.noise.setHissGainDb (60.0);
    session.audio.prepare (48000.0);
    REQUIRE (session.waitUntilReported (20.0));
    const auto hiss = played (session, std::vector<float> (10 * 48000, 0.0f));
    double square = 0.0;
    for (const double s : hiss)
        square += s * s;
    const double microvolts = std::sqrt (square / static_cast<double> (hiss.size())) / hissScaleFor (-20.0, 60.0);
    // The figure counts 20 Hz to 20 kHz; above a loaded pickup's resonance little is left.
    CHECK (microvolts == Approx (session.reports.report (OptionId::C)->figures.hissUv).epsilon (0.03));
}
}
