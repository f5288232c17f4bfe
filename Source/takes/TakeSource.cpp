#include "takes/TakeSource.h"

#include "files/Limits.h"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <vector>

namespace coldiron
{
TakeSource::TakeSource (const std::filesystem::path& from)
    : path (from), file (from, "a take"), layout (readTakeHeader (file, from.string()))
{
    open();
    const auto fail = [this] (const std::string& why)
    {
        sf_close (sound);
        throw TakeError (path.string() + ": " + why);
    };
    if (info.channels < 1 || info.channels > 2 || info.samplerate < 8000 || info.samplerate > 192000)
        fail ("the take has " + std::to_string (info.channels) + " channels at " + std::to_string (info.samplerate)
              + " Hz; expected 1 or 2 at 8000 to 192000 Hz, so convert it first");
    const int form = info.format & SF_FORMAT_SUBMASK;
    if (form != SF_FORMAT_PCM_16 && form != SF_FORMAT_PCM_24 && form != SF_FORMAT_PCM_32 && ! isFloat())
        fail ("the take's samples are of a kind we do not read; expected 16, 24 or 32-bit or float, so export it so");
    if (layout.countFrames)
        count();
    if (info.frames < 1)
        fail ("the take holds no sound; record it again");
    if (const double hours = static_cast<double> (info.frames) / info.samplerate / 3600.0; hours > limits::takeHours)
        fail ("the take lasts " + std::to_string (std::lround (hours))
              + " hours; expected at most 12, so cut out the phrase to be heard");
}

TakeSource::~TakeSource() { sf_close (sound); }

bool TakeSource::isFloat() const
{
    const int form = info.format & SF_FORMAT_SUBMASK;
    return form == SF_FORMAT_FLOAT || form == SF_FORMAT_DOUBLE;
}

void TakeSource::open()
{
    info = {};
    place = 0;
    auto io = bytes();
    sound = sf_open_virtual (&io, SFM_READ, &info, this);
    if (sound == nullptr)
        throw TakeError (path.string() + ": the take cannot be read (" + sf_strerror (nullptr)
                         + "); export it again as a 24-bit WAV");
}

/** Reads all of a stream that does not say how long it is, and begins again. */
void TakeSource::count()
{
    std::vector<int> block (65536 * static_cast<size_t> (info.channels));
    std::int64_t total = 0;
    for (sf_count_t got = 0; (got = sf_readf_int (sound, block.data(), 65536)) > 0;)
        total += got;
    sf_close (sound);
    open();
    info.frames = total;
}

std::uint64_t TakeSource::read (void* to, std::uint64_t wanted)
{
    const auto head = static_cast<std::uint64_t> (layout.head.size());
    auto* bytes = static_cast<char*> (to);
    std::uint64_t total = 0;
    wanted = std::min (wanted, place < length() ? length() - place : 0);
    if (place < head)
    {
        total = std::min (wanted, head - place);
        std::memcpy (bytes, layout.head.data() + place, static_cast<size_t> (total));
    }
    if (total < wanted)
        total += file.read (layout.soundAt + (place + total - head), bytes + total, static_cast<size_t> (wanted - total));
    place += total;
    return total;
}

SF_VIRTUAL_IO TakeSource::bytes()
{
    static const auto source = [] (void* user) -> TakeSource& { return *static_cast<TakeSource*> (user); };
    SF_VIRTUAL_IO io {};
    io.get_filelen = [] (void* user) { return static_cast<sf_count_t> (source (user).length()); };
    io.seek = [] (sf_count_t offset, int whence, void* user)
    {
        auto& take = source (user);
        const auto from = whence == SEEK_CUR   ? static_cast<sf_count_t> (take.place)
                          : whence == SEEK_END ? static_cast<sf_count_t> (take.length())
                                               : 0;
        take.place = static_cast<std::uint64_t> (std::max<sf_count_t> (0, from + offset));
        return static_cast<sf_count_t> (take.place);
    };
    io.read = [] (void* to, sf_count_t count, void* user)
    { return count > 0 ? static_cast<sf_count_t> (source (user).read (to, static_cast<std::uint64_t> (count))) : 0; };
    io.write = [] (const void*, sf_count_t, void*) -> sf_count_t { return 0; };
    io.tell = [] (void* user) { return static_cast<sf_count_t> (source (user).place); };
    return io;
}
}
