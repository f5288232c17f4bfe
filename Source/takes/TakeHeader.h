#pragma once

#include "files/RegularFile.h"
#include "takes/TakeFile.h"

#include <array>
#include <cstdint>
#include <string>

namespace coldiron
{
/** How a take's file is to be read: as it lies there, or, where its header is true in no way a library understands, a
    header of our own before the stretch of the file that is its sound.

    Programs that write into a pipe cannot go back to say how long the sound was, and leave all ones, the largest number
    or nothing there; so does a recorder that lost power. Such takes end where their file ends. */
struct TakeLayout
{
    std::string head;          ///< empty: the file is read as it lies there
    std::uint64_t soundAt = 0; ///< first byte of the sound, after `head`
    std::uint64_t soundBytes = 0;
    bool countFrames = false; ///< FLAC that does not say how long it is, and whose last frame does not either
};

/** Looks at the first bytes and the chunks of a WAV, RF64, BW64, AIFF or FLAC file before any library reads it: rate,
    channels and bits within reason, sizes within the file. @throws TakeError */
TakeLayout readTakeHeader (const RegularFile&, const std::string& name);

/** The bytes of a take's file and the words for what is wrong with it. */
class HeaderBytes
{
public:
    HeaderBytes (const RegularFile& opened, const std::string& takeName) : file (opened), name (takeName) {}

    std::uint64_t size() const { return file.size(); }
    std::uint64_t left (std::uint64_t at) const { return at < size() ? size() - at : 0; }
    void read (std::uint64_t at, unsigned char* bytes, size_t count,
               const std::string& otherwise = "the take is cut short in its header") const;
    std::string text (std::uint64_t at, size_t count) const; ///< fewer bytes at the end

    [[noreturn]] void fail (const std::string& message) const { throw TakeError (name + ": " + message); }
    [[noreturn]] void truncated (std::uint64_t says, std::uint64_t has) const;
    void checkFormat (double rate, unsigned channels, unsigned bits) const;

private:
    const RegularFile& file;
    const std::string name;
};

inline constexpr const char* expectedTakeForm =
    "expected a mono or stereo WAV (16, 24, 32-bit or float), AIFF or FLAC file of 8 to 192 kHz";

TakeLayout readWavHeader (const HeaderBytes&);
TakeLayout readAiffHeader (const HeaderBytes&);
TakeLayout readFlacHeader (const HeaderBytes&);
}
