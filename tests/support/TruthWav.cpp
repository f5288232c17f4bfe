#include "support/TruthWav.h"

#include <ebur128.h>
#include <sndfile.h>

#include <memory>
#include <stdexcept>

namespace coldiron::support
{
namespace
{
using SoundFile = std::unique_ptr<SNDFILE, int (*) (SNDFILE*)>;

SoundFile openSound (const std::filesystem::path& path, int mode, SF_INFO& info)
{
    SoundFile file (sf_open (path.c_str(), mode, &info), sf_close);
    if (file == nullptr)
        throw std::runtime_error (path.string() + ": " + sf_strerror (nullptr));
    return file;
}
}

Wav readWav (const std::filesystem::path& path)
{
    SF_INFO info {};
    const auto file = openSound (path, SFM_READ, info);
    const auto count = static_cast<size_t> (info.channels);
    std::vector<double> frames (static_cast<size_t> (info.frames) * count);
    sf_readf_double (file.get(), frames.data(), info.frames);

    Wav wav { static_cast<double> (info.samplerate), {} };
    wav.channels.assign (count, std::vector<double> (static_cast<size_t> (info.frames)));
    for (size_t i = 0; i < frames.size(); ++i)
        wav.channels[i % count][i / count] = frames[i];
    return wav;
}

void writeFloatWav (const std::filesystem::path& path, const Wav& wav)
{
    SF_INFO info {};
    info.samplerate = static_cast<int> (wav.sampleRate);
    info.channels = static_cast<int> (wav.channels.size());
    info.format = SF_FORMAT_WAV | SF_FORMAT_FLOAT;
    const auto file = openSound (path, SFM_WRITE, info);

    std::vector<double> frames;
    for (size_t i = 0; i < wav.channels.at (0).size(); ++i)
        for (const auto& channel : wav.channels)
            frames.push_back (channel[i]);
    const auto wanted = static_cast<sf_count_t> (wav.channels[0].size());
    if (sf_writef_double (file.get(), frames.data(), wanted) != wanted)
        throw std::runtime_error (path.string() + ": not written whole");
}

double loudnessLufs (const std::vector<double>& mono, double sampleRate)
{
    ebur128_state* state = ebur128_init (1, static_cast<unsigned long> (sampleRate), EBUR128_MODE_I);
    ebur128_set_channel (state, 0, EBUR128_DUAL_MONO);
    ebur128_add_frames_double (state, mono.data(), mono.size());
    double lufs = 0.0;
    ebur128_loudness_global (state, &lufs);
    ebur128_destroy (&state);
    return lufs;
}
}
