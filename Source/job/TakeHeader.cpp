#include "job/TakeHeader.h"

#include <array>
#include <cmath>
#include <cstring>
#include <fstream>

namespace coldiron
{
namespace
{
constexpr const char* expectedForm = "expected a mono or stereo WAV (16, 24, 32-bit or float), AIFF or FLAC file of 8 to 192 kHz";

class HeaderCheck
{
public:
    explicit HeaderCheck (const std::filesystem::path& path) : name (path.string()), stream (path, std::ios::binary)
    {
        std::error_code error;
        const auto status = std::filesystem::status (path, error);
        if (! std::filesystem::exists (status))
            fail ("there is no such take; check the name, or record it first");
        if (! std::filesystem::is_regular_file (status))
            fail (std::string ("this is no file; ") + expectedForm);
        if (! stream)
            fail ("the take cannot be read; may you read it?");
        size = std::filesystem::file_size (path, error);
        if (error || size == 0)
            fail (std::string ("the take is empty; ") + expectedForm);
    }

    void run()
    {
        std::array<unsigned char, 12> head {};
        read (head.data(), head.size(), "the take is too short to be a recording");
        const auto is = [&head] (size_t at, const char* text) { return std::memcmp (head.data() + at, text, 4) == 0; };
        if (is (0, "RIFF") && is (8, "WAVE"))
            checkWav();
        else if (is (0, "FORM") && (is (8, "AIFF") || is (8, "AIFC")))
            checkAiff();
        else if (is (0, "fLaC"))
            checkFlac();
        else
            fail (std::string ("this is no WAV, AIFF or FLAC file; ") + expectedForm);
    }

private:
    const std::string name;
    std::ifstream stream;
    std::uintmax_t size = 0;

    [[noreturn]] void fail (const std::string& message) const { throw TakeError (name + ": " + message); }

    void read (unsigned char* bytes, size_t count, const std::string& otherwise)
    {
        if (! stream.read (reinterpret_cast<char*> (bytes), static_cast<std::streamsize> (count)))
            fail (otherwise + "; record or export it again");
    }

    static std::uint32_t little (const unsigned char* b) { return b[0] | b[1] << 8 | b[2] << 16 | static_cast<std::uint32_t> (b[3]) << 24; }
    static std::uint32_t big (const unsigned char* b) { return static_cast<std::uint32_t> (b[0]) << 24 | b[1] << 16 | b[2] << 8 | b[3]; }

    void checkFormat (double rate, unsigned channels, unsigned bits) const
    {
        if (channels < 1 || channels > 2)
            fail ("the take has " + std::to_string (channels) + " channels; expected 1 or 2, so export it in mono or stereo");
        if (! (rate >= 8000.0 && rate <= 192000.0))
            fail ("the take has a sample rate of " + std::to_string (std::lround (std::min (rate, 1e9))) + " Hz; expected 8000 to 192000, so convert it first");
        if (bits != 8 && bits != 16 && bits != 24 && bits != 32 && bits != 64)
            fail ("the take has " + std::to_string (bits) + "-bit samples; expected 16, 24 or 32, or float");
    }

    [[noreturn]] void truncated (std::uintmax_t says, std::uintmax_t has) const
    {
        fail ("the take is cut short: its header says " + std::to_string (says) + " bytes of sound and " + std::to_string (has)
              + " are there; copy or export it again");
    }

