#include "takes/Resample.h"

#include <soxr.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <stdexcept>
#include <string>

namespace coldiron
{
namespace
{
void checkResampling (soxr_error_t fault)
{
    if (fault != nullptr)
        throw std::runtime_error (std::string ("a sound cannot be brought to another sample rate: ") + fault);
}
}

std::vector<float> resampled (const std::vector<float>& in, double fromRate, double toRate, const Cancellation& isUnwanted)
{
    if (fromRate == toRate || in.empty())
        return in;
    constexpr size_t atOnce = 1 << 15; // samples between two questions whether it is wanted: a few milliseconds
    const auto quality = soxr_quality_spec (SOXR_VHQ, 0);
    soxr_error_t fault = nullptr;
    const std::unique_ptr<soxr, decltype (&soxr_delete)> resampler (
        soxr_create (fromRate, toRate, 1, &fault, nullptr, &quality, nullptr), &soxr_delete);
    checkResampling (fault);

    std::vector<float> out (static_cast<size_t> (std::llround (static_cast<double> (in.size()) * toRate / fromRate)));
    for (size_t read = 0, written = 0; written < out.size();)
    {
        isUnwanted.check();
        const size_t count = std::min (atOnce, in.size() - read);
        size_t taken = 0, made = 0;
        checkResampling (soxr_process (resampler.get(), count > 0 ? in.data() + read : nullptr, count, &taken,
                                       out.data() + written, std::min (atOnce, out.size() - written), &made));
        if (taken == 0 && made == 0 && count == 0)
            break; // the rest, less than a sample or two, is silence
        read += taken;
        written += made;
    }
    return out;
}
}
