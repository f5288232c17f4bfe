#pragma once

#include "guitar/GuitarCircuit.h"

#include <optional>
#include <string>

namespace coldiron
{
/** Whether anything is heard at a setting. */
Path pathAt (const Harness&, const Setting&);

/** What is heard at the best of all settings: every position of every switch, the knobs all at 10 and all at 5.
    @returns open as soon as one setting is; else what is wrong at the first */
Path bestPath (const Harness&);

/** What is wrong with a path, for what a reader says: "no coil reaches the jack"; empty for open. */
std::string pathInWords (Path);
}
