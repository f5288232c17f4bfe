// Takes as other programs leave them: written into a pipe, cut off from power, longer than 4 GB allows, chunks in an
// unusual order. Published forms: RF64, EBU Tech 3306; BW64, ITU-R BS.2088; FLAC, RFC 9639. WAV after the Multimedia
// Programming Interface and Data Specifications 1.0, AIFF after the Audio Interchange File Format 1.3: both from memory.
// Every file must come out as the very samples that went in.

#include "support/JobFixture.h"

#include "takes/TakeFile.h"

#include <sndfile.h>

#include <cmath>
#include <cstring>

namespace takeFormsTest
{
using namespace coldiron;
using support::Folder;

namespace
{
std::string little (uint64_t value, int count)
{
    std::string text;
    for (int i = 0; i < count; ++i)
        text += static_cast<char> (value >> (8 * i));
    return text;
}

std::string big (uint64_t value, int count)
{
    auto text = little (value, count);
    return { text.rbegin(), text.rend() };
}

constexpr int frames = 5000;

int sampleAt (int i) { return static_cast<int> (std::lround (12000.0 * std::sin (0.03 * i))); }

std::string sound (bool greatestFirst = false)
{
    std::string bytes;
    for (int i = 0; i < frames; ++i)
        bytes += greatestFirst ? big (static_cast<uint16_t> (sampleAt (i)), 2) : little (static_cast<uint16_t> (sampleAt (i)), 2);
    return bytes;
}

std::string formatChunk()
{
    return "fmt " + little (16, 4) + little (1, 2) + little (1, 2) + little (48000, 4) + little (96000, 4) + little (2, 2)
           + little (16, 2);
}

std::string wav (uint64_t whole, uint64_t data, const std::string& before = "", const std::string& bytes = sound())
{
    return "RIFF" + little (whole, 4) + "WAVE" + formatChunk() + before + "data" + little (data, 4) + bytes;
}

std::string longWav (const std::string& id, uint64_t data, const std::string& bytes = sound(), const std::string& after = "")
{
    return id + little (0xffffffffu, 4) + "WAVEds64" + little (28, 4) + little (72 + bytes.size(), 8) + little (data, 8)
           + little (frames, 8) + little (0, 4) + formatChunk() + "data" + little (0xffffffffu, 4) + bytes + after;
}

std::string commChunk (uint64_t count)
{
    // 48000 as an 80-bit float: 1.46484375 times 2^15
    return "COMM" + big (18, 4) + big (1, 2) + big (count, 4) + big (16, 2) + std::string ("\x40\x0e\xbb\x80\0\0\0\0\0\0", 10);
}

std::string soundChunk (uint64_t length, const std::string& bytes = sound (true))
{
    return "SSND" + big (length, 4) + big (0, 8) + bytes;
}
std::string aiff (uint64_t whole, const std::string& chunks) { return "FORM" + big (whole, 4) + "AIFF" + chunks; }

/** @param expected  frames from the first on */
void holds (const std::filesystem::path& file, int expected = frames)
{
    INFO (file);
    try
    {
        CHECK (takeInfo (file).frames == expected);
        const auto take = readTake (file);
        CHECK (take.sampleRate == 48000.0);
        REQUIRE (take.channels.size() == 1);
        REQUIRE (take.frames() == expected);
        int wrong = 0;
        for (int i = 0; i < expected; ++i)
            wrong += take.channels[0][static_cast<size_t> (i)] != static_cast<float> (sampleAt (i)) / 32768.0f ? 1 : 0;
        CHECK (wrong == 0);
    }
    catch (const TakeError& error)
    {
        FAIL_CHECK (error.what());
    }
}

void refuses (const std::filesystem::path& file, const std::vector<std::string>& words)
{
    std::string said;
    try
    {
        readTake (file);
    }
    catch (const TakeError& error)
    {
        said = error.what();
    }
    INFO (file << " said: " << said);
    CHECK_FALSE (said.empty());
    for (const auto& word : words)
        CHECK (said.find (word) != std::string::npos);
}

/** Through a pipe, so that the program cannot go back and say how long it was. @returns whether the program is there and did */
bool through (const std::string& command, const std::filesystem::path& file)
{
    return std::system ((command + " 2>/dev/null | cat > '" + file.string() + "'").c_str()) == 0
           && std::filesystem::file_size (file) > 200;
}
}

TEST_CASE ("A WAV that does not say how long it is ends where its file ends")
{
    const Folder folder;
    const std::pair<const char*, std::string> files[] = {
        { "all ones", wav (0xffffffffu, 0xffffffffu) }, // the largest number there is
        { "all ones less the head", wav (0xffffffffu, 0xffffffffu - 36) },
        { "largest signed", wav (0x7fffffffu, 0x7fffffffu) },
        { "largest signed less the head", wav (0x7fffffffu, 0x7fffffffu - 36) },
        { "two to the 31st", wav (0x80000024u, 0x80000000u) },
        { "largest signed, rounded", wav (0x7ffff024u, 0x7ffff000u) },
        { "nothing", wav (0, 0) }, // a recorder that lost power
        { "nothing but the head", wav (36, 0) },
        { "nothing, half a sample at the end", wav (36, 0) + "x" },
        { "all ones, a chunk before", wav (0xffffffffu, 0xffffffffu, "LIST" + little (4, 4) + "INFO") },
    };
    for (const auto& [name, bytes] : files)
        holds (folder.write (std::string (name) + ".wav", bytes));
    refuses (folder.write ("empty.wav", wav (36, 0, "", "")), { "no sound" });
    refuses (folder.write ("empty-with-chunk.wav", wav (48, 0, "", "LIST" + little (4, 4) + "INFO")), { "no sound" });
    refuses (folder.write ("cut.wav", wav (36 + 20000, 20000)), { "cut short", "20000", "10000" });
}

TEST_CASE ("Chunks before the sound of a WAV may be odd in length, filled up or not")
{
    const Folder folder;
    holds (
        folder.write ("odd.wav", wav (36 + 12 + 2 * frames, 2 * frames, "note" + little (3, 4) + "abc" + std::string (1, '\0'))));
    holds (folder.write ("odd-not-filled.wav", wav (36 + 11 + 2 * frames, 2 * frames, "note" + little (3, 4) + "abc")));
    holds (folder.write ("after.wav", wav (36 + 12 + 2 * frames, 2 * frames) + "LIST" + little (4, 4) + "INFO"));
    refuses (folder.write ("format-last.wav",
                           "RIFF" + little (100, 4) + "WAVEdata" + little (2 * frames, 4) + sound() + formatChunk()),
             { "before its format" });
}

TEST_CASE ("RF64 and BW64 are read")
{
    const Folder folder;
    for (const char* id : { "RF64", "BW64" })
    {
        holds (folder.write (std::string (id) + ".wav", longWav (id, 2 * frames)));
        holds (folder.write (std::string (id) + "-chunk-after.wav",
                             longWav (id, 2 * frames, sound(), "axml" + little (4, 4) + "<a/>")));
        holds (folder.write (std::string (id) + "-unknown.wav", longWav (id, 0)));
        refuses (folder.write (std::string (id) + "-cut.wav", longWav (id, 4 * frames)), { "cut short", "20000", "10000" });
    }
    SF_INFO info {};
    info.samplerate = 48000;
    info.channels = 1;
    info.format = SF_FORMAT_RF64 | SF_FORMAT_PCM_16; // as another library writes it
    const auto file = folder.path / "library.wav";
    auto* writer = sf_open (file.c_str(), SFM_WRITE, &info);
    REQUIRE (writer != nullptr);
    std::vector<short> samples;
    for (int i = 0; i < frames; ++i)
        samples.push_back (static_cast<short> (sampleAt (i)));
    sf_writef_short (writer, samples.data(), frames);
    sf_close (writer);
    holds (file);
}

TEST_CASE ("An AIFF may have its sound before its format, and need not say how long it is")
{
    const Folder folder;
    holds (folder.write ("usual.aiff", aiff (46 + 2 * frames, commChunk (frames) + soundChunk (8 + 2 * frames))));
    holds (folder.write ("sound-first.aiff", aiff (46 + 2 * frames, soundChunk (8 + 2 * frames) + commChunk (frames))));
    holds (folder.write ("unknown.aiff", aiff (0x7f00002eu, commChunk (0x3f800000u) + soundChunk (0x7f000008u))));
    holds (folder.write ("power-lost.aiff", aiff (0, commChunk (0) + soundChunk (0))));
    refuses (folder.write ("cut.aiff", aiff (46 + 4 * frames, commChunk (2 * frames) + soundChunk (8 + 4 * frames))),
             { "cut short" });
    refuses (folder.write ("empty.aiff", aiff (46, commChunk (0) + soundChunk (8, ""))), { "no sound" });
}

TEST_CASE ("A FLAC that does not say how long it is is read to its end")
{
    const Folder folder;
    SF_INFO info {};
    info.samplerate = 48000;
    info.channels = 1;
    info.format = SF_FORMAT_FLAC | SF_FORMAT_PCM_16;
    const auto whole = folder.path / "whole.flac";
    auto* writer = sf_open (whole.c_str(), SFM_WRITE, &info);
    REQUIRE (writer != nullptr);
    std::vector<short> samples;
    for (int i = 0; i < frames; ++i)
        samples.push_back (static_cast<short> (sampleAt (i)));
    sf_writef_short (writer, samples.data(), frames);
    sf_close (writer);
    std::ifstream stream (whole, std::ios::binary);
    std::string bytes ((std::istreambuf_iterator<char> (stream)), {});
    // RFC 9639, 8.2: the last 36 bits before the checksum of the sound are the number of samples, 0 where unknown.
    bytes[21] = static_cast<char> (bytes[21] & 0xf0);
    for (size_t i = 22; i < 26; ++i)
        bytes[i] = 0;
    holds (folder.write ("unknown.flac", bytes));
    // Cut in its second frame: all of the first is there.
    const auto cut = folder.write ("unknown-cut.flac", bytes.substr (0, bytes.size() - 20));
    CHECK (readTake (cut).frames() >= 4000);
    CHECK (readTake (cut).frames() < frames);
    // A tag of another kind after the last frame: its end is found by reading.
    holds (folder.write ("unknown-tagged.flac", bytes + "TAG" + std::string (125, '\0')));
}

TEST_CASE ("What sox and ffmpeg write into a pipe is read")
{
    const Folder folder;
    const auto whole = folder.write ("whole.wav", wav (36 + 2 * frames, 2 * frames)).string();
    const std::pair<const char*, std::string> ways[] = { { "a.wav", "sox '" + whole + "' -t wav -" },
                                                         { "a.flac", "sox '" + whole + "' -t flac -" },
                                                         { "a.aiff", "sox '" + whole + "' -t aiff -" },
                                                         { "b.wav", "ffmpeg -v error -i '" + whole + "' -f wav -" },
                                                         { "b.flac", "ffmpeg -v error -i '" + whole + "' -f flac -" },
                                                         { "c.wav", "ffmpeg -v error -i '" + whole + "' -rf64 always -f wav -" },
                                                         { "d.wav", "cat '" + whole + "' | sox -t wav - -t wav -" } };
    for (const auto& [name, command] : ways)
    {
        REQUIRE (through (command, folder.path / name)); // both are dependencies of the tests
        holds (folder.path / name);
    }
}
}
