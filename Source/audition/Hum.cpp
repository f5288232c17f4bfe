#include "audition/Hum.h"

#include <Eigen/Core>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace coldiron
{
namespace
{
struct Wander { double hz, seconds, phase; };
constexpr Wander wanders[] = { { 0.03, 7.3, 0.0 }, { 0.02, 17.9, 1.0 } };
constexpr double pi = std::numbers::pi;
}

double facingOf (double degrees)
{
    const double within = std::clamp (degrees, 0.0, 90.0);
    return within >= 90.0 ? 0.0 : std::cos (pi * within / 180.0);
}

double mainsHzAt (double hz, double seconds)
{
    for (const auto& wander : wanders)
        hz += wander.hz * std::cos (2.0 * pi * seconds / wander.seconds + wander.phase);
    return hz;
}

std::vector<Harmonic> humSpectrum (const MainsField& field)
{
    struct Limit { int number; double share; };
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

double humRms (const Voice& voice, const MainsField& field, double mismatch)
{
    double power = 0.0;
    Eigen::VectorXcd h (voice.numCoils());
    for (const auto& harmonic : humSpectrum (field))
    {
        voice.humDrives (harmonic.number * field.hz, h.data());
        const double together = std::norm (h.sum());
        const double apart = 0.5 * mismatch * mismatch * h.squaredNorm(); // two equal coils leave `mismatch` of one
        power += harmonic.share * harmonic.share * (together + apart);
    }
    return std::abs (field.facing) * std::sqrt (power);
}

std::vector<float> synthesizeHum (const Voice& voice, const MainsField& field, double emfRms, double sampleRate, size_t frames)
{
    struct Tone { int number; double re, im; }; // number times the mains, amplitude as a phasor
    std::vector<Tone> tones;
    for (const auto& harmonic : humSpectrum (field))
    {
        const double hz = harmonic.number * field.hz;
        const auto h = voice.hum (hz, field.facing);
        if (hz < 0.49 * sampleRate && std::abs (h) > 0.0)
        {
            const auto amplitude = std::sqrt (2.0) * emfRms * harmonic.share * h
                                   * std::polar (1.0, 0.7 * harmonic.number * harmonic.number); // fixed phases that do not pile up
            tones.push_back ({ harmonic.number, amplitude.real(), amplitude.imag() });
        }
    }

    std::vector<float> hum (frames);
    for (size_t i = 0; i < frames; ++i)
    {
        const double t = static_cast<double> (i) / sampleRate;
        double cycles = field.hz * t; // mainsHzAt, integrated
        for (const auto& wander : wanders)
            cycles += wander.hz * wander.seconds / (2.0 * pi) * std::sin (2.0 * pi * t / wander.seconds + wander.phase);
        const double angle = 2.0 * pi * (cycles - std::floor (cycles));
        // cos and sin of all harmonics from two, by turning: far cheaper than a call each.
        const double c1 = std::cos (angle), s1 = std::sin (angle);
        double c = 1.0, s = 0.0, sum = 0.0;
        int at = 0;
        for (const auto& tone : tones)
        {
            for (; at < tone.number; ++at)
            {
                const double turned = c * c1 - s * s1;
                s = s * c1 + c * s1;
                c = turned;
            }
            sum += c * tone.re - s * tone.im;
        }
        hum[i] = static_cast<float> (sum);
    }
    return hum;
}

double humEmfFor (double takeLufs, double db)
{
    return std::pow (10.0, (takeLufs - 3.0103 + db) / 20.0);
}
}
