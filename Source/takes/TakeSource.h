#pragma once

#include "takes/TakeHeader.h"

#include <sndfile.h>

#include <filesystem>
#include <memory>

namespace coldiron
{
/** A take's file opened and checked, its samples to be read in turn through libsndfile. Only takes/ includes this: it is where libsndfile is known. */
class TakeSource
{
public:
    /** @throws TakeError in one line */
    explicit TakeSource (const std::filesystem::path&);
    ~TakeSource();
    TakeSource (const TakeSource&) = delete;
    TakeSource& operator= (const TakeSource&) = delete;

    SNDFILE* handle() const { return sound; }
    double sampleRate() const { return info.samplerate; }
    int channels() const { return info.channels; }
    std::int64_t frames() const { return info.frames; }
    bool isFloat() const; ///< samples are read as floats, else as whole numbers: 24 bits must come out as they went in

private:
    std::filesystem::path path;
    RegularFile file;
    TakeLayout layout;
    std::uint64_t place = 0; ///< of the library, in what it takes for the file
    SNDFILE* sound = nullptr;
    SF_INFO info {};

    std::uint64_t length() const { return layout.head.empty() ? file.size() : layout.head.size() + layout.soundBytes; }
    std::uint64_t read (void* to, std::uint64_t count);
    void open();
    void count();
    static SF_VIRTUAL_IO bytes();
};
}
