#pragma once

#include <cstdint>

namespace coldiron
{
/** How often JSON was parsed and written since the program began, by any thread: tests hold what an edit costs. */
uint64_t textsParsed();
uint64_t textsWritten();
}
