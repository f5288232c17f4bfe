#include "cli/Progress.h"

#include <unistd.h>

#include <cstdio>

namespace coldiron::cli
{
Progress::Progress (std::string what) : label (std::move (what)), onTerminal (isatty (STDERR_FILENO) != 0) {}

Progress::~Progress() { clear(); }

void Progress::clear()
{
    if (shown >= 0)
        std::fprintf (stderr, "\r\033[K");
    shown = -1;
}

void Progress::show (double share)
{
    const int percent = static_cast<int> (100.0 * share);
    if (! onTerminal || percent == shown)
        return;
    shown = percent;
    std::fprintf (stderr, "\r%s %3d %%", label.c_str(), percent);
    std::fflush (stderr);
}
}
