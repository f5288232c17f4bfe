#include "WaysIn.h"

#include <catch2/catch.hpp>
#include <sndfile.h>

#include <fstream>
#include <limits>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace coldiron::support
{
namespace fs = std::filesystem;

namespace
{
const char* const stateNames[] = {
    "absent", "empty", "a folder", "a pipe", "a device", "unreadable", "a thousand times too big", "not a number", "bad text"
};

std::string filled (std::string text, const Fixture& fixture, const std::string& place)
{
    const std::pair<std::string, std::string> words[] = { { "{it}", fixture.path (place) },
                                                          { "{job}", fixture.path ("job.json") },
                                                          { "{shop}", fixture.folder.string() } };
    for (const auto& [word, meaning] : words)
        if (const auto at = text.find (word); at != std::string::npos)
            text.replace (at, word.size(), meaning);
    return text;
}

/** A preset that is right, of the kind its folder says. */
std::string presetText (const std::string& place)
{
    const auto kind = fs::path (place).parent_path().filename();
    if (kind == "guitars")
        return R"({ "coldiron": "guitar 1", "name": "It", "scale_mm": 647.7, "strings": ["E2"], "parts": { "bridge": { "pickup": "humbucker-moderate", "bridge_mm": 44 },
  "jack": { "jack": "mono" } }, "wires": [ ["bridge.north.start", "jack.tip"], ["bridge.north.finish", "bridge.south.finish"], ["bridge.south.start", "ground"] ] })";
    if (kind == "pickups")
        return R"({ "coldiron": "pickup 1", "name": "It", "like": "humbucker-moderate" })";
    if (kind == "switches")
        return R"({ "coldiron": "switch 1", "name": "It", "points": ["a", "b"], "positions": { "up": [], "down": [["a", "b"]] } })";
    if (kind == "tapers")
        return R"({ "coldiron": "taper 1", "name": "It", "points": [[0, 0], [0.5, 0.2], [1, 1]] })";
    if (kind == "rewires")
        return R"({ "coldiron": "rewire 1", "name": "It", "gives": "g", "costs": "c", "steps": [ { "unsolder": ["tone.2", "cap.1"] } ] })";
    return R"({ "coldiron": "any 1", "name": "It" })";
}

std::string goodText (const Way& way)
{
    switch (way.kind)
    {
    case Kind::job: return jobText (standardOptions());
    case Kind::readings: return "pickup,humbucker-moderate\nname,It\ndcr,8.4k\n";
    default: return presetText (way.place);
    }
}

/** A number in the text is none. */
std::string withoutNumber (const Way& way)
{
    auto text = goodText (way);
    const std::pair<const char*, const char*> marks[] = {
        { "647.7", "nan" }, { "8.4k", "nan" }, { "0.2", "NaN" }, { "\"name\": \"It\"", "\"name\": NaN" }
    };
    for (const auto& [number, none] : marks)
        if (const auto at = text.find (number); at != std::string::npos)
            return text.replace (at, std::string (number).size(), none);
    FAIL ("no number in " + text);
    return text;
}

/** Bytes of every kind, control characters and broken UTF-8 among them, always the same. */
std::string junk()
{
    std::string text = "\x1b[31mred\x07 { \"\xff\xfe\xc3\": ";
    unsigned state = 7;
    for (int i = 0; i < 3000; ++i)
        text += static_cast<char> ((state = state * 1664525u + 1013904223u) >> 24);
    return text;
}

constexpr std::uint64_t hugeBytes = 40'000'000'000;

/** The head of an RF64 file (EBU Tech 3306) of 24-bit mono at 48 kHz: 77 hours. */
std::string hugeHead()
{
    std::string head;
    const auto put = [&head] (std::uint64_t value, int bytes)
    {
        for (int i = 0; i < bytes; ++i)
            head += static_cast<char> (value >> (8 * i));
    };
    const auto data = hugeBytes - 80;
    head += "RF64";
    put (0xffffffff, 4);
    head += "WAVEds64";
    put (28, 4);
    put (hugeBytes - 8, 8);
    put (data, 8);
    put (data / 3, 8);
    put (0, 4);
    head += "fmt ";
    put (16, 4);
    put (1, 2);
    put (1, 2);
    put (48000, 4);
    put (144000, 4);
    put (3, 2);
    put (24, 2);
    head += "data";
    put (0xffffffff, 4);
    return head;
}

