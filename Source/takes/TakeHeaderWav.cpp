// WAV, and its two forms for more than 4 GB: RF64 (EBU Tech 3306) and BW64 (ITU-R BS.2088), whose sizes lie in a chunk
// "ds64". The layout of RIFF and "fmt " is that of the Multimedia Programming Interface and Data Specifications 1.0.

#include "takes/TakeHeader.h"

#include <algorithm>
#include <optional>

namespace coldiron
{
namespace
{
constexpr std::uint64_t unknown32 = 0xffffffffu;
constexpr size_t longestWavFormat = 4096;

std::uint32_t littleEndian32 (const unsigned char* b)
{
    return b[0] | b[1] << 8 | b[2] << 16 | static_cast<std::uint32_t> (b[3]) << 24;
}
std::uint64_t littleEndian64 (const unsigned char* b)
{
    return littleEndian32 (b) | static_cast<std::uint64_t> (littleEndian32 (b + 4)) << 32;
}

std::string bytes (std::uint64_t value, int count)
{
    std::string text;
    for (int i = 0; i < count; ++i)
        text += static_cast<char> (value >> (8 * i));
    return text;
}

/** What programs write where they do not know the length yet: all ones, or about the largest signed number. */
bool isPlaceholder (std::uint64_t length) { return length == unknown32 || (length >= 0x7ffff000u && length <= 0x80000000u); }

class WavHeader
{
public:
    explicit WavHeader (const HeaderBytes& file) : in (file) {}

    TakeLayout read()
    {
        unsigned char head[12];
        in.read (0, head, sizeof head);
        const bool isLong = head[1] != 'I'; // RF64 or BW64
        const auto whole = littleEndian32 (head + 4);
        std::uint64_t at = 12;
        while (in.left (at) >= 8)
        {
            unsigned char chunk[8];
            in.read (at, chunk, sizeof chunk);
            const std::string id (reinterpret_cast<const char*> (chunk), 4);
            std::uint64_t length = littleEndian32 (chunk + 4);
            at += 8;
            if (id == "ds64" && isLong)
                readLongSizes (at, length);
            else if (id == "fmt ")
                readFormat (at, length);
            else if (id == "data")
            {
                if (format.empty())
                    in.fail ("the take's sound comes before its format; export it again");
                return sound (at, length, isLong, isPlaceholder (whole) || whole >= 0xffffffb0u);
            }
            const auto next = at + length + (length & 1u);
            at = (length & 1u) != 0 && ! isChunk (next) && isChunk (at + length) ? unpadded (at + length) : next;
        }
        in.fail (format.empty() ? "the take has no format chunk; export it again" : "the take holds no sound; record it again");
    }

private:
    const HeaderBytes& in;
    std::string format; ///< the chunk's content
    unsigned frameBytes = 0;
    std::uint64_t longSound = 0;
    bool isMended = false;

    /** Some programs forget the byte that fills an odd chunk up. */
    std::uint64_t unpadded (std::uint64_t at)
    {
        isMended = true;
        return at;
    }

    /** Whether a name of a chunk stands there: four printable characters, and its size within the file or not known. */
    bool isChunk (std::uint64_t at) const
    {
        const auto found = in.text (at, 8);
        return found.size() == 8 && std::all_of (found.begin(), found.begin() + 4, [] (char c) { return c >= 32 && c < 127; })
               && (littleEndian32 (reinterpret_cast<const unsigned char*> (found.data()) + 4) <= in.left (at + 8)
                   || found.starts_with ("data"));
    }

    /** Whether chunks, and nothing else, lie from there to the end of the file. */
    bool onlyChunks (std::uint64_t at) const
    {
        while (in.left (at) >= 8)
        {
            if (! isChunk (at))
                return false;
            const auto length = littleEndian32 (reinterpret_cast<const unsigned char*> (in.text (at, 8).data()) + 4);
            at += 8 + std::uint64_t { length } + (length & 1u);
        }
        return true;
    }

    void readLongSizes (std::uint64_t at, std::uint64_t length)
    {
        unsigned char sizes[28];
        if (length < sizeof sizes)
            in.fail ("the take's chunk of long sizes has " + std::to_string (length)
                     + " bytes; expected 28 or more, so export it again");
        in.read (at, sizes, sizeof sizes);
        longSound = littleEndian64 (sizes + 8); // after the size of the whole
    }

    void readFormat (std::uint64_t at, std::uint64_t length)
    {
        if (length < 16)
            in.fail ("the take's format chunk has " + std::to_string (length)
                     + " bytes; expected 16 or more, so export it again");
        unsigned char b[16];
        in.read (at, b, sizeof b);
        const unsigned channels = b[2] | b[3] << 8, bits = b[14] | b[15] << 8;
        in.checkFormat (littleEndian32 (b + 4), channels, bits);
        frameBytes = channels * bits / 8;
        if ((b[12] | b[13] << 8) != static_cast<int> (frameBytes))
            in.fail ("the take's header contradicts itself (bytes of a frame); export it again");
        format = in.text (at, static_cast<size_t> (std::min<std::uint64_t> (length, longestWavFormat)));
    }

    /** @param wholeIsUnknown  the file's first size is a placeholder too, so that of the sound may be any large number */
    TakeLayout sound (std::uint64_t at, std::uint64_t length, bool isLong, bool wholeIsUnknown)
    {
        const auto left = in.left (at);
        auto known = length;
        if (isLong && length == unknown32)
            known = longSound;
        bool toTheEnd =
            known > left
            && (isLong ? known >= unknown32 << 31 : isPlaceholder (known) || (wholeIsUnknown && known >= 0x7ffff000u));
        if (known == 0 && left >= frameBytes && ! onlyChunks (at))
            toTheEnd = true; // the recorder never came to write it
        if (toTheEnd)
            known = left - left % frameBytes;
        if (known > left)
            in.truncated (known, left);
        if (known < frameBytes)
            in.fail ("the take holds no sound; record it again");
        if (! toTheEnd && ! isLong && ! isMended)
            return {};
        return { header (known), at, known, false };
    }

    /** A header that says what is: plain where sizes fit into 32 bits, RF64 else. */
    std::string header (std::uint64_t length) const
    {
        const auto formatChunk =
            "fmt " + bytes (format.size(), 4) + format + (format.size() % 2 == 1 ? std::string (1, '\0') : std::string());
        const auto whole = 4 + formatChunk.size() + 8 + length + length % 2;
        if (whole + 36 < unknown32)
            return "RIFF" + bytes (whole, 4) + "WAVE" + formatChunk + "data" + bytes (length, 4);
        return "RF64" + bytes (unknown32, 4) + "WAVEds64" + bytes (28, 4) + bytes (whole + 36, 8) + bytes (length, 8)
               + bytes (length / frameBytes, 8) + bytes (0, 4) + formatChunk + "data" + bytes (unknown32, 4);
    }
};
}

TakeLayout readWavHeader (const HeaderBytes& file) { return WavHeader (file).read(); }
}
