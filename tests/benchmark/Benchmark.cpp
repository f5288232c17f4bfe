#include "Stopwatch.h"

#include <cstdio>

int main()
{
    std::puts ("Each figure: best (median) of its runs, on one thread.");
    coldiron::support::benchDesigns();
    coldiron::support::benchRunning();
    coldiron::support::benchRendering();
    coldiron::support::benchCircuits();
}