/** A file with a hole: as long as it says, and no room on the disk. */
void makeHuge (const Fixture& fixture, const Way& way)
{
    fixture.write (way.place, way.kind == Kind::take ? hugeHead() : goodText (way));
    REQUIRE (truncate (fixture.path (way.place).c_str(), static_cast<off_t> (hugeBytes)) == 0);
}

void makeGood (const Fixture& fixture, const Way& way)
{
    if (way.kind == Kind::folder)
        fs::copy (COLDIRON_SOURCE "/presets", fixture.folder / way.place, fs::copy_options::recursive);
    else if (way.kind == Kind::take)
        writeAudio (fixture.path (way.place), pluckedTake (48000, 48000.0), 1, 48000, SF_FORMAT_WAV | SF_FORMAT_FLOAT);
    else
        fixture.write (way.place, goodText (way));
}

void makeState (const Fixture& fixture, const Way& way, State state)
{
    const auto path = fixture.folder / way.place;
    switch (state)
    {
    case State::absent: break;
    case State::empty: fixture.write (way.place, ""); break;
    case State::folder: fs::create_directories (path); break;
    case State::pipe: REQUIRE (mkfifo (path.c_str(), 0666) == 0); break;
    case State::device: fs::create_symlink ("/dev/zero", path); break;
    case State::unreadable:
        makeGood (fixture, way);
        REQUIRE (chmod (path.c_str(), 0) == 0);
        break;
    case State::tooBig: makeHuge (fixture, way); break;
    case State::notANumber:
        if (way.kind != Kind::take)
            fixture.write (way.place, withoutNumber (way));
        else
        {
            std::vector<float> samples (48000, 0.1f);
            samples[47000] = std::numeric_limits<float>::quiet_NaN();
            writeAudio (path.string(), samples, 1, 48000, SF_FORMAT_WAV | SF_FORMAT_FLOAT);
        }
        break;
    case State::badText: fixture.write (way.place, junk()); break;
    }
}

Attempt go (const Way& way, const Fixture& fixture, bool asNobody)
{
    std::vector<std::string> arguments;
    for (const auto& argument : way.arguments)
        arguments.push_back (filled (argument, fixture, way.place));
    Circumstances around;
    around.asNobody = asNobody;
    for (const auto& [name, value] : way.environment)
        around.environment[name] = filled (value, fixture, way.place);
    return attempt (arguments, around);
}

void prepare (const Way& way, const Fixture& fixture)
{
    fs::create_directories ((fixture.folder / way.place).parent_path());
    if (way.make)
        way.make (fixture);
}
}

std::vector<State> statesOf (Kind kind)
{
    if (kind == Kind::folder)
        return { State::absent, State::empty, State::pipe, State::device, State::unreadable, State::badText };
    return { State::absent,     State::empty,  State::folder,     State::pipe,   State::device,
             State::unreadable, State::tooBig, State::notANumber, State::badText };
}

void tryWay (const Way& way, State state)
{
    const Fixture fixture;
    prepare (way, fixture);
    makeState (fixture, way, state);
    INFO (way.name << ": " << stateNames[static_cast<int> (state)]);
    const bool asNobody = state == State::unreadable;
    if (asNobody)
    {
        static const std::string reason = whyNobodyCannotRun();
        if (! reason.empty())
        {
            WARN (way.name + ", unreadable, is left out: " + reason);
            return;
        }
        REQUIRE (chmod (fixture.folder.c_str(), 0777) == 0); // whatever it would write, it could
    }
    const auto before = snapshot (fixture.folder);
    const auto ran = go (way, fixture, asNobody);
    INFO ("said: " << ran.err << "ended with " << ran.exitCode << ", signal " << ran.signal);
    CHECK_FALSE (ran.hung());
    CHECK ((ran.exitCode == 1 || ran.exitCode == 2));
    CHECK (! ran.diagnostics().empty());
    CHECK (static_cast<int> (ran.diagnostics().size()) <= way.mostFaults);
    CHECK (ran.err.size() < 2000);
    CHECK (isPlain (ran.err));
    CHECK (ran.out.empty());
    CHECK (ran.cpuSeconds < 2.0);
    CHECK (ran.megabytes < 500.0);
    CHECK (snapshot (fixture.folder) == before);
}

void tryWorking (const Way& way)
{
    const Fixture fixture;
    prepare (way, fixture);
    makeGood (fixture, way);
    INFO (way.name);
    const auto ran = go (way, fixture, false);
    INFO (ran.err);
    CHECK (ran.exitCode == 0);
    CHECK (ran.diagnostics().empty());
    CHECK ((! ran.out.empty() || fixture.files().size() > 3)); // it printed or wrote something
}
}
