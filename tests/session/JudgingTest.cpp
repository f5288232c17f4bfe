// Blind tests, hearing at true level, several takes and one string alone, by the session that the window talks to.
#include "Sessions.h"

#include "takes/TakeFile.h"
#include "wording/ListeningWords.h"
#include "wording/TakeWords.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <set>

#include <unistd.h>

namespace judgingTest
{
using namespace coldiron;
using namespace sessions;

namespace
{
const char* threeOptions = R"({ "coldiron": "job 1", "title": "Three", "guitar": "two-humbuckers-four-knobs",
  "options": { "A": { "name": "Bridge", "setting": { "selector": "bridge" } },
               "B": { "name": "Both", "setting": { "selector": "both" } },
               "C": { "name": "Bridge, tone 3", "setting": { "selector": "bridge", "bridge-tone": 3 } } } })";

std::vector<float> rung (double seconds, uint64_t shift, double gain = 1.0)
{
    auto x = noise (static_cast<size_t> (seconds * 48000.0) + shift);
    x.erase (x.begin(), x.begin() + static_cast<std::ptrdiff_t> (shift));
    for (float& sample : x)
        sample = static_cast<float> (sample * gain);
    return x;
}

struct Fixture
{
    std::filesystem::path folder = std::filesystem::temp_directory_path() / ("coldiron-judging-" + std::to_string (getpid()));
    Session session { shippedPresets() };

    Fixture()
    {
        std::filesystem::create_directories (folder);
        session.audio.prepare (48000.0);
    }
    ~Fixture() { std::filesystem::remove_all (folder); }

    void take (const std::string& name, const std::vector<float>& x) const
    {
        TakeWriter writer (folder / name, 48000.0, 1, true);
        writer.write ({ x });
        writer.finish();
    }

    void open (const std::string& text)
    {
        std::ofstream (folder / "job.json") << text;
        const bool opened = session.jobEditor.open (folder / "job.json");
        for (const auto& fault : session.diagnostics())
            UNSCOPED_INFO (fault.text());
        REQUIRE (opened);
        REQUIRE (session.waitUntilReported (30.0));
    }
};
}

