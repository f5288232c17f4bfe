// Files rendered block by block: what they hold, how wide they are, and that nothing is left where one fails.
#include "support/JobFixture.h"

#include "metering/Loudness.h"
#include "render/FileRenderer.h"
#include "response/Responses.h"
#include "takes/TakeReader.h"

#include <cmath>
#include <fstream>
#include <random>

namespace fileRendererTest
{
using namespace coldiron;
using namespace coldiron::support;
namespace fs = std::filesystem;

namespace
{
constexpr double rate = 48000.0;

Channels sine (size_t frames, double peak, size_t loudFrom = 0)
{
    Channels x (1, std::vector<float> (frames));
    for (size_t i = 0; i < frames; ++i)
        x[0][i] = static_cast<float> ((i < loudFrom ? 0.1 : peak) * std::sin (0.05 * static_cast<double> (i)));
    return x;
}

void writeTake (const fs::path& path, const Channels& channels, bool asFloat)
{
    TakeWriter writer (path, rate, static_cast<int> (channels.size()), asFloat);
    writer.write (channels);
    writer.finish();
}

CircuitConfig wired (Wiring wiring) { return { humbuckerWired (wiring, humbucker ("bridge")), {}, {}, sixStrings() }; }

RenderPlan twoPieces (const fs::path& take, const RenderSettings& settings = {})
{
    const CircuitConfig recorded = wired (Wiring::series);
    return { settings, { { "now.wav", take, recorded, {} }, { "A.wav", take, recorded, wired (Wiring::splitShorted) } } };
}

size_t filesIn (const fs::path& folder) { return static_cast<size_t> (std::distance (fs::directory_iterator (folder), {})); }
}

TEST_CASE ("a take read by blocks is the take")
{
    const Folder folder;
    std::mt19937 random (4);
    std::normal_distribution<float> noise (0.0f, 0.2f);
    Channels x (2, std::vector<float> (50001));
    for (auto& channel : x)
        for (float& sample : channel)
            sample = noise (random);
    for (const bool asFloat : { false, true })
    {
        const auto file = folder.path / (asFloat ? "f.wav" : "i.wav");
        writeTake (file, x, asFloat);
        const auto whole = readTake (file);
        TakeReader reader (file);
        CHECK (reader.info().frames == 50001);
        Channels all (2), block;
        while (reader.read (block, 777))
            for (size_t c = 0; c < 2; ++c)
                all[c].insert (all[c].end(), block[c].begin(), block[c].end());
        CHECK (all == whole.channels);
        CHECK_FALSE (reader.read (block));
        if (asFloat)
            CHECK (all == x);
    }
}

TEST_CASE ("24 bits where they hold it, float from the first sample where they do not, however late that shows")
{
    const Folder folder;
    const auto take = folder.path / "take.wav", out = folder.path / "out";
    fs::create_directories (out);
    const auto x = sine (200000, 1.5, 150000); // over full scale in its last quarter
    writeTake (take, x, true);
    const auto written = FileRenderer (twoPieces (take)).write (out);
    REQUIRE (written.size() == 2);
    CHECK (written[0].fileName == "now.wav");
    CHECK (written[0].asFloat);
    CHECK (written[0].peak == Approx (1.5).epsilon (1e-4));
    CHECK (readTake (out / "now.wav").channels == x);
    CHECK (filesIn (out) == 2);

    writeTake (take, sine (200000, 0.9, 0), false);
    const auto narrow = FileRenderer (twoPieces (take)).write (out);
    CHECK_FALSE (narrow[0].asFloat);
    CHECK (readTake (out / "now.wav").channels == readTake (take).channels);
    CHECK (fs::file_size (out / "now.wav") < 3 * 200000 + 200);

    RenderSettings headroom;
    headroom.headroom = true;
    writeTake (take, x, true);
    FileRenderer kept (twoPieces (take, headroom));
    CHECK (kept.headroomDb() < -3.5);
    for (const auto& file : kept.write (out))
    {
        CHECK_FALSE (file.asFloat);
        CHECK (file.peak <= 1.0);
    }
}

TEST_CASE ("matched renderings are as loud as the take, behind the jack too")
{
    const Folder folder;
    const auto take = folder.path / "take.wav";
    std::mt19937 random (4);
    std::normal_distribution<float> noise (0.0f, 0.03f);
    Channels x (1, std::vector<float> (5 * 48000));
    for (float& sample : x[0])
        sample = noise (random);
    writeTake (take, x, false);
    for (const double drive : { 0.0, 18.0 })
        for (const auto sound : { OutputSound::none, OutputSound::amplifier })
        {
            if (sound == OutputSound::none && drive > 0.0)
                continue;
            RenderSettings settings;
            settings.matched = true;
            settings.outputChain = { sound, {}, drive };
            const auto written = FileRenderer (twoPieces (take, settings)).write (folder.path);
            const auto now = readTake (folder.path / "now.wav"), a = readTake (folder.path / "A.wav");
            CHECK (written[0].matchDb == 0.0);
            CHECK (std::abs (written[1].matchDb) > 1.0); // white noise rises with the split's higher resonance
            CHECK (loudnessOf (a.channels, rate) == Approx (loudnessOf (now.channels, rate)).margin (0.05));
        }
}

TEST_CASE ("nothing is left of renderings that fail or are stopped")
{
    const Folder folder;
    const auto take = folder.path / "take.wav", out = folder.path / "out";
    fs::create_directories (out);
    writeTake (take, sine (300000, 0.5), false);
    double done = 0.0;
    CHECK_THROWS_AS (FileRenderer (
                         twoPieces (take), [&] (double share) { done = share; }, Cancellation ([&] { return done >= 0.5; }))
                         .write (out),
                     Cancelled);
    CHECK (filesIn (out) == 0);

    fs::resize_file (take, 500000);
    CHECK_THROWS_AS (FileRenderer (twoPieces (take)).write (out), TakeError);
    CHECK (filesIn (out) == 0);

    double last = 0.0;
    bool falls = false;
    writeTake (take, sine (300000, 0.5), false);
    RenderSettings all;
    all.matched = all.headroom = true;
    all.outputChain.sound = OutputSound::amplifier;
    FileRenderer (twoPieces (take, all),
                  [&] (double share)
                  {
                      falls = falls || share < last;
                      last = share;
                      return true;
                  })
        .write (out);
    CHECK_FALSE (falls);
    CHECK (last == 1.0);
}
}
