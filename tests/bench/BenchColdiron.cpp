#include "Stopwatch.h"

#include <cstdio>

int main()
{
    std::puts ("Each figure: best (median) of its runs, on one thread.");
    coldiron::bench::benchDesigns();
    coldiron::bench::benchRunning();
    coldiron::bench::benchRendering();
    coldiron::bench::benchCircuits();
}