TEST_CASE ("a preference run hides what plays, keeps levels matched and stores what it found")
{
    Fixture fixture;
    auto& session = fixture.session;
    REQUIRE (session.jobEditor.setText (threeOptions));
    REQUIRE (session.waitUntilReported (30.0));
    session.monitor.hear (OptionId::B);
    const std::string before = session.jobEditor.text();
    const auto parameter = session.automation.hostValue (ParameterKind::option, 0);
    REQUIRE (session.blindTest.startRanking ({ asRecorded, OptionId::A, OptionId::B, OptionId::C }, 11));

    // Every number plays one version, each once, as loud as the take; and nothing that a window reads moves with it.
    const auto x = rung (2.0, 0);
    std::set<OptionId> found;
    for (int number = 1; number <= 4; ++number)
    {
        session.blindTest.hear (number);
        CHECK (session.blindTest.view().heard == number);
        CHECK (session.monitor.heard() == asRecorded);
        CHECK (session.monitor.levelMatched());
        CHECK (session.automation.hostValue (ParameterKind::option, 0) == parameter);
        REQUIRE (session.waitUntilIdle (20.0));
        const auto y = played (session, x);
        const std::vector<float> late (y.begin() + 48000, y.end());
        OptionId like = asRecorded;
        double nearest = 0.0;
        for (const OptionId id : { asRecorded, OptionId::A, OptionId::B, OptionId::C })
        {
            auto expected = id == asRecorded ? x : offline (session, id, 48000.0, x);
            const float gain = static_cast<float> (std::pow (10.0, session.reports.report (id)->matchDb / 20.0));
            for (float& sample : expected)
                sample *= gain;
            const std::vector<float> lateExpected (expected.begin() + 48000, expected.end());
            if (const double residual = residualDb (late, lateExpected); residual < nearest)
            {
                nearest = residual;
                like = id;
            }
        }
        INFO ("number " << number << " residual " << nearest);
        CHECK (nearest < -60.0);
        found.insert (like);
    }
    CHECK (found == std::set<OptionId> { asRecorded, OptionId::A, OptionId::B, OptionId::C });

    session.monitor.hear (OptionId::A);
    session.monitor.setLevelMatched (false);
    CHECK (session.blindTest.view().heard == 4);
    CHECK (session.monitor.levelMatched());

    CHECK_FALSE (session.blindTest.reveal()); // not ranked yet
    for (int number = 1; number <= 4; ++number)
        session.blindTest.rank (number, RankMove::down);
    session.blindTest.rank (4, RankMove::tie);
    CHECK (session.blindTest.view().canTurnOver);
    CHECK (session.blindTest.view().places[3] == 2);
    CHECK (session.jobEditor.text() == before); // nothing is written before the end
    const auto outcome = session.blindTest.reveal ("2026-11-25");
    REQUIRE (outcome);
    CHECK_FALSE (session.blindTest.view().isRunning);
    CHECK (session.monitor.heard() == OptionId::B);
    CHECK (std::set<OptionId> (outcome->behind.begin(), outcome->behind.end())
           == std::set<OptionId> { asRecorded, OptionId::A, OptionId::B, OptionId::C });
    REQUIRE (session.jobEditor.job()->blind.size() == 1);
    const auto& kept = session.jobEditor.job()->blind.front();
    REQUIRE (kept.ranking.size() == 3);
    CHECK (kept.ranking[2].size() == 2);
    const OptionId first = outcome->behind[0];
    CHECK (kept.ranking[0].front() == (first == asRecorded ? "recorded" : letterOf (first)));
    CHECK (kept.names.at ("C") == "Bridge, tone 3");
    CHECK (kept.date == "2026-11-25");
    CHECK (session.jobEditor.undoName() == "Blind test");
    REQUIRE (session.jobEditor.undo());
    CHECK (session.jobEditor.text() == before);
    REQUIRE (session.jobEditor.redo());
    CHECK (session.jobEditor.job()->blind.size() == 1);
}

TEST_CASE ("another seed, another order")
{
    Fixture fixture;
    auto& session = fixture.session;
    REQUIRE (session.jobEditor.setText (threeOptions));
    REQUIRE (session.waitUntilReported (30.0));
    std::set<std::vector<OptionId>> orders;
    for (uint64_t seed = 0; seed < 12; ++seed)
    {
        REQUIRE (session.waitUntilReported (30.0)); // levels are measured again after every edit of the job
        REQUIRE (session.blindTest.startRanking ({ asRecorded, OptionId::A, OptionId::B, OptionId::C }, seed));
        for (int number = 1; number <= 4; ++number)
            session.blindTest.rank (number, RankMove::down);
        const auto outcome = session.blindTest.reveal();
        REQUIRE (outcome);
        orders.insert (outcome->behind);
    }
    CHECK (orders.size() > 6);
}

TEST_CASE ("X is one of the two, and the answers are counted")
{
    Fixture fixture;
    auto& session = fixture.session;
    REQUIRE (session.jobEditor.setText (threeOptions));
    REQUIRE (session.waitUntilReported (30.0));
    REQUIRE (session.blindTest.startAbx (asRecorded, OptionId::B, 10, 5));
    CHECK (session.blindTest.view().about == "Now and B");
    CHECK (session.blindTest.view().versions == 3);
    const auto x = rung (0.5, 0);
    const auto hear = [&] (int number)
    {
        session.blindTest.hear (number);
        REQUIRE (session.waitUntilIdle (20.0));
        played (session, x); // past the fade
        return played (session, x);
    };
    for (int trial = 0; trial < 10; ++trial)
    {
        CHECK (session.blindTest.view().answered == trial);
        const auto one = hear (1), two = hear (2), unknown = hear (3);
        const bool isOne = residualDb (unknown, one) < -60.0, isTwo = residualDb (unknown, two) < -60.0;
        REQUIRE (isOne != isTwo);
        const int right = isOne ? 1 : 2;
        session.blindTest.answer (trial < 9 ? right : 3 - right);
    }
    CHECK (session.blindTest.view().canTurnOver);
    const auto outcome = session.blindTest.reveal();
    REQUIRE (outcome);
    CHECK (wording::blindResult (outcome->result) == "as recorded and B: 9 of 10: guessing does that well about 1 time in 93.");
    CHECK (session.jobEditor.job()->blind.front().right == 9);
}