    /** Walks the chunks. `data` is checked against what is left of the file. */
    void checkWav()
    {
        bool hasFormat = false;
        unsigned frameBytes = 0;
        std::uintmax_t at = 12;
        std::array<unsigned char, 8> chunk {};
        while (at + 8 <= size)
        {
            stream.seekg (static_cast<std::streamoff> (at));
            read (chunk.data(), chunk.size(), "the take is cut short in its header");
            const auto length = little (chunk.data() + 4);
            at += 8;
            if (std::memcmp (chunk.data(), "fmt ", 4) == 0)
            {
                std::array<unsigned char, 16> format {};
                if (length < format.size())
                    fail ("the take's format chunk has " + std::to_string (length) + " bytes; expected 16 or more, so export it again");
                read (format.data(), format.size(), "the take is cut short in its header");
                const unsigned channels = format[2] | format[3] << 8, bits = format[14] | format[15] << 8;
                checkFormat (little (format.data() + 4), channels, bits);
                frameBytes = channels * bits / 8;
                if ((format[12] | format[13] << 8) != static_cast<int> (frameBytes))
                    fail ("the take's header contradicts itself (bytes of a frame); export it again");
                hasFormat = true;
            }
            else if (std::memcmp (chunk.data(), "data", 4) == 0)
            {
                if (! hasFormat)
                    fail ("the take's sound comes before its format; export it again");
                if (length > size - at)
                    truncated (length, size - at);
                if (length < frameBytes)
                    fail ("the take holds no sound; record it again");
                return;
            }
            at += length + (length & 1u);
        }
        fail (hasFormat ? "the take holds no sound; record it again" : "the take has no format chunk; export it again");
    }

    /** AIFF's rate is an 80-bit float. */
    static double extended (const unsigned char* b)
    {
        const int exponent = ((b[0] & 0x7f) << 8 | b[1]) - 16383 - 63;
        double mantissa = 0.0;
        for (int i = 2; i < 10; ++i)
            mantissa = mantissa * 256.0 + b[i];
        return (b[0] & 0x80) != 0 ? -1.0 : std::ldexp (mantissa, exponent);
    }

    void checkAiff()
    {
        bool hasFormat = false;
        std::uintmax_t wanted = 0, at = 12;
        std::array<unsigned char, 8> chunk {};
        while (at + 8 <= size)
        {
            stream.seekg (static_cast<std::streamoff> (at));
            read (chunk.data(), chunk.size(), "the take is cut short in its header");
            const auto length = big (chunk.data() + 4);
            at += 8;
            if (std::memcmp (chunk.data(), "COMM", 4) == 0)
            {
                std::array<unsigned char, 18> format {};
                read (format.data(), format.size(), "the take is cut short in its header");
                const unsigned channels = format[0] << 8 | format[1], bits = format[6] << 8 | format[7];
                checkFormat (extended (format.data() + 8), channels, bits);
                wanted = std::uintmax_t { big (format.data() + 2) } * channels * (bits / 8);
                if (wanted == 0)
                    fail ("the take holds no sound; record it again");
                hasFormat = true;
            }
            else if (std::memcmp (chunk.data(), "SSND", 4) == 0)
            {
                const auto left = size - at;
                if (length > left)
                    truncated (length, left);
                if (length < 8 || (hasFormat && wanted > length - 8))
                    truncated (wanted, length < 8 ? 0 : length - 8);
                if (hasFormat)
                    return;
            }
            at += std::uintmax_t { length } + (length & 1u);
        }
        fail (hasFormat ? "the take holds no sound; record it again" : "the take has no format chunk; export it again");
    }

    void checkFlac()
    {
        std::array<unsigned char, 34> info {};
        stream.seekg (4);
        std::array<unsigned char, 4> block {};
        read (block.data(), block.size(), "the take is cut short in its header");
        if ((block[0] & 0x7f) != 0)
            fail ("the take's header is broken; export it again");
        read (info.data(), info.size(), "the take is cut short in its header");
        const unsigned rate = info[10] << 12 | info[11] << 4 | info[12] >> 4;
        const unsigned channels = (info[12] >> 1 & 7) + 1, bits = ((info[12] & 1) << 4 | info[13] >> 4) + 1;
        checkFormat (rate, channels, bits == 12 || bits == 20 ? bits + 4 : bits);
        // How many samples there are is the library's to find out; readTake() counts them.
    }
};
}

void checkTakeHeader (const std::filesystem::path& path)
{
    HeaderCheck (path).run();
}
}
