#include "strings/StringMix.h"

#include <cmath>
#include <numbers>

namespace coldiron
{
namespace
{
constexpr double playedWeight = 1.02, unplayedWeight = 0.02;
constexpr double woundBelowHz = 175.0; ///< open notes below this are wound strings on a guitar
constexpr double woundCornerHz = 4000.0;

double fromDb (double db) { return std::pow (10.0, db / 10.0); }
}

double stringPower (const StringSet& set, int s, double hz, const StringDraw& draw)
{
    if ((draw.onlyString >= 0 && s != draw.onlyString) || (set.only >= 0 && s != set.only))
        return 0.0;
    const auto index = static_cast<size_t> (s);
    const auto& string = set.strings[index];
    const bool isPlayed = draw.onlyString >= 0 || set.only >= 0 || index >= set.played.size() || set.played[index];

    const double below = std::pow (0.94 * string.hz / hz, 24.0); // a string is silent below its open note
    double power = (isPlayed ? playedWeight : unplayedWeight) * std::pow (string.hz, 0.75) / (1.0 + below);
    if (! set.isBass() && string.hz < woundBelowHz)
        power /= 1.0 + (hz / woundCornerHz) * (hz / woundCornerHz);

    double bendDb = index < draw.levelDb.size() ? draw.levelDb[index] : 0.0;
    if (index < draw.slopeDb.size())
        bendDb += draw.slopeDb[index] * std::log2 (hz / 1000.0);
    return bendDb == 0.0 ? power : power * fromDb (bendDb);
}

Eigen::MatrixXd stringWeights (const StringSet& set, const std::vector<CoilPosition>& coilPositions, double hz,
                               const StringDraw& draw)
{
    const auto coils = static_cast<Eigen::Index> (coilPositions.size());
    Eigen::MatrixXd weights = Eigen::MatrixXd::Zero (coils, coils);
    for (int s = 0; s < static_cast<int> (set.strings.size()); ++s)
    {
        const auto index = static_cast<size_t> (s);
        const double power = stringPower (set, s, hz, draw);
        if (power == 0.0)
            continue;
        const double perMetre = 2.0 * std::numbers::pi * hz / set.strings[index].waveSpeed();
        const auto smoothed = [&] (double metres)
        {
            const double angle = perMetre * metres, blur = angle * draw.sigma;
            return std::cos (angle) * std::exp (-0.5 * blur * blur);
        };
        for (Eigen::Index i = 0; i < coils; ++i)
            for (Eigen::Index j = i; j < coils; ++j)
            {
                const auto &a = coilPositions[static_cast<size_t> (i)], &b = coilPositions[static_cast<size_t> (j)];
                if (! a.hears[index] || ! b.hears[index])
                    continue;
                const double di = 1e-3 * a.distanceMm[index], dj = 1e-3 * b.distanceMm[index];
                weights (i, j) += power * 0.5 * (smoothed (di - dj) - smoothed (di + dj));
            }
    }
    return weights.selfadjointView<Eigen::Upper>();
}
}