TEST_CASE ("a blind test that cannot be is refused, and ends where its versions go")
{
    Fixture fixture;
    auto& session = fixture.session;
    REQUIRE (session.jobEditor.setText (threeOptions));
    REQUIRE (session.waitUntilReported (30.0));
    CHECK_FALSE (session.blindTest.startRanking ({ OptionId::A }, 1));
    CHECK_FALSE (session.blindTest.startRanking ({ OptionId::A, OptionId::H }, 1));
    CHECK_FALSE (session.blindTest.startAbx (OptionId::A, OptionId::A, 10, 1));
    CHECK_FALSE (session.blindTest.startAbx (OptionId::A, OptionId::B, 3, 1));
    CHECK_FALSE (session.blindTest.view().isRunning);
    REQUIRE (session.blindTest.startRanking ({ OptionId::A, OptionId::B }, 1));
    REQUIRE (session.options.remove (OptionId::B));
    CHECK_FALSE (session.blindTest.view().isRunning);
    CHECK (session.jobEditor.job()->blind.empty());
    REQUIRE (session.jobEditor.undo());
    REQUIRE (session.waitUntilReported (30.0));
    REQUIRE (session.blindTest.startRanking ({ OptionId::A, OptionId::B }, 1));
    session.blindTest.stop();
    CHECK_FALSE (session.blindTest.view().isRunning);
    CHECK (session.jobEditor.job()->blind.empty());
}

TEST_CASE ("an option is agreed on after it was heard for a second at true level")
{
    Fixture fixture;
    fixture.take ("take.wav", rung (3.0, 0));
    fixture.open (
        R"({ "coldiron": "job 1", "guitar": "two-humbuckers-four-knobs", "takes": [ { "file": "take.wav", "setting": { "selector": "bridge" } } ],
        "options": { "A": { "setting": { "selector": "bridge" } }, "B": { "setting": { "selector": "neck" } } } })");
    auto& session = fixture.session;
    CHECK_FALSE (session.agreement.agree (OptionId::A));
    CHECK (session.diagnostics().front().message == "Hear A at true level first");
    const std::vector<float> half (24000, 0.0f);

    session.monitor.setLevelMatched (true);
    session.monitor.hear (OptionId::A);
    session.transport.play();
    for (int i = 0; i < 4; ++i)
        played (session, half);
    CHECK_FALSE (session.agreement.heardAtTrueLevel (OptionId::A)); // matched
    session.agreement.hearAtTrueLevel (OptionId::A);
    CHECK_FALSE (session.monitor.levelMatched());
    CHECK (session.transport.isPlaying());
    session.monitor.setBypassed (true);
    played (session, half);
    played (session, half);
    session.monitor.setBypassed (false);
    played (session, half);
    CHECK_FALSE (session.agreement.heardAtTrueLevel (OptionId::A)); // half a second, and a bypass before
    session.transport.stop();
    played (session, half);
    CHECK_FALSE (session.agreement.heardAtTrueLevel (OptionId::A)); // nothing played
    session.transport.play();
    played (session, half);
    played (session, half);
    CHECK (session.agreement.heardAtTrueLevel (OptionId::A));
    CHECK_FALSE (session.agreement.heardAtTrueLevel (OptionId::B));
    REQUIRE (session.agreement.agree (OptionId::A));
    CHECK (session.jobEditor.job()->agreed == "A");
    CHECK (session.jobEditor.job()->heard == std::vector<std::string> { "A" });

    // Kept with the job and in a host's state; lost when the option is wired otherwise.
    const auto file = fixture.folder / "kept.json";
    REQUIRE (session.jobEditor.save (file));
    Session again (shippedPresets()), restored (shippedPresets());
    REQUIRE (again.jobEditor.open (file));
    CHECK (again.agreement.heardAtTrueLevel (OptionId::A));
    REQUIRE (restored.restore (session.state()));
    CHECK (restored.agreement.heardAtTrueLevel (OptionId::A));
    CHECK_FALSE (restored.agreement.heardAtTrueLevel (OptionId::B));
    REQUIRE (session.options.setRewires (OptionId::A,
                                         { { "series-parallel", { { "pickup", "bridge" }, { "pot", "bridge-volume" } } } }));
    CHECK_FALSE (session.agreement.heardAtTrueLevel (OptionId::A));
    CHECK (session.agreement.takeBack());
    CHECK (session.jobEditor.job()->agreed.empty());
}

