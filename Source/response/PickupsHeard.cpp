#include "response/PickupsHeard.h"

#include "response/SourceResponses.h"

namespace coldiron
{
std::set<std::string> pickupsHeard (const CircuitConfig& config)
{
    constexpr double share = 0.03;
    const GuitarResponse response = config.response();
    std::set<std::string> heard;
    if (response.isSilent())
        return heard;
    const auto h = sourceResponses (response, 500.0);
    const double most = h.cwiseAbs().maxCoeff();
    for (int i = 0; i < response.numCoils(); ++i)
        if (std::abs (h[i]) > share * most)
            heard.insert (response.guitar().coils[static_cast<size_t> (i)].pickup);
    return heard;
}
}
