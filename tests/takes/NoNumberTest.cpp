// What is no sound goes neither in nor out: not a number, infinite (IEEE 754), or over +120 dBFS.

#include "support/JobFixture.h"

#include "takes/ImpulseFile.h"

#include <sndfile.h>

#include <limits>

namespace noNumberTest
{
using namespace coldiron;
using support::Folder;
namespace fs = std::filesystem;

namespace
{
constexpr float none = std::numeric_limits<float>::quiet_NaN(), endless = std::numeric_limits<float>::infinity();

/** A second of sound with one sample of its own, written by an independent library. */
fs::path withSample (const Folder& folder, float sample, int form)
{
    const auto path = folder.path / "take.wav";
    SF_INFO info {};
    info.samplerate = 48000;
    info.channels = 1;
    info.format = SF_FORMAT_WAV | form;
    SNDFILE* file = sf_open (path.c_str(), SFM_WRITE, &info);
    std::vector<float> samples (48000, 0.1f);
    samples[12345] = sample;
    sf_writef_float (file, samples.data(), 48000);
    sf_close (file);
    return path;
}

template <typename Reading>
std::string faultOf (Reading&& reading)
{
    try
    {
        reading();
        return "";
    }
    catch (const TakeError& error)
    {
        return error.what();
    }
}
}

TEST_CASE ("a sample that is no sound is refused by its number, in takes and impulse responses")
{
    const Folder folder;
    for (const int form : { SF_FORMAT_FLOAT, SF_FORMAT_DOUBLE })
    {
        for (const float sample : { none, endless, -endless, 3e38f, -3e38f, 1.001e6f })
        {
            const auto file = withSample (folder, sample, form);
            INFO (sample);
            for (const auto& fault : { faultOf ([&] { readTake (file); }), faultOf ([&] { checkTake (file); }),
                                       faultOf ([&] { readImpulse (file); }) })
            {
                CHECK (fault.find (file.string() + ": sample 12345 is ") == 0);
                CHECK (fault.find ('\n') == std::string::npos);
            }
        }
        for (const float sample : { 999000.0f, -1.0f })
        {
            const auto file = withSample (folder, sample, form);
            CHECK (readTake (file).channels[0][12345] == sample);
            CHECK (faultOf ([&] { checkTake (file); }).empty());
        }
    }
}

TEST_CASE ("no sample that is not finite is written, and nothing of its file stays")
{
    for (const bool asFloat : { false, true })
        for (const float sample : { none, endless, -endless })
        {
            const Folder folder;
            std::vector<float> samples (48000, 0.1f);
            samples[40000] = sample;
            const auto target = folder.write ("out.wav", "what was there");
            const auto fault = faultOf (
                [&]
                {
                    TakeWriter writer (target, 48000.0, 1, asFloat);
                    writer.write ({ std::vector<float> (100, 0.5f) });
                    writer.write ({ samples });
                    writer.finish();
                });
            INFO (fault);
            CHECK (fault.find ("not a number") != std::string::npos);
            CHECK (fs::file_size (target) == 14);
            CHECK (std::distance (fs::directory_iterator (folder.path), {}) == 1);
        }
}
}