TEST_CASE ("playing live at true level counts, silence does not")
{
    Fixture fixture;
    auto& session = fixture.session;
    REQUIRE (session.jobEditor.setText (threeOptions));
    session.monitor.hear (OptionId::C);
    played (session, std::vector<float> (96000, 0.0f));
    CHECK_FALSE (session.agreement.heardAtTrueLevel (OptionId::C));
    played (session, rung (1.1, 0));
    CHECK (session.agreement.heardAtTrueLevel (OptionId::C));
}

TEST_CASE ("each option plays the take it is derived from, at the same place of the phrase")
{
    Fixture fixture;
    const auto bridge = rung (4.0, 0), neck = rung (4.0, 1000, 0.6);
    fixture.take ("bridge.wav", bridge);
    fixture.take ("neck.wav", neck);
    fixture.open (R"({ "coldiron": "job 1", "guitar": "two-humbuckers-four-knobs",
        "takes": [ { "file": "bridge.wav", "setting": { "selector": "bridge" } }, { "file": "neck.wav", "setting": { "selector": "neck" } } ],
        "options": { "A": { "setting": { "selector": "bridge" } }, "B": { "setting": { "selector": "neck" } } } })");
    auto& session = fixture.session;
    session.monitor.hear (OptionId::A);
    session.transport.play();
    REQUIRE (session.waitUntilReported (30.0));
    CHECK (session.takes.takeFor (OptionId::A) == 0);
    CHECK (session.takes.takeFor (OptionId::B) == 1);
    CHECK (session.reports.report (OptionId::B)->figures.confidence.playing == Similarity::sameCoils);
    CHECK (wording::derivedFrom (session.reports.report (OptionId::B)->choice) == "from take 2, neck alone: same coils");
    CHECK (session.reports.report (OptionId::B)->figures.loudnessLu.value() == Approx (0.0).margin (0.02));

    std::vector<float> silence (48000, 0.0f);
    played (session, silence);
    const double at = session.transport.positionSeconds();
    session.monitor.hear (OptionId::B);
    REQUIRE (session.waitUntilIdle (10.0));
    CHECK (session.takes.playing() == 1);
    CHECK (session.takes.picture()->name == "neck.wav");
    const auto y = played (session, silence);
    CHECK (session.transport.positionSeconds() == Approx (at + 1.0).margin (1e-3));
    // B is the neck take as it is: its own samples, from the same place on.
    const auto from = static_cast<size_t> (std::llround (at * 48000.0));
    const std::vector<float> late (y.begin() + 4800, y.end()),
        expected (neck.begin() + static_cast<std::ptrdiff_t> (from + 4800),
                  neck.begin() + static_cast<std::ptrdiff_t> (from + 48000));
    CHECK (residualDb (late, expected) < -50.0);
    session.monitor.hear (asRecorded);
    CHECK (session.takes.playing() == 0);

    // Different takes differ by themselves: no blind test between them until one is selected for all.
    CHECK_FALSE (session.blindTest.whyNot ({ OptionId::A, OptionId::B }).empty());
    session.takes.select (1);
    REQUIRE (session.waitUntilReported (30.0));
    CHECK (session.takes.takeFor (OptionId::A) == 1);
    CHECK (wording::surerTake (session.reports.report (OptionId::A)->choice) == "surer from take 1, bridge alone: same coils");
    CHECK (session.blindTest.whyNot ({ OptionId::A, OptionId::B }).empty());
    session.takes.follow();
    CHECK (session.takes.takeFor (OptionId::A) == 0);

    // Live, everything comes through the selected take's wiring.
    session.transport.setSource (Source::host);
    CHECK (session.takes.takeFor (OptionId::A) == 1);
}

