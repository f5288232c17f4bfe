#include "audition/PickupsHeard.h"

#include "audition/Drives.h"

namespace coldiron
{
std::set<std::string> pickupsHeard (const Side& side)
{
    constexpr double share = 0.03;
    const Voice voice = side.voice();
    std::set<std::string> heard;
    if (voice.isSilent())
        return heard;
    const auto drives = drivesOf (voice, 500.0);
    const double most = drives.cwiseAbs().maxCoeff();
    for (int i = 0; i < voice.numCoils(); ++i)
        if (std::abs (drives[i]) > share * most)
            heard.insert (voice.guitar().coils[static_cast<size_t> (i)].pickup);
    return heard;
}
}
