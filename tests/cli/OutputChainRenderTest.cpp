// What is heard after the jack, headroom and matching, through the command.
#include "Run.h"

#include <catch2/catch.hpp>
#include <sndfile.h>

#include <cmath>
#include <iostream>

namespace afterJackRenderTest
{
using namespace coldiron::support;

namespace
{
double db (double ratio) { return 20.0 * std::log10 (ratio + 1e-300); }

/** Of the difference, re the second [dB]. */
double residual (const std::vector<float>& a, const std::vector<float>& b)
{
    double difference = 0.0, whole = 0.0;
    for (size_t i = 0; i < b.size(); ++i)
    {
        difference += std::pow (static_cast<double> (a[i]) - b[i], 2.0);
        whole += std::pow (static_cast<double> (b[i]), 2.0);
    }
    return 10.0 * std::log10 (difference / whole + 1e-30);
}

/** A line of ffmpeg's own meter; NaN where ffmpeg is not there. */
double ffmpegReads (const std::string& path, const char* line)
{
    FILE* pipe =
        popen (("ffmpeg -nostats -hide_banner -i " + path + " -af ebur128=peak=true:dualmono=true -f null - 2>&1").c_str(), "r");
    char text[512];
    double value = NAN;
    while (pipe != nullptr && std::fgets (text, sizeof text, pipe) != nullptr)
        std::sscanf (text, line, &value); // the last one is the summary's
    if (pipe != nullptr)
        pclose (pipe);
    return value;
}

void writeImpulse (const Fixture& fixture, const char* name, const std::vector<float>& samples, int rate = 48000)
{
    writeAudio (fixture.path (name), samples, 1, rate, SF_FORMAT_WAV | SF_FORMAT_FLOAT);
}

Ran render (const Fixture& fixture, const std::string& out, std::vector<std::string> more)
{
    std::vector<std::string> all { "render", fixture.path ("job.json"), "--out", fixture.path (out) };
    all.insert (all.end(), more.begin(), more.end());
    return run (all);
}
}

TEST_CASE ("an impulse of one sample after the jack nulls, a longer one is direct convolution")
{
    const Fixture fixture;
    writeImpulse (fixture, "identity.wav", { 1.0f });
    std::vector<float> room (20000);
    for (size_t i = 0; i < room.size(); ++i)
        room[i] =
            static_cast<float> (std::sin (0.37 * static_cast<double> (i * i % 977)) * std::exp (-3e-4 * static_cast<double> (i)));
    writeImpulse (fixture, "room.wav", room);
    REQUIRE (render (fixture, "dry", { "--option", "B" }).exitCode == 0);
    REQUIRE (render (fixture, "same", { "--option", "B", "--after", fixture.path ("identity.wav") }).exitCode == 0);
    REQUIRE (render (fixture, "wet", { "--option", "B", "--after", fixture.path ("room.wav") }).exitCode == 0);
    const auto dry = readAudio (fixture.path ("dry/B.wav")).samples, same = readAudio (fixture.path ("same/B.wav")).samples,
               wet = readAudio (fixture.path ("wet/B.wav")).samples;
    CHECK (residual (same, dry) < -120.0);
    CHECK (wet.size() == dry.size());

    std::vector<float> direct (dry.size());
    for (size_t n = 0; n < dry.size(); ++n)
    {
        double sum = 0.0;
        for (size_t k = 0; k <= std::min (n, room.size() - 1); ++k)
            sum += static_cast<double> (room[k]) * dry[n - k];
        direct[n] = static_cast<float> (sum);
    }
    double dot = 0.0, power = 0.0; // a file's own level does not count
    for (size_t n = 0; n < dry.size(); ++n)
    {
        dot += static_cast<double> (wet[n]) * direct[n];
        power += static_cast<double> (direct[n]) * direct[n];
    }
    for (float& sample : direct)
        sample *= static_cast<float> (dot / power);
    const double left = residual (wet, direct);
    std::cout << "Rendered convolution against direct: " << left << " dB\n";
    CHECK (left < -100.0); // 24-bit files
}

TEST_CASE ("bad impulse responses and a drive of nothing are refused in words")
{
    const Fixture fixture;
    writeImpulse (fixture, "long.wav", std::vector<float> (120000, 0.1f));
    writeImpulse (fixture, "silent.wav", std::vector<float> (4800, 0.0f));
    fixture.write ("text.wav", "not a sound");
    for (const auto& [name, words] : { std::pair { "long.wav", "2.5 s long, expected at most 2 s" },
                                       { "silent.wav", "is silent" },
                                       { "text.wav", "text.wav" },
                                       { "none.wav", "none.wav" } })
    {
        const auto ran = render (fixture, "out", { "--after", fixture.path (name) });
        INFO (ran.err);
        CHECK (ran.exitCode == 1);
        CHECK (ran.err.find (words) != std::string::npos);
        CHECK (ran.err.find ("the take") == std::string::npos);
        CHECK (fixture.files ("out").empty());
    }
    CHECK (render (fixture, "out", { "--drive", "6" }).exitCode == 2);
    CHECK (render (fixture, "out", { "--drive", "60", "--after", "amplifier" }).exitCode == 2);

    fixture.write ("job.json", jobText (standardOptions(), "{ \"file\": \"take.wav\" }",
                                        R"(, "after_the_jack": { "sound": "tube", "drive_db": 30 })"));
    const auto ran = render (fixture, "out", {});
    CHECK (ran.exitCode == 1);
    CHECK (ran.err.find ("amplifier") != std::string::npos);
    CHECK (ran.err.find ("drive_db") != std::string::npos);
}

TEST_CASE ("the job's own sound after the jack is rendered, relative to the job, and --after none takes it away")
{
    const Fixture fixture;
    writeImpulse (fixture, "cab.wav", { 0.0f, 0.0f, 1.0f });
    fixture.write ("job.json", jobText (standardOptions(), "{ \"file\": \"take.wav\" }",
                                        R"(, "after_the_jack": { "sound": "file", "file": "cab.wav" })"));
    REQUIRE (render (fixture, "out", { "--option", "recorded" }).exitCode == 0);
    const auto take = readAudio (fixture.path ("take.wav")).samples, now = readAudio (fixture.path ("out/now.wav")).samples;
    for (size_t i = 2; i < take.size(); ++i)
        REQUIRE (std::abs (now[i] - take[i - 2]) < 1.3e-7f); // as recorded goes through it like the rest
    REQUIRE (render (fixture, "none", { "--option", "recorded", "--after", "none" }).exitCode == 0);
    CHECK (readAudio (fixture.path ("none/now.wav")).samples == take);
}

TEST_CASE ("matched behind the amplifier, driven too, is as loud by another meter")
{
    const Fixture fixture;
    writeAudio (fixture.path ("take.wav"), pluckedTake (6 * 48000, 48000.0), 1, 48000, SF_FORMAT_WAV | SF_FORMAT_PCM_24);
    for (const char* drive : { "0", "18" })
    {
        const std::string out = std::string ("out-") + drive;
        const auto ran = render (fixture, out, { "--matched", "--after", "amplifier", "--drive", drive });
        INFO (ran.err);
        REQUIRE (ran.exitCode == 0);
        CHECK (ran.out.find ("a generic small amplifier") != std::string::npos);
        const double now = ffmpegReads (fixture.path (out + "/now.wav"), " I: %lf LUFS");
        REQUIRE (std::isfinite (now)); // the meter prints tenths
        for (const char* name : { "A", "B", "C", "E" })
        {
            const double lufs = ffmpegReads (fixture.path (out + "/" + name + ".wav"), " I: %lf LUFS");
            INFO (name << ": " << lufs << " against " << now << " LUFS, drive " << drive);
            CHECK (lufs == Approx (now).margin (0.1 + 1e-9));
        }
    }
}

TEST_CASE ("headroom is one gain for all and keeps every true peak below full scale")
{
    const Fixture fixture;
    auto loud = pluckedTake (2 * 48000, 48000.0);
    for (auto& s : loud)
        s *= 3.9f;
    writeAudio (fixture.path ("take.wav"), loud, 1, 48000, SF_FORMAT_WAV | SF_FORMAT_PCM_24);
    fixture.write ("job.json", jobText (R"("A": { "name": "Series", "setting": { "mode": "series" } }, "B": { "name": "Same" })",
                                        R"({ "file": "take.wav", "setting": { "mode": "parallel" } })"));
    REQUIRE (render (fixture, "plain", { "--hum", "-10" }).exitCode == 0);
    const auto ran = render (fixture, "kept", { "--hum", "-10", "--headroom" });
    REQUIRE (ran.exitCode == 0);
    CHECK (ran.out.find ("dB on all, for headroom") != std::string::npos);
    double ratio = 0.0, highest = -300.0;
    for (const char* name : { "now", "A", "B" })
    {
        const auto plain = readAudio (fixture.path (std::string ("plain/") + name + ".wav")).samples,
                   kept = readAudio (fixture.path (std::string ("kept/") + name + ".wav")).samples;
        double dot = 0.0, power = 0.0;
        for (size_t i = 0; i < plain.size(); ++i)
        {
            dot += static_cast<double> (kept[i]) * plain[i];
            power += static_cast<double> (plain[i]) * plain[i];
        }
        CHECK ((ratio == 0.0 || db (dot / power / ratio) == Approx (0.0).margin (1e-4))); // the same for all
        ratio = dot / power;
        const double peak = ffmpegReads (fixture.path (std::string ("kept/") + name + ".wav"), " Peak: %lf dBFS");
        highest = std::max (highest, peak);
    }
    CHECK (db (ratio) < -3.0);
    CHECK (highest <= 0.0);
    CHECK (highest > -0.2); // and no more than is needed
    const auto soft = render (fixture, "soft", { "--option", "B", "--headroom" });
    CHECK (soft.out.find ("none passes full scale") != std::string::npos);
}
}