TEST_CASE ("going from take to take makes no step")
{
    const auto sine = [] (double phase)
    {
        auto take = std::make_shared<TakeAudio>();
        take->sampleRate = 48000.0;
        take->channels.resize (1);
        for (int i = 0; i < 96000; ++i)
            take->channels[0].push_back (
                static_cast<float> (0.5 * std::sin (2.0 * 3.14159265358979 * 220.0 * i / 48000.0 + phase)));
        return take;
    };
    const auto one = sine (0.0), other = sine (2.0);
    TakePlayer player;
    player.prepare (48000.0);
    player.load (one);
    player.setPlaying (true);
    std::vector<float> all;
    for (int round = 0; round < 40; ++round)
    {
        std::vector<float> block (2400);
        float* channel = block.data();
        player.process (&channel, 1, 2400);
        all.insert (all.end(), block.begin(), block.end());
        player.load (round % 2 == 0 ? other : one, player.positionSeconds());
    }
    double largest = 0.0;
    for (size_t i = 400; i < all.size(); ++i)
        largest = std::max (largest, static_cast<double> (std::abs (all[i] - all[i - 1])));
    // The sine's own slope, and a raised cosine of 240 samples between two values at most 1 apart.
    CHECK (largest < 0.5 * 2.0 * 3.14159265358979 * 220.0 / 48000.0 + 3.14159265358979 / 480.0);
}

TEST_CASE ("one string alone is heard and drawn")
{
    Fixture fixture;
    auto& session = fixture.session;
    REQUIRE (session.jobEditor.setText (R"({ "coldiron": "job 1", "guitar": "two-humbuckers-four-knobs",
        "takes": [ { "file": "none.wav", "setting": { "selector": "bridge" } } ], "options": { "A": { "setting": { "selector": "neck" } } } })"));
    session.monitor.hear (OptionId::A);
    const auto changeOf = [&] (int string)
    {
        session.monitor.setOnlyString (string);
        CHECK (session.monitor.onlyString() == string);
        REQUIRE (session.waitUntilReported (30.0));
        REQUIRE (session.waitUntilIdle (10.0));
        const auto report = session.reports.report (OptionId::A);
        const auto x = rung (1.0, 0);
        const auto y = played (session, x);
        auto side = session.jobEditor.job()->recordedConfig (0),
             option = session.jobEditor.job()->optionConfig (*session.jobEditor.job()->find ("A"));
        side.strings.only = option.strings.only = string;
        const GuitarResponse recorded = side.response(), heard = option.response();
        const auto expected =
            renderTake ({ x }, designFilter (TransferFunction (recorded, heard), *FilterDesigner::shared (48000.0))).channels[0];
        CHECK (residualDb (std::vector<float> (y.begin() + 9600, y.end()),
                           std::vector<float> (expected.begin() + 9600, expected.end()))
               < -80.0);
        return report->curve.changeDb;
    };
    const auto all = changeOf (-1), low = changeOf (0), high = changeOf (5);
    double apart = 0.0;
    for (size_t i = 0; i < all.size(); ++i)
        apart = std::max (apart, std::abs (low[i] - high[i]));
    CHECK (apart > 5.0);
    session.monitor.setOnlyString (17);
    CHECK (session.monitor.onlyString() == -1);
}
}
