#pragma once

#include <cmath>
#include <vector>

namespace coldiron::support
{
/** A finely sampled smooth signal, read between its samples by the polynomial through the four nearest; silence around. */
class TruthTable
{
public:
    TruthTable (std::vector<double> values, double rate) : table (std::move (values)), sampleRate (rate) {}

    double operator() (double seconds) const
    {
        const double place = seconds * sampleRate;
        const auto i = static_cast<std::ptrdiff_t> (std::floor (place));
        if (i < 1 || i + 2 >= static_cast<std::ptrdiff_t> (table.size()))
            return 0.0;
        const double f = place - static_cast<double> (i);
        const double* p = table.data() + i;
        return p[-1] * (-f * (f - 1) * (f - 2) / 6) + p[0] * ((f + 1) * (f - 1) * (f - 2) / 2)
               - p[1] * ((f + 1) * f * (f - 2) / 2) + p[2] * ((f + 1) * f * (f - 1) / 6);
    }

private:
    std::vector<double> table;
    double sampleRate;
};
}
