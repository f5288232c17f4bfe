#include "response/Hum.h"

#include "response/StringResponse.h"

#include <Eigen/Core>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace coldiron
{
namespace
{
struct Drift
{
    double hz, seconds, phase;
};
constexpr Drift drifts[] = { { 0.03, 7.3, 0.0 }, { 0.02, 17.9, 1.0 } };
constexpr double pi = std::numbers::pi;
}

double facingOf (double degrees)
{
    const double within = std::clamp (degrees, 0.0, 90.0);
    return within >= 90.0 ? 0.0 : std::cos (pi * within / 180.0);
}

double mainsHzAt (double hz, double seconds)
{
    for (const auto& drift : drifts)
        hz += drift.hz * std::cos (2.0 * pi * seconds / drift.seconds + drift.phase);
    return hz;
}

double mainsDrift (double seconds)
{
    double cycles = 0.0;
    for (const auto& drift : drifts)
        cycles += drift.hz * drift.seconds / (2.0 * pi) * std::sin (2.0 * pi * seconds / drift.seconds + drift.phase);
    return cycles;
}

std::vector<Harmonic> humSpectrum (const MainsField& field)
{
    struct Limit
    {
        int number;
        double share;
    };
    constexpr Limit supply[] = { { 1, 1.0 }, { 3, 0.05 }, { 5, 0.06 }, { 7, 0.05 }, { 9, 0.015 }, { 11, 0.035 }, { 13, 0.03 } };
    constexpr int highest = 61; // 3 kHz on 50 Hz mains
    std::vector<Harmonic> harmonics;
    double power = 0.0;
    for (int n = 1; n <= highest; n += 2)
    {
        double fieldShare = 0.0;
        for (const auto& limit : supply)
            if (limit.number == n)
                fieldShare = limit.share;
        fieldShare += n > 1 ? field.buzz * 0.5 / (1.0 + 0.01 * n * n) : 0.0; // pulses about a tenth of a cycle long
        if (fieldShare <= 0.0)
            continue;
        harmonics.push_back ({ n, n * fieldShare });
        power += n * fieldShare * n * fieldShare;
    }
    for (auto& harmonic : harmonics)
        harmonic.share /= std::sqrt (power);
    return harmonics;
}

std::complex<double> heardHum (const GuitarResponse& response, double hz, double facing, double mismatch)
{
    Eigen::VectorXcd h (response.numCoils());
    response.humResponses (hz, h.data());
    const auto& coils = response.guitar().coils;
    const auto hasTwin = [&] (size_t k)
    {
        for (size_t other = 0; other < coils.size(); ++other)
            if (other != k && std::abs (std::abs (coils[other].humDrive) - std::abs (coils[k].humDrive)) < 1e-9)
                return true;
        return false;
    };
    double apart = 0.0;
    std::complex<double> loudest;
    for (size_t k = 0; k < coils.size(); ++k)
    {
        const auto& here = h[static_cast<Eigen::Index> (k)];
        if (hasTwin (k))
            apart += 0.5 * mismatch * mismatch * std::norm (here); // two equal coils leave `mismatch` of one
        if (std::abs (here) > std::abs (loudest))
            loudest = here;
    }
    const std::complex<double> together = h.sum();
    // In phase with what is left, or with the loudest coil where nothing is left.
    const auto like = std::abs (together) > 1e-6 * std::abs (loudest) ? together : loudest;
    return std::polar (facing * std::sqrt (std::norm (together) + apart), std::arg (like));
}

double humRms (const GuitarResponse& response, const MainsField& field, double mismatch)
{
    double power = 0.0;
    for (const auto& harmonic : humSpectrum (field))
        power +=
            harmonic.share * harmonic.share * std::norm (heardHum (response, harmonic.number * field.hz, field.facing, mismatch));
    return std::sqrt (power);
}

HumFigures humFigures (const GuitarResponse& response)
{
    const auto db = [] (double ratio) { return 20.0 * std::log10 (std::max (ratio, 1e-15)); };
    double playing = 0.0;
    int count = 0;
    for (double hz = 200.0; hz < 801.0; hz *= std::exp2 (1.0 / 3.0), ++count)
        playing += std::pow (stringResponse (response, hz), 2.0);
    if (! (playing > 0.0))
        return {};
    const MainsField field;
    const double hum = humRms (response, field), asData = humRms (response, field, 0.0);
    return { db (hum / (singleCoilTurns / 5000.0)), db (hum / std::sqrt (playing / count)), hum > std::sqrt (2.0) * asData };
}

HumKind humKind (double playingDb)
{
    return playingDb > 2.5     ? HumKind::more
           : playingDb > -3.0  ? HumKind::like
           : playingDb > -20.0 ? HumKind::less
                               : HumKind::quiet;
}

double humEmfFor (double takeLufs, double db) { return std::pow (10.0, (takeLufs - 3.0103 + db) / 20.0); }
}
