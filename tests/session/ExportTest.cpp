// One sound three ways: the window's export, the command on the same job, and the take played through the session as a host
// bounces it. Every field that decides the sound is set.
#include "Sessions.h"

#include "session/TakeExport.h"

#include <catch2/catch.hpp>

#include <unistd.h>

#include <cstdlib>
#include <fstream>
#include <iostream>

namespace exportTest
{
using namespace coldiron;
namespace fs = std::filesystem;

namespace
{
struct Folder
{
    fs::path path = fs::temp_directory_path() / ("coldiron-export-" + std::to_string (::getpid()));
    Folder()
    {
        fs::remove_all (path);
        fs::create_directories (path);
    }
    ~Folder() { fs::remove_all (path); }

    void take (const std::string& name, float gain) const
    {
        auto x = sessions::noise (4 * 48000);
        for (size_t i = 0; i < x.size(); ++i)
            x[i] *= gain * std::exp (-2.0f * std::fmod (static_cast<float> (i) / 48000.0f, 0.8f));
        TakeWriter writer (path / name, 48000.0, 1, true);
        writer.write ({ x });
        writer.finish();
    }
};

std::string jobOf (const std::string& takes, const std::string& tone, const std::string& more)
{
    return R"({ "coldiron": "job 1", "title": "Three ways", "guitar": "two-humbuckers-four-knobs", "takes": [)" + takes + R"(],
        "options": { "A": { "rewires": [ { "use": "parallel", "pickup": "bridge" } ], "setting": { "selector": "bridge", "neck-tone": 7, "bridge-tone": )"
           + tone + " } } }" + more + " }";
}

const std::string verse = R"({ "file": "verse.wav", "setting": { "selector": "both" } })",
                  chorus = R"({ "file": "chorus.wav", "setting": { "selector": "neck", "neck-tone": 7 } })";

/** rms of the difference [dB re full scale] */
double apartDb (const std::vector<float>& a, const std::vector<float>& b, size_t from = 0)
{
    REQUIRE (a.size() == b.size());
    double sum = 0.0;
    for (size_t i = from; i < a.size(); ++i)
        sum += std::pow (static_cast<double> (a[i]) - b[i], 2.0);
    return 10.0 * std::log10 (sum / static_cast<double> (a.size() - from) + 1e-40);
}

void exportTo (const Session& session, const fs::path& folder, bool matched)
{
    TakeExport sounds (session.exports.renderPlan (matched), folder);
    while (! sounds.isDone())
        ::usleep (5000);
    REQUIRE (sounds.fault().empty());
}

/** Plays a version from the take's start and waits for all that it depends on, as an offline bounce does. */
std::vector<float> bounce (Session& session, OptionId id, size_t frames)
{
    session.transport.setSource (Source::take);
    session.monitor.hear (id);
    REQUIRE (session.waitUntilReported (60.0));
    session.transport.play();
    session.audio.prepare (48000.0);
    std::vector<float> x (frames);
    for (size_t from = 0; from < frames; from += 256)
    {
        float* channel = x.data() + from;
        session.audio.process (&channel, 1, static_cast<int> (std::min<size_t> (256, frames - from)), true);
    }
    return x;
}
}

TEST_CASE ("the window's export, the command and a bounce agree, every field set")
{
    const Folder folder;
    folder.take ("verse.wav", 1.0f);
    folder.take ("chorus.wav", 0.6f);
    std::ofstream (folder.path / "window.json") << jobOf (verse + ", " + chorus, "10", "");
    std::ofstream (folder.path / "command.json")
        << jobOf (chorus, "3.5", R"(, "after_the_jack": { "sound": "amplifier", "drive_db": 9 })");
    const bool matched = GENERATE (false, true);

    Session session (sessions::shippedPresets());
    REQUIRE (session.jobEditor.open (folder.path / "window.json"));
    session.audio.prepare (48000.0);
    session.takes.select (1); // by hand, where the option's own would be the other
    session.monitor.setOnlyString (1);
    session.controls.setKnob (OptionId::A, "bridge-tone", 3.5); // live, not in the job's text
    REQUIRE (session.output.setChain ({ OutputSound::amplifier, {}, 9.0 }));
    session.noise.setHumDb (-14.0);
    session.noise.setMainsHz (60.0);
    session.noise.setFacingDegrees (35.0);
    session.noise.setBuzz (0.6);
    session.noise.setHissGainDb (40.0);
    session.monitor.setLevelMatched (matched);
    session.output.setHeadroomKept (false);
    REQUIRE (session.waitUntilReported (60.0));
    exportTo (session, folder.path / "window", matched);

    const std::string words = std::string (COLDIRON_COMMAND) + " render " + (folder.path / "command.json").string() + " --out "
                              + (folder.path / "command").string()
                              + " --string A2 --hum -14 --mains 60 --facing 35 --buzz 0.6 --hiss 40"
                              + (matched ? " --matched" : "") + " > /dev/null";
    REQUIRE (std::system (words.c_str()) == 0);

    const auto window = readTake (folder.path / "window" / "A.wav").channels[0],
               command = readTake (folder.path / "command" / "A.wav").channels[0];
    const auto now = readTake (folder.path / "window" / "now-2.wav").channels[0],
               nowToo = readTake (folder.path / "command" / "now.wav").channels[0];
    const auto take = readTake (folder.path / "chorus.wav").channels[0];
    CHECK (apartDb (now, take) > -60.0); // all of this is heard
    CHECK (apartDb (window, now) > -60.0);
    CHECK (apartDb (window, command) < -110.0);
    CHECK (apartDb (now, nowToo) < -110.0);

    // A take fades in over 5 ms when it begins to play, and the chain rings a while; from a second on all must have settled.
    const auto bounced = bounce (session, OptionId::A, window.size());
    std::cout << "matched " << matched << ": export and command " << apartDb (window, command) << " dB apart, export and bounce "
              << apartDb (window, bounced, 48000) << " dB\n";
    CHECK (apartDb (window, bounced, 48000) < -110.0);
}

TEST_CASE ("the window's export keeps headroom where it is kept")
{
    const Folder folder;
    folder.take ("verse.wav", 7.5f);
    std::ofstream (folder.path / "job.json") << jobOf (verse, "10", "");
    Session session (sessions::shippedPresets());
    REQUIRE (session.jobEditor.open (folder.path / "job.json"));
    REQUIRE (session.output.setChain ({ OutputSound::amplifier, {}, 0.0 }));
    session.output.setHeadroomKept (true);
    exportTo (session, folder.path / "out", false);
    const auto now = readTake (folder.path / "out" / "now.wav");
    double peak = 0.0;
    for (const float s : now.channels[0])
        peak = std::max (peak, static_cast<double> (std::abs (s)));
    CHECK (peak < 1.0);
    session.output.setHeadroomKept (false);
    exportTo (session, folder.path / "loud", false);
    const auto loud = readTake (folder.path / "loud" / "now.wav");
    CHECK (std::abs (*std::max_element (loud.channels[0].begin(), loud.channels[0].end())) > 1.0f);
}
}
