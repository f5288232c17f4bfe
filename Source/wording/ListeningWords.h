#pragma once

#include "job/BlindResult.h"

#include <string>

namespace coldiron::wording
{
/** "first" to "ninth"; empty for others. @param place  from 0 */
std::string place (int place);

/** "9 of 10: guessing does that well about 1 time in 93." */
std::string guessing (int right, int trials);

/** "First C, then A and as recorded, then B.", "C and as recorded: 12 of 16: guessing does that well about 1 time in 26." */
std::string blindResult (const BlindResult&);
}
