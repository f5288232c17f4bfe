#include "Run.h"

#include <catch2/catch.hpp>
#include <sndfile.h>

#include <cmath>
#include <iostream>

namespace renderTest
{
using namespace coldiron::support;

namespace
{
double rmsDb (const Audio& audio)
{
    double sum = 0.0;
    for (const double s : audio.samples)
        sum += s * s;
    return 10.0 * std::log10 (sum / static_cast<double> (audio.samples.size()) + 1e-30);
}

double peak (const Audio& audio)
{
    double most = 0.0;
    for (const double s : audio.samples)
        most = std::max (most, std::abs (s));
    return most;
}

/** Integrated loudness by ffmpeg's own meter; NaN where ffmpeg is not there. */
double ffmpegLufs (const std::string& path)
{
    FILE* pipe = popen (("ffmpeg -nostats -hide_banner -i " + path + " -af ebur128=dualmono=true -f null - 2>&1").c_str(), "r");
    char line[512];
    double lufs = NAN;
    while (pipe != nullptr && std::fgets (line, sizeof line, pipe) != nullptr)
        std::sscanf (line, " I: %lf LUFS", &lufs); // the last one is the summary's
    if (pipe != nullptr)
        pclose (pipe);
    return lufs;
}
}

TEST_CASE ("render writes the take and every option, samples counted")
{
    const Fixture fixture;
    const auto ran = run ({ "render", fixture.path ("job.json"), "--out", fixture.path ("out") });
    INFO (ran.err);
    REQUIRE (ran.exitCode == 0);
    CHECK (fixture.files ("out") == std::vector<std::string> { "A.wav", "B.wav", "C.wav", "D.wav", "E.wav", "now.wav" });
    CHECK (ran.err.find ('%') == std::string::npos); // progress is for terminals
    const auto take = readAudio (fixture.path ("take.wav"));
    for (const auto& name : fixture.files ("out"))
    {
        const auto audio = readAudio (fixture.path ("out/" + name));
        CHECK (audio.frames == take.frames);
        CHECK (audio.sampleRate == take.sampleRate);
        CHECK (audio.channels == 1);
        CHECK (audio.subtype == SF_FORMAT_PCM_24);
        for (const float s : audio.samples)
            REQUIRE (std::isfinite (s));
    }
    CHECK (readAudio (fixture.path ("out/now.wav")).samples == take.samples); // bit for bit
    CHECK (peak (readAudio (fixture.path ("out/D.wav"))) == 0.0);
    const double quieter = rmsDb (readAudio (fixture.path ("out/B.wav"))) - rmsDb (take);
    CHECK (quieter < -4.0);
    CHECK (quieter > -8.0);
}

TEST_CASE ("one option, stereo, other rates and formats")
{
    const Fixture fixture;
    const auto mono = pluckedTake (44100, 44100.0);
    std::vector<float> stereo;
    for (const float s : mono)
    {
        stereo.push_back (s);
        stereo.push_back (-0.5f * s);
    }
    struct Kind
    {
        const char* name;
        int rate, channels, format;
    };
    for (const auto& kind : { Kind { "a.wav", 44100, 2, SF_FORMAT_WAV | SF_FORMAT_PCM_16 },
                              Kind { "b.aiff", 96000, 2, SF_FORMAT_AIFF | SF_FORMAT_PCM_24 },
                              Kind { "c.flac", 22050, 2, SF_FORMAT_FLAC | SF_FORMAT_PCM_16 },
                              Kind { "d.wav", 192000, 1, SF_FORMAT_WAV | SF_FORMAT_FLOAT },
                              Kind { "e.wav", 8000, 1, SF_FORMAT_WAV | SF_FORMAT_PCM_32 } })
    {
        writeAudio (fixture.path (kind.name), kind.channels == 2 ? stereo : mono, kind.channels, kind.rate, kind.format);
        fixture.write ("job.json", jobText (standardOptions(), std::string ("{ \"file\": \"") + kind.name + "\" }"));
        const auto ran = run (
            { "render", fixture.path ("job.json"), "--out", fixture.path (std::string ("out-") + kind.name), "--option", "B" });
        INFO (kind.name << ": " << ran.err);
        REQUIRE (ran.exitCode == 0);
        CHECK (fixture.files (std::string ("out-") + kind.name) == std::vector<std::string> { "B.wav" });
        const auto audio = readAudio (fixture.path (std::string ("out-") + kind.name + "/B.wav"));
        CHECK (audio.frames == 44100);
        CHECK (audio.channels == kind.channels);
        CHECK (audio.sampleRate == kind.rate);
    }
}

TEST_CASE ("louder than full scale is written whole, and said")
{
    const Fixture fixture;
    auto loud = pluckedTake (48000, 48000.0);
    for (auto& s : loud)
        s *= 3.9f; // peak just below full scale, recorded in parallel: series is about 6 dB more
    writeAudio (fixture.path ("take.wav"), loud, 1, 48000, SF_FORMAT_WAV | SF_FORMAT_PCM_24);
    fixture.write ("job.json", jobText (R"("A": { "name": "Series", "setting": { "mode": "series" } })",
                                        R"({ "file": "take.wav", "setting": { "mode": "parallel" } })"));
    const auto ran = run ({ "render", fixture.path ("job.json"), "--out", fixture.path ("out") });
    REQUIRE (ran.exitCode == 0);
    const auto audio = readAudio (fixture.path ("out/A.wav"));
    CHECK (audio.subtype == SF_FORMAT_FLOAT);
    CHECK (peak (audio) > 1.3);
    CHECK (ran.out.find ("dB over full scale") != std::string::npos);
    CHECK (ran.out.find ("nothing is clipped") != std::string::npos);
}

TEST_CASE ("matched options are as loud as the take by another meter")
{
    const Fixture fixture;
    writeAudio (fixture.path ("take.wav"), pluckedTake (6 * 48000, 48000.0), 1, 48000, SF_FORMAT_WAV | SF_FORMAT_PCM_24);
    const auto ran = run ({ "render", fixture.path ("job.json"), "--out", fixture.path ("out"), "--matched" });
    REQUIRE (ran.exitCode == 0);
    CHECK (ran.out.find ("matched by +") != std::string::npos);
    const double take = ffmpegLufs (fixture.path ("take.wav"));
    REQUIRE (std::isfinite (take)); // the meter prints tenths
    for (const char* name : { "A", "B", "C", "E" })
    {
        const double lufs = ffmpegLufs (fixture.path (std::string ("out/") + name + ".wav"));
        INFO (name << ": " << lufs << " against " << take << " LUFS");
        CHECK (lufs == Approx (take).margin (0.1 + 1e-9));
    }
}

TEST_CASE ("hum is loud in a split and quiet in a humbucker")
{
    const Fixture fixture;
    REQUIRE (run ({ "render", fixture.path ("job.json"), "--out", fixture.path ("dry") }).exitCode == 0);
    const auto ran =
        run ({ "render", fixture.path ("job.json"), "--out", fixture.path ("wet"), "--hum", "-20", "--mains", "60" });
    REQUIRE (ran.exitCode == 0);
    const auto hum = [&] (const std::string& name)
    {
        auto wet = readAudio (fixture.path ("wet/" + name));
        const auto dry = readAudio (fixture.path ("dry/" + name));
        for (size_t i = 0; i < wet.samples.size(); ++i)
            wet.samples[i] -= dry.samples[i];
        return rmsDb (wet);
    };
    std::cout << "Hum at the jack, one coil at -20 dB: series " << hum ("A.wav") << ", parallel " << hum ("B.wav") << ", split "
              << hum ("C.wav") << " dBFS\n";
    // Coils of equal turns are heard 2 % unlike, -33.98 dB re one coil in series and half of that in parallel [calc]; pots load
    // series, parallel and split a few tenths of a decibel differently.
    CHECK (hum ("A.wav") - hum ("C.wav") == Approx (-33.98).margin (0.5));
    CHECK (hum ("B.wav") - hum ("C.wav") == Approx (-40.0).margin (0.5));
    // One coil's EMF is 20 dB under a sine as loud as the take; a split loses about half a decibel to the pots.
    const double take = ffmpegLufs (fixture.path ("take.wav"));
    REQUIRE (std::isfinite (take));
    CHECK (hum ("C.wav") == Approx (take - 3.01 - 20.0).margin (1.0));
}
}
