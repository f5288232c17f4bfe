#pragma once

#include <cstdint>

namespace coldiron
{
/** Gaussian samples of unit variance, the same after every reset(). Never allocates; for one thread. */
class WhiteNoise
{
public:
    void reset() { *this = {}; }
    double next();

private:
    uint64_t state = 0x9e3779b97f4a7c15ull;
    double kept = 0.0;
    bool hasKept = false;
};
}
