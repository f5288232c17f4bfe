#pragma once

#include "engine/TakePass.h"
#include "takes/TakeFile.h"

namespace coldiron
{
/** Reads a take block by block, in constant memory, with all the checks of readTake(). */
class TakeReader
{
public:
    explicit TakeReader (const std::filesystem::path&); ///< @throws TakeError as takeInfo() does
    ~TakeReader();
    TakeReader (TakeReader&&) noexcept;
    TakeReader& operator= (TakeReader&&) noexcept;

    const TakeInfo& info() const;
    int64_t bytes() const; ///< of the file; 0 where that cannot be said

    /** The next samples, channels apart. @param most  frames
        @returns false at the end. @throws TakeError where the file is cut short or a sample is no number */
    bool read (Channels& block, size_t most = blockFrames);

private:
    struct Impl;
    std::unique_ptr<Impl> impl;
};

/** Reads what is left of it into memory. @param hear  given each block as it is read; may be empty
    @throws TakeError as TakeReader::read() does */
TakeAudio readTake (TakeReader&, const BlockListener& hear = {});

/** The take from its start, opened again. @throws TakeError at once, and as it is read */
BlockSource blocksOf (const std::filesystem::path& take);
}
