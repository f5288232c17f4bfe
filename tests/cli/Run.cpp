#include "Run.h"

#include <sndfile.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <sstream>
#include <stdexcept>

#include <fcntl.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

namespace coldiron::support
{
namespace fs = std::filesystem;

namespace
{
std::string textOf (const fs::path& path)
{
    std::ifstream file (path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

fs::path freshFolder()
{
    static int number = 0;
    const auto folder =
        fs::temp_directory_path() / ("coldiron-shop-" + std::to_string (getpid()) + "-" + std::to_string (++number));
    fs::create_directories (folder);
    return folder;
}
}

Ran run (const std::vector<std::string>& arguments)
{
    const auto folder = freshFolder();
    const auto out = folder / "out", err = folder / "err";
    const pid_t child = fork();
    if (child == 0)
    {
        const auto redirect = [] (const fs::path& to, int descriptor)
        { dup2 (open (to.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600), descriptor); };
        redirect (out, STDOUT_FILENO);
        redirect (err, STDERR_FILENO);
        std::vector<char*> argv { const_cast<char*> (COLDIRON_COMMAND) };
        for (const auto& argument : arguments)
            argv.push_back (const_cast<char*> (argument.c_str()));
        argv.push_back (nullptr);
        execv (COLDIRON_COMMAND, argv.data());
        _exit (127);
    }
    int status = 0;
    rusage used {};
    wait4 (child, &status, 0, &used);
    Ran ran { WIFEXITED (status) ? WEXITSTATUS (status) : -1, textOf (out), textOf (err), used.ru_maxrss };
    fs::remove_all (folder);
    return ran;
}

Fixture::Fixture() : folder (freshFolder())
{
    writeAudio (path ("take.wav"), pluckedTake (96000, 48000.0), 1, 48000, SF_FORMAT_WAV | SF_FORMAT_PCM_24);
    write ("job.json", jobText (standardOptions()));
}

Fixture::~Fixture()
{
    std::error_code ignored;
    fs::remove_all (folder, ignored);
}

void Fixture::write (const std::string& name, const std::string& text) const
{
    std::ofstream (folder / name, std::ios::binary) << text;
}

std::vector<std::string> Fixture::files (const std::string& sub) const
{
    std::vector<std::string> names;
    if (fs::is_directory (folder / sub))
        for (const auto& entry : fs::directory_iterator (folder / sub))
            names.push_back (entry.path().filename().string());
    std::sort (names.begin(), names.end());
    return names;
}

std::string jobText (const std::string& options, const std::string& takes, const std::string& more)
{
    return R"({ "coldiron": "job 1", "title": "One humbucker on the bench",
  "guitar": { "coldiron": "guitar 1", "name": "One humbucker", "scale_mm": 647.7,
    "strings": ["E2", "A2", "D3", "G3", "B3", "E4"],
    "parts": {
      "bridge": { "pickup": { "coldiron": "pickup 1", "name": "Humbucker for tests", "coupling": 0.15, "coils": {
          "north": { "dcr": "4k", "inductance": 2, "capacitance": "80p", "magnet": "north", "wound": "clockwise", "offset_mm": 9 },
          "south": { "dcr": "4k", "inductance": 2, "capacitance": "80p", "magnet": "south", "wound": "clockwise", "offset_mm": -9 } } },
        "bridge_mm": 44 },
      "mode": { "switch": { "coldiron": "switch 1", "name": "Four ways", "points": ["a", "b", "hot", "cold"],
          "positions": { "series": [["a", "b"]], "parallel": [["b", "hot"], ["a", "cold"]], "split": [["a", "cold"]], "off": [["hot", "cold"]] } } },
      "volume": { "pot": "500k", "taper": "log-15" }, "tone": { "pot": "500k", "taper": "log-15" },
      "cap": { "capacitor": "22n" }, "jack": { "jack": "mono" } },
    "wires": [ ["bridge.north.start", "volume.3", "tone.1", "mode.hot"],
               ["bridge.north.finish", "mode.a"], ["bridge.south.finish", "mode.b"],
               ["bridge.south.start", "volume.case", "mode.cold", "ground"], ["volume.1", "volume.case"], ["strings", "ground"],
               ["volume.2", "jack.tip"], ["tone.2", "cap.1"], ["cap.2", "tone.case", "ground"] ] },
  "takes": [ )"
           + takes + R"( ],
  "options": { )"
           + options + " }" + more + " }\n";
}

std::string standardOptions()
{
    return R"(
    "A": { "name": "Series" },
    "B": { "name": "Parallel", "setting": { "mode": "parallel" } },
    "C": { "name": "Split", "setting": { "mode": "split" } },
    "D": { "name": "Off", "setting": { "mode": "off" } },
    "E": { "name": "Volume at five", "setting": { "volume": 5 } })";
}

Audio readAudio (const std::string& path)
{
    SF_INFO info {};
    SNDFILE* file = sf_open (path.c_str(), SFM_READ, &info);
    if (file == nullptr)
        throw std::runtime_error (path + ": " + sf_strerror (nullptr));
    Audio audio {
        static_cast<double> (info.samplerate), info.channels, static_cast<long> (info.frames), info.format & SF_FORMAT_SUBMASK, {}
    };
    audio.samples.resize (static_cast<size_t> (info.frames * info.channels));
    sf_readf_float (file, audio.samples.data(), info.frames);
    sf_close (file);
    return audio;
}

void writeAudio (const std::string& path, const std::vector<float>& interleaved, int channels, int sampleRate, int format)
{
    SF_INFO info {};
    info.channels = channels;
    info.samplerate = sampleRate;
    info.format = format;
    SNDFILE* file = sf_open (path.c_str(), SFM_WRITE, &info);
    if (file == nullptr)
        throw std::runtime_error (path + ": " + sf_strerror (nullptr));
    sf_writef_float (file, interleaved.data(), static_cast<sf_count_t> (interleaved.size()) / channels);
    sf_close (file);
}

std::vector<float> pluckedTake (int frames, double sampleRate)
{
    std::vector<double> sum (static_cast<size_t> (frames), 0.0);
    constexpr double pitches[] = { 82.41, 110.0, 146.83, 196.0, 246.94, 329.63 };
    for (int s = 0; s < 6; ++s)
        for (int n = 1; n <= 20 && n * pitches[s] < 0.4 * sampleRate; ++n)
            for (auto i = static_cast<size_t> (s * frames / 12); i < sum.size(); ++i)
            {
                const double t = (static_cast<double> (i) - s * frames / 12.0) / sampleRate;
                sum[i] += std::exp (-t * (1.0 + 0.4 * n)) * std::sin (2.0 * M_PI * n * pitches[s] * t) / n;
            }
    double peak = 0.0;
    for (const double value : sum)
        peak = std::max (peak, std::abs (value));
    std::vector<float> take;
    for (const double value : sum)
        take.push_back (static_cast<float> (0.25 * value / peak));
    return take;
}
}
