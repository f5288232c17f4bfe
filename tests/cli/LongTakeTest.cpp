// Long takes stream: memory does not grow with them.
#include "Run.h"

#include <catch2/catch.hpp>
#include <sndfile.h>

#include <fstream>
#include <iostream>

namespace longTakeTest
{
using namespace coldiron::support;

namespace
{
void little (std::ostream& stream, uint32_t value, int bytes)
{
    for (int i = 0; i < bytes; ++i)
        stream.put (static_cast<char> (value >> (8 * i)));
}

/** A take of plucks at its beginning and silence after them, which costs the disk nothing. */
void writeLong (const std::string& path, uint32_t minutes)
{
    constexpr uint32_t rate = 48000;
    const uint32_t bytes = minutes * 60 * rate * 2;
    std::ofstream file (path, std::ios::binary);
    file << "RIFF";
    little (file, bytes + 36, 4);
    file << "WAVEfmt ";
    for (const auto& [value, width] :
         { std::pair { 16u, 4 }, { 1u, 2 }, { 1u, 2 }, { rate, 4 }, { 2 * rate, 4 }, { 2u, 2 }, { 16u, 2 } })
        little (file, value, width);
    file << "data";
    little (file, bytes, 4);
    for (const float sample : pluckedTake (480000, rate))
        little (file, static_cast<uint32_t> (static_cast<int> (sample * 32767.0f)), 2);
    file.close();
    std::filesystem::resize_file (path, bytes + 44);
}
}

TEST_CASE ("a take of twenty minutes is rendered and compared in the memory of a short one")
{
    // 57.6 million frames: whole, as floats, they alone would be 220 MiB. The bound is that of the project.
    const Fixture fixture;
    writeLong (fixture.path ("long.wav"), 20);
    fixture.write ("long.json", jobText (standardOptions(), R"({ "file": "long.wav" })"));
    const auto rendered = run ({ "render", fixture.path ("long.json"), "--out", fixture.path ("out"), "--option", "C",
                                 "--matched", "--after", "amplifier", "--hum", "-20", "--hiss", "30" });
    INFO (rendered.err);
    REQUIRE (rendered.exitCode == 0);
    CHECK (std::filesystem::file_size (fixture.path ("out/C.wav")) == 44 + 3 * 57600000ull);
    const auto compared = run ({ "compare", fixture.path ("long.json") });
    INFO (compared.err);
    REQUIRE (compared.exitCode == 0);
    const auto brief = run ({ "render", fixture.path ("job.json"), "--out", fixture.path ("out"), "--option", "C" });
    std::cout << "Resident at most, a take of 20 minutes: render " << rendered.mostKilobytes << " KiB, compare "
              << compared.mostKilobytes << " KiB; of 2 seconds: render " << brief.mostKilobytes << " KiB\n";
    CHECK (rendered.mostKilobytes < 100000);
    CHECK (compared.mostKilobytes < 100000);
}
}
