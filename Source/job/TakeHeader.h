#pragma once

#include "job/TakeFile.h"

namespace coldiron
{
/** Looks at the first bytes and the chunks of a WAV, AIFF or FLAC file before any library reads it: rate, channels and
    bits within reason, sizes within the file. @throws TakeError */
void checkTakeHeader (const std::filesystem::path&);
}
