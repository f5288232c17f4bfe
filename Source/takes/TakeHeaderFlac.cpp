// FLAC (RFC 9639): the stream's own description comes first, and after all metadata the frames, each with its number.

#include "takes/TakeHeader.h"

#include <algorithm>
#include <optional>

namespace coldiron
{
namespace
{
constexpr std::uint64_t infoAt = 8;       // the first block's content, after "fLaC" and the block's head
constexpr size_t longestFrame = 4u << 20; // of two channels, looked through from the end of the file

/** The checks of a frame's head and of a whole frame (RFC 9639, 9.1.8 and 9.3): polynomials 0x07 and 0x8005. */
template <typename Word>
Word checksum (const unsigned char* from, size_t count, Word polynomial)
{
    constexpr int top = 8 * sizeof (Word);
    Word sum = 0;
    for (size_t i = 0; i < count; ++i)
    {
        sum = static_cast<Word> (sum ^ static_cast<Word> (from[i]) << (top - 8));
        for (int bit = 0; bit < 8; ++bit)
            sum = static_cast<Word> ((sum >> (top - 1) & 1) != 0 ? sum << 1 ^ polynomial : sum << 1);
    }
    return sum;
}

/** Where a frame ends, counted in samples from the take's first; nothing where no frame's head stands there.
    @param fixedBlock  the samples of every frame but the last, where frames and not samples are numbered */
std::optional<std::uint64_t> endOfFrame (const unsigned char* b, size_t count, unsigned fixedBlock)
{
    if (count < 16 || b[0] != 0xff || (b[1] & 0xfe) != 0xf8)
        return std::nullopt;
    // The number is coded as UTF-8 codes characters, up to 36 bits.
    size_t at = 4;
    const int ones = b[at] < 0x80    ? 0
                     : b[at] < 0xc0  ? -1
                     : b[at] < 0xe0  ? 2
                     : b[at] < 0xf0  ? 3
                     : b[at] < 0xf8  ? 4
                     : b[at] < 0xfc  ? 5
                     : b[at] < 0xfe  ? 6
                     : b[at] == 0xfe ? 7
                                     : -1;
    if (ones < 0)
        return std::nullopt;
    std::uint64_t number = ones == 0 ? b[at] : b[at] & (0x7fu >> ones);
    ++at;
    for (int i = 1; i < ones; ++i)
        number = number << 6 | (b[at++] & 0x3fu);
    const unsigned sizeCode = b[2] >> 4, rateCode = b[2] & 0xf;
    std::uint64_t block = sizeCode == 1                    ? 192
                          : sizeCode >= 2 && sizeCode <= 5 ? 144u << sizeCode
                          : sizeCode >= 8                  ? 1u << sizeCode
                                                           : 0;
    if (sizeCode == 6)
        block = b[at++] + 1u;
    else if (sizeCode == 7)
    {
        block = (b[at] << 8 | b[at + 1]) + 1u;
        at += 2;
    }
    at += rateCode == 12 ? 1 : rateCode == 13 || rateCode == 14 ? 2 : 0;
    if (block == 0 || checksum<std::uint8_t> (b, at, 0x07) != b[at])
        return std::nullopt;
    return ((b[1] & 1) != 0 ? number : number * fixedBlock) + block;
}

/** The length of a stream that does not say it, from its last frame; nothing where the file does not end with a whole one. */
std::optional<std::uint64_t> lengthFromLastFrame (const HeaderBytes& in, unsigned fixedBlock)
{
    const auto stretch = static_cast<size_t> (std::min<std::uint64_t> (in.size(), longestFrame));
    const auto end = in.text (in.size() - stretch, stretch);
    const auto* b = reinterpret_cast<const unsigned char*> (end.data());
    for (size_t from = 2; from <= end.size(); ++from)
    {
        const auto at = end.size() - from;
        const auto length = endOfFrame (b + at, from, fixedBlock);
        if (length && checksum<std::uint16_t> (b + at, from - 2, 0x8005) == (b[end.size() - 2] << 8 | b[end.size() - 1]))
            return length;
    }
    return std::nullopt;
}
}

TakeLayout readFlacHeader (const HeaderBytes& in)
{
    unsigned char block[4], info[34];
    in.read (4, block, sizeof block);
    if ((block[0] & 0x7f) != 0)
        in.fail ("the take's header is broken; export it again");
    in.read (infoAt, info, sizeof info);
    const unsigned rate = info[10] << 12 | info[11] << 4 | info[12] >> 4;
    const unsigned channels = (info[12] >> 1 & 7) + 1, bits = ((info[12] & 1) << 4 | info[13] >> 4) + 1;
    in.checkFormat (rate, channels, bits == 12 || bits == 20 ? bits + 4 : bits);
    const std::uint64_t samples = static_cast<std::uint64_t> (info[13] & 0xf) << 32 | static_cast<std::uint64_t> (info[14]) << 24
                                  | info[15] << 16 | info[16] << 8 | info[17];
    if (samples != 0)
        return {}; // whether they are all there, reading finds out
    const auto length = lengthFromLastFrame (in, static_cast<unsigned> (info[2] << 8 | info[3]));
    TakeLayout layout { in.text (0, infoAt + sizeof info), infoAt + sizeof info, in.size() - infoAt - sizeof info, ! length };
    for (int i = 0; i < 5 && length; ++i)
    {
        auto& byte = layout.head[infoAt + 17 - static_cast<size_t> (i)];
        const auto value = static_cast<unsigned char> (*length >> (8 * i));
        byte = static_cast<char> (i < 4 ? value : (static_cast<unsigned char> (byte) & 0xf0) | (value & 0x0f));
    }
    return layout;
}
}
