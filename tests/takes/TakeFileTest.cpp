#include "support/JobFixture.h"

#include "takes/TakeFile.h"

#include <sndfile.h>

#include <cmath>
#include <cstring>
#include <limits>
#include <optional>

namespace takeFileTest
{
using namespace coldiron;
using support::Folder;
namespace fs = std::filesystem;

namespace
{
std::string bytes32 (uint32_t v) { return { char (v), char (v >> 8), char (v >> 16), char (v >> 24) }; }
std::string bytes16 (unsigned v) { return { char (v), char (v >> 8) }; }

/** A WAV made by hand, so that each number of its header can lie. */
std::string wav (unsigned channels, uint32_t rate, unsigned bits, const std::string& data, std::optional<uint32_t> says = {},
                 unsigned kind = 1)
{
    const auto length = says.value_or (static_cast<uint32_t> (data.size()));
    return "RIFF" + bytes32 (36 + length) + "WAVEfmt " + bytes32 (16) + bytes16 (kind) + bytes16 (channels) + bytes32 (rate)
           + bytes32 (rate * channels * bits / 8) + bytes16 (channels * bits / 8) + bytes16 (bits) + "data" + bytes32 (length)
           + data;
}

std::string floatBytes (float value)
{
    std::string text (4, '\0');
    std::memcpy (text.data(), &value, 4);
    return text;
}

void refuses (const fs::path& file, const std::vector<std::string>& words)
{
    for (const bool whole : { false, true })
        try
        {
            if (whole)
                readTake (file);
            else
                takeInfo (file);
            if (whole)
                FAIL ("read a file that it should refuse: " + file.string());
        }
        catch (const TakeError& error)
        {
            const std::string message = error.what();
            INFO (message);
            CHECK (message.find (file.string()) == 0);
            CHECK (message.find ('\n') == std::string::npos);
            for (const auto& word : words)
                CHECK (message.find (word) != std::string::npos);
        }
}

std::vector<float> sine (size_t frames)
{
    std::vector<float> result;
    for (size_t i = 0; i < frames; ++i)
        result.push_back (0.5f * static_cast<float> (std::sin (0.05 * static_cast<double> (i))));
    return result;
}
}

TEST_CASE ("Broken takes are refused in one line that names the file")
{
    const Folder folder;
    const std::string sound (400, '\x10');
    refuses (folder.path / "none.wav", { "no such take" });
    refuses (folder.path, { "a folder, not a take", "expected" });
    refuses (folder.write ("empty.wav", ""), { "empty", "expected" });
    refuses (folder.write ("short.wav", "RIFF"), { "too short" });
    refuses (folder.write ("text.wav", "this is no recording at all"), { "no WAV, AIFF or FLAC", "expected" });
    refuses (folder.write ("none-inside.wav", wav (1, 48000, 16, "")), { "no sound" });
    refuses (folder.write ("no-data.wav", wav (1, 48000, 16, "").substr (0, 36)), { "no sound" });
    refuses (folder.write ("cut.wav", wav (1, 48000, 16, sound, 4000)), { "cut short", "4000", "400" });
    refuses (folder.write ("channels0.wav", wav (0, 48000, 16, sound)), { "0 channels", "expected 1 or 2" });
    refuses (folder.write ("channels6.wav", wav (6, 48000, 16, sound)), { "6 channels" });
    refuses (folder.write ("rate.wav", wav (1, 384000, 16, sound)), { "384000 Hz", "8000 to 192000" });
    refuses (folder.write ("rate0.wav", wav (1, 0, 16, sound)), { "0 Hz" });
    refuses (folder.write ("bits.wav", wav (1, 48000, 7, sound)), { "7-bit" });
    refuses (folder.write ("bits0.wav", wav (1, 48000, 0, sound)), { "0-bit" });
    refuses (folder.write ("format.wav", "RIFF" + bytes32 (4) + "WAVEdata" + bytes32 (0)), { "before its format" });
    refuses (folder.write ("huge.wav", wav (1, 48000, 16, sound, 0xfffffffeu)), { "cut short" });
    refuses (folder.write ("nan.wav",
                           wav (1, 48000, 32, floatBytes (0.1f) + floatBytes (std::numeric_limits<float>::quiet_NaN()), {}, 3)),
             { "sample 1", "not a number" });
    refuses (
        folder.write ("inf.wav", wav (2, 48000, 32,
                                      floatBytes (0.1f) + floatBytes (0.1f) + floatBytes (0.0f) + floatBytes (INFINITY), {}, 3)),
        { "sample 1", "infinite" });
    refuses (folder.write ("cut.flac", "fLaC" + std::string (20, '\0')), { "cut short" });
    refuses (folder.write ("cut.aiff", "FORM" + bytes32 (0) + "AIFF"), { "no format chunk" });
}

TEST_CASE ("A FLAC that ends early is refused")
{
    const Folder folder;
    SF_INFO info {};
    info.samplerate = 48000;
    info.channels = 1;
    info.format = SF_FORMAT_FLAC | SF_FORMAT_PCM_24;
    const auto whole = folder.path / "whole.flac";
    auto* file = sf_open (whole.c_str(), SFM_WRITE, &info);
    const auto sound = sine (100000);
    sf_writef_float (file, sound.data(), static_cast<sf_count_t> (sound.size()));
    sf_close (file);
    CHECK (readTake (whole).frames() == 100000);
    std::ifstream stream (whole, std::ios::binary);
    std::string bytes ((std::istreambuf_iterator<char> (stream)), {});
    const auto cut = folder.write ("cut.flac", bytes.substr (0, bytes.size() / 2));
    CHECK_THROWS_AS (readTake (cut), TakeError);
}

TEST_CASE ("WAV of 16, 24, 32 bits and float, AIFF and FLAC are read, at all rates, mono and stereo")
{
    const Folder folder;
    const auto sound = sine (999);
    for (const int form : { SF_FORMAT_WAV, SF_FORMAT_AIFF, SF_FORMAT_FLAC })
        for (const int bits : { SF_FORMAT_PCM_16, SF_FORMAT_PCM_24, SF_FORMAT_PCM_32, SF_FORMAT_FLOAT })
            for (const int rate : { 8000, 44100, 192000 })
                for (const int channels : { 1, 2 })
                {
                    if (form == SF_FORMAT_FLAC && (bits == SF_FORMAT_PCM_32 || bits == SF_FORMAT_FLOAT))
                        continue;
                    SF_INFO info {};
                    info.samplerate = rate;
                    info.channels = channels;
                    info.format = form | bits;
                    const auto path = folder.path / "take";
                    auto* file = sf_open (path.c_str(), SFM_WRITE, &info);
                    REQUIRE (file != nullptr);
                    std::vector<float> both;
                    for (const float sample : sound)
                        for (int c = 0; c < channels; ++c)
                            both.push_back (c == 0 ? sample : -sample);
                    REQUIRE (sf_writef_float (file, both.data(), 999) == 999);
                    sf_close (file);
                    INFO (form << " " << bits << " " << rate << " " << channels);
                    const auto seen = takeInfo (path);
                    CHECK (seen.sampleRate == rate);
                    CHECK (seen.channels == channels);
                    CHECK (seen.frames == 999);
                    const auto take = readTake (path);
                    REQUIRE (take.frames() == 999);
                    for (size_t i = 0; i < 999; ++i)
                        REQUIRE (std::abs (take.channels.back()[i] - (channels == 1 ? sound[i] : -sound[i])) < 4e-5f);
                }
}

TEST_CASE ("A take is written whole or not at all")
{
    const Folder folder;
    const auto target = folder.path / "out.wav";
    const auto sound = sine (1000);
    {
        TakeWriter writer (target, 48000.0, 1, false);
        writer.write ({ sound });
        CHECK_FALSE (fs::exists (target)); // beside, until it is finished
    }
    CHECK (fs::is_empty (folder.path));

    folder.write ("out.wav", "older");
    {
        TakeWriter writer (target, 48000.0, 2, true);
        writer.write ({ sound, std::vector<float> (1000, 1.5f) });
        writer.write ({ sound, std::vector<float> (1000, -1.5f) });
        writer.finish();
    }
    const auto take = readTake (target);
    CHECK (take.frames() == 2000);
    CHECK (take.channels[0][500] == sound[500]);
    CHECK (take.channels[1][1999] == -1.5f); // over full scale survives in float
    CHECK (std::distance (fs::directory_iterator (folder.path), {}) == 1);
    CHECK_THROWS_AS (TakeWriter (folder.path / "no" / "where.wav", 48000.0, 1, false), TakeError);
}

TEST_CASE ("24-bit files keep what 24 bits can")
{
    const Folder folder;
    const auto sound = sine (5000);
    TakeWriter writer (folder.path / "o.wav", 96000.0, 1, false);
    writer.write ({ sound });
    writer.finish();
    const auto take = readTake (folder.path / "o.wav");
    REQUIRE (take.frames() == 5000);
    for (size_t i = 0; i < sound.size(); ++i)
        REQUIRE (std::abs (take.channels[0][i] - sound[i]) <= 1.0f / 8388608.0f);
}
}
