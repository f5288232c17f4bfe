#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace coldiron::support
{
struct Ran
{
    int exitCode = -1; ///< -1: it did not end by itself (a crash)
    std::string out, err;
    long mostKilobytes = 0; ///< the largest resident set of the command [KiB]
};

/** Runs the real command, by its arguments, without a shell. */
Ran run (const std::vector<std::string>& arguments);

/** A folder that goes away, with a one-humbucker job and a take of two seconds to begin with. */
class Fixture
{
public:
    Fixture();
    ~Fixture();
    Fixture (const Fixture&) = delete;
    Fixture& operator= (const Fixture&) = delete;

    std::filesystem::path folder;
    std::string path (const std::string& name) const { return (folder / name).string(); }
    void write (const std::string& name, const std::string& text) const;
    std::vector<std::string> files (const std::string& sub = ".") const; ///< sorted names
};

/** A job on the guitar written in line; `more` goes in before the closing brace, `options` between its braces. */
std::string jobText (const std::string& options, const std::string& takes = "{ \"file\": \"take.wav\" }",
                     const std::string& more = "");

/** The standard options: A series, B parallel, C split, D silent, E volume at 5. */
std::string standardOptions();

struct Audio
{
    double sampleRate = 0.0;
    int channels = 0;
    long frames = 0;
    int subtype = 0;            ///< libsndfile's
    std::vector<float> samples; ///< interleaved
};

/** Through libsndfile, an independent reader. @throws std::runtime_error */
Audio readAudio (const std::string& path);
void writeAudio (const std::string& path, const std::vector<float>& interleaved, int channels, int sampleRate, int format);

/** Decaying plucks of six pitches with harmonics; peak 0.25. */
std::vector<float> pluckedTake (int frames, double sampleRate);
}
