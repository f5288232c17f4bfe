// AIFF and AIFF-C: chunks in any order, numbers with their greatest byte first (Audio Interchange File Format 1.3; the
// field layout is from memory of it).

#include "takes/TakeHeader.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
constexpr size_t longestAiffFormat = 4096;
constexpr std::uint64_t placeholder = 0x7f000000u; // from here on no length is meant: programs that write into a pipe

std::uint32_t bigEndian32 (const unsigned char* b)
{
    return static_cast<std::uint32_t> (b[0]) << 24 | b[1] << 16 | b[2] << 8 | b[3];
}

std::string bytes32 (std::uint64_t value)
{
    return { static_cast<char> (value >> 24), static_cast<char> (value >> 16), static_cast<char> (value >> 8),
             static_cast<char> (value) };
}

/** AIFF's rate is an 80-bit float. */
double extended (const unsigned char* b)
{
    const int exponent = ((b[0] & 0x7f) << 8 | b[1]) - 16383 - 63;
    double mantissa = 0.0;
    for (int i = 2; i < 10; ++i)
        mantissa = mantissa * 256.0 + b[i];
    return (b[0] & 0x80) != 0 ? -1.0 : std::ldexp (mantissa, exponent);
}

class AiffHeader
{
public:
    explicit AiffHeader (const HeaderBytes& file) : in (file) {}

    TakeLayout read()
    {
        std::uint64_t at = 12;
        while (in.left (at) >= 8 && ! (hasSound && ! format.empty()))
        {
            unsigned char chunk[8];
            in.read (at, chunk, sizeof chunk);
            const std::string id (reinterpret_cast<const char*> (chunk), 4);
            const std::uint64_t length = bigEndian32 (chunk + 4);
            at += 8;
            if (id == "COMM")
                readFormat (at, length);
            else if (id == "SSND")
                readSound (at, length);
            at += length + (length & 1u);
        }
        if (format.empty())
            in.fail ("the take has no format chunk; export it again");
        if (! hasSound)
            in.fail ("the take holds no sound; record it again");
        return layout();
    }

private:
    const HeaderBytes& in;
    std::string format;
    bool hasSound = false, isFirst = false; ///< first: the sound comes before the format
    unsigned frameBytes = 0;
    std::uint64_t frames = 0, soundAt = 0, soundLength = 0, offset = 0;

    void readFormat (std::uint64_t at, std::uint64_t length)
    {
        unsigned char b[18];
        in.read (at, b, sizeof b);
        const unsigned channels = b[0] << 8 | b[1], bits = b[6] << 8 | b[7];
        in.checkFormat (extended (b + 8), channels, bits);
        frames = bigEndian32 (b + 2);
        frameBytes = channels * (bits / 8);
        format = in.text (at, static_cast<size_t> (std::min<std::uint64_t> (length, longestAiffFormat)));
        isFirst = hasSound;
    }

    void readSound (std::uint64_t at, std::uint64_t length)
    {
        unsigned char b[8];
        in.read (at, b, sizeof b, "the take holds no sound");
        hasSound = true;
        offset = bigEndian32 (b); // of the first sample from here
        soundAt = at + 8;
        soundLength = length;
    }

    TakeLayout layout() const
    {
        const auto left = in.left (soundAt);
        const auto says = soundLength < 8 ? 0 : soundLength - 8;
        const auto wanted = frames * frameBytes;
        const bool lengthUnknown = says == 0 || soundLength >= placeholder;
        const bool framesUnknown = frames == 0 || wanted >= placeholder;
        const bool toTheEnd = lengthUnknown && (framesUnknown || wanted > left) && left >= offset + frameBytes;
        if (toTheEnd)
            return mended ((left - offset) - (left - offset) % frameBytes);
        if (says > left)
            in.truncated (soundLength, left + 8);
        if (wanted == 0)
            in.fail ("the take holds no sound; record it again");
        if (wanted + offset > says)
            in.truncated (wanted, says < offset ? 0 : says - offset);
        return isFirst ? mended (wanted) : TakeLayout {};
    }

    TakeLayout mended (std::uint64_t length) const
    {
        if (length >= placeholder)
            in.fail ("the take's header does not say how long it is, and it is too long for an AIFF; export it again as WAV");
        const auto form = in.text (8, 4);
        auto chunk = format;
        chunk.replace (2, 4, bytes32 (length / frameBytes));
        if (chunk.size() % 2 == 1)
            chunk += '\0';
        const auto version = form == "AIFC" ? "FVER" + bytes32 (4) + bytes32 (0xa2805140u) : std::string();
        const auto chunks =
            form + version + "COMM" + bytes32 (format.size()) + chunk + "SSND" + bytes32 (length + 8) + bytes32 (0) + bytes32 (0);
        return { "FORM" + bytes32 (chunks.size() + length) + chunks, soundAt + offset, length, false };
    }
};
}

TakeLayout readAiffHeader (const HeaderBytes& file) { return AiffHeader (file).read(); }
}
