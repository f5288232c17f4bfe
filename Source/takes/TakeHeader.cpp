#include "takes/TakeHeader.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
void HeaderBytes::read (std::uint64_t at, unsigned char* bytes, size_t count, const std::string& otherwise) const
{
    if (file.read (at, bytes, count) != count)
        fail (otherwise + "; record or export it again");
}

std::string HeaderBytes::text (std::uint64_t at, size_t count) const
{
    std::string bytes (count, '\0');
    bytes.resize (file.read (at, bytes.data(), count));
    return bytes;
}

void HeaderBytes::truncated (std::uint64_t says, std::uint64_t has) const
{
    fail ("the take is cut short: its header says " + std::to_string (says) + " bytes of sound and " + std::to_string (has)
          + " are there; copy or export it again");
}

void HeaderBytes::checkFormat (double rate, unsigned channels, unsigned bits) const
{
    if (channels < 1 || channels > 2)
        fail ("the take has " + std::to_string (channels) + " channels; expected 1 or 2, so export it in mono or stereo");
    if (! (rate >= 8000.0 && rate <= 192000.0))
        fail ("the take has a sample rate of " + std::to_string (std::lround (std::min (rate, 1e9)))
              + " Hz; expected 8000 to 192000, so convert it first");
    if (bits != 8 && bits != 16 && bits != 24 && bits != 32 && bits != 64)
        fail ("the take has " + std::to_string (bits) + "-bit samples; expected 16, 24 or 32, or float");
}

TakeLayout readTakeHeader (const RegularFile& file, const std::string& name)
{
    const HeaderBytes bytes (file, name);
    if (file.isMissing())
        bytes.fail ("there is no such take; check the name, or record it first");
    if (! file.why().empty())
        bytes.fail (file.why() + "; " + expectedTakeForm);
    if (file.size() == 0)
        bytes.fail (std::string ("the take is empty; ") + expectedTakeForm);
    const auto head = bytes.text (0, 12);
    if (head.size() < 12)
        bytes.fail ("the take is too short to be a recording; record or export it again");
    const auto first = head.substr (0, 4), form = head.substr (8, 4);
    if ((first == "RIFF" || first == "RF64" || first == "BW64") && form == "WAVE")
        return readWavHeader (bytes);
    if (first == "FORM" && (form == "AIFF" || form == "AIFC"))
        return readAiffHeader (bytes);
    if (first == "fLaC")
        return readFlacHeader (bytes);
    bytes.fail (std::string ("this is no WAV, AIFF or FLAC file; ") + expectedTakeForm);
}
}
