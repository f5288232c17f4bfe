#include "audition/Renderer.h"

#include "filter/FilterRunner.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
double Rendered::peakDb() const
{
    return peak > 1e-15 ? 20.0 * std::log10 (peak) : -300.0;
}

Rendered renderTake (const std::vector<std::vector<float>>& take, const ModalFilter& filter, double gain,
                     const std::function<void (double)>& progress)
{
    ModalFilter scaled = filter;
    scaled.direct *= gain;
    for (auto& residue : scaled.residues)
        residue *= gain;

    Rendered rendered;
    constexpr size_t block = 32768; // frames
    for (size_t c = 0; c < take.size(); ++c)
    {
        FilterRunner runner; // one a channel, so that any number of channels fits
        runner.use (scaled);
        auto& out = rendered.channels.emplace_back (take[c].size());
        for (size_t from = 0; from < out.size(); from += block)
        {
            const size_t count = std::min (block, out.size() - from);
            runner.process (0, take[c].data() + from, out.data() + from, static_cast<int> (count));
            float most = 0.0f;
            for (size_t i = from; i < from + count; ++i)
                most = std::max (most, std::abs (out[i]));
            rendered.peak = std::max (rendered.peak, static_cast<double> (most));
            if (progress)
                progress ((static_cast<double> (c) + static_cast<double> (from + count) / static_cast<double> (out.size()))
                          / static_cast<double> (take.size()));
        }
    }
    return rendered;
}
}
