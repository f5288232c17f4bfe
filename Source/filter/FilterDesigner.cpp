#include "filter/FilterDesigner.h"

#include "filter/DesignGrid.h"
#include "filter/FilterRunner.h"
#include "filter/MinimumPhase.h"
#include "filter/VectorFit.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <mutex>
#include <stdexcept>

namespace coldiron
{
namespace
{
constexpr double mostGain = 15.848931924611135; ///< +24 dB over the passband
constexpr double silent = 1e-12;
constexpr double magnitudeFloor = 1e-10; ///< below the peak, -200 dB: deeper is as good as silent
constexpr int iterations = 4;
constexpr int stride = 3;                     ///< grid points used by the fit ...
constexpr double curvatureThreshold = 0.03;   ///< ... and all where the gain bends by more than this [neper per step, per step]
constexpr double goodEnoughDb = 0.01;         ///< below the 0.02 dB asked of a shipped rewire
constexpr double goodEnoughEstimatedDb = 0.1; ///< below the 0.25 dB asked of a smoothed comb
constexpr double errorFloor = 1e-3;           ///< 60 dB below the peak: deeper points weigh no more

/** Gain where guitars play their lowest partials: the median from 80 to 800 Hz. */
double passbandGain (const std::vector<double>& hz, const std::vector<double>& magnitude)
{
    std::vector<double> inBand;
    for (size_t k = 0; k < hz.size(); ++k)
        if (hz[k] >= 80.0 && hz[k] <= 800.0)
            inBand.push_back (magnitude[k]);
    auto middle = inBand.begin() + static_cast<std::ptrdiff_t> (inBand.size() / 2);
    std::nth_element (inBand.begin(), middle, inBand.end());
    return *middle;
}

ModalFilter toModal (const RationalFit& fit, double sampleRate)
{
    // w = (z - 1)/(z + 1): c/(w - a) = c/(1 - a) [1 + 2/(1 - a) z^-1/(1 - p z^-1)], p = (1 + a)/(1 - a).
    ModalFilter filter;
    filter.sampleRate = sampleRate;
    filter.direct = fit.direct;
    for (size_t i = 0; i < fit.poles.size(); ++i)
    {
        const auto a = fit.poles[i];
        const auto share = fit.residues[i] / (1.0 - a);
        const bool isReal = a.imag() == 0.0;
        filter.direct += (isReal ? 1.0 : 2.0) * share.real();
        filter.poles.push_back ((1.0 + a) / (1.0 - a));
        filter.residues.push_back (share * 2.0 / (1.0 - a) * (isReal ? 0.5 : 1.0));
    }
    return filter;
}
}

struct FilterDesigner::Impl
{
    double sampleRate = 0.0;
    std::vector<double> hz, w;
    Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor> phaseMatrix; ///< by rows, as it is read

    /** Largest deviation over what counts: 20 Hz to min (20 kHz, 0.45 fs), down to 60 dB below the peak. */
    double worstDb (const RationalFit& fit, const std::vector<double>& target, double peak) const
    {
        const double top = std::min (20e3, 0.45 * sampleRate);
        double most = 1.0; // the largest ratio of powers, either way
        for (size_t k = 0; k < hz.size() && hz[k] <= top; ++k)
            if (hz[k] >= 20.0 && target[k] >= peak * errorFloor)
            {
                const double ratio = std::max (std::norm (fit.at (w[k])), 1e-30) / (target[k] * target[k]);
                most = std::max ({ most, ratio, 1.0 / ratio });
            }
        return 10.0 * std::log10 (most);
    }

    static double bend (const Eigen::VectorXd& logs, size_t k)
    {
        const auto at = static_cast<Eigen::Index> (k);
        return at > 0 && at + 1 < logs.size() ? std::abs (logs[at - 1] - 2.0 * logs[at] + logs[at + 1]) : 0.0;
    }

    static Eigen::VectorXd logsOf (const std::vector<double>& gains)
    {
        return Eigen::Map<const Eigen::ArrayXd> (gains.data(), static_cast<Eigen::Index> (gains.size())).log();
    }

    FitTarget fitTarget (const std::vector<double>& magnitude, double peak, std::vector<size_t>& points) const
    {
        FitTarget target;
        target.leastReal = w.front() / hz.front(); // one hertz on this axis
        const Eigen::VectorXd logs = logsOf (magnitude);
        for (size_t k = 0; k < hz.size(); ++k)
        {
            if (k % stride != 0 && bend (logs, k) <= curvatureThreshold)
                continue;
            points.push_back (k);
            const double phase = phaseMatrix.row (static_cast<Eigen::Index> (k)).dot (logs);
            target.axis.push_back (w[k]);
            target.values.push_back (std::polar (magnitude[k], phase));
            target.weights.push_back (1.0 / std::max (magnitude[k], peak * errorFloor));
        }
        return target;
    }

    /** The same target with its phase taken from a fit F near it: arg T = arg F + K ln |T/F|. The ratio is nearly flat,
        so what lies between the grid points hardly matters, however sharp T's own peaks are.
        Only where F is minimum phase itself, which shows in its phase staying near T's. */
    bool sharpen (FitTarget& target, const std::vector<size_t>& points, const std::vector<double>& magnitude,
                  const RationalFit& fit) const
    {
        Eigen::VectorXd logs (static_cast<Eigen::Index> (hz.size()));
        for (size_t k = 0; k < hz.size(); ++k)
            logs[static_cast<Eigen::Index> (k)] = std::log (magnitude[k] / std::max (std::abs (fit.at (w[k])), 1e-300));
        auto values = target.values;
        for (size_t i = 0; i < values.size(); ++i)
        {
            const double phase = phaseMatrix.row (static_cast<Eigen::Index> (points[i])).dot (logs);
            const auto sharper = std::polar (std::abs (values[i]), std::arg (fit.at (target.axis[i])) + phase);
            if (std::abs (std::arg (sharper / values[i])) > 0.35)
                return false;
            values[i] = sharper;
        }
        target.values = std::move (values);
        return true;
    }
};

FilterDesigner::FilterDesigner (double sampleRate) : impl (std::make_unique<Impl>())
{
    if (! (sampleRate >= 8e3 && sampleRate <= 768e3))
        throw std::invalid_argument ("a sample rate lies between 8 and 768 kHz");
    impl->sampleRate = sampleRate;
    impl->hz = designGrid (sampleRate);
    for (double f : impl->hz)
        impl->w.push_back (warped (f, sampleRate));
    impl->phaseMatrix = minimumPhaseMatrix (impl->w);
}

FilterDesigner::~FilterDesigner() = default;

double FilterDesigner::sampleRate() const { return impl->sampleRate; }

const std::vector<double>& FilterDesigner::gridHz() const { return impl->hz; }

std::vector<double> FilterDesigner::softCapped (const std::vector<double>& magnitude, bool* capped) const
{
    const double passband = std::max (passbandGain (impl->hz, magnitude), silent);
    auto result = magnitude;
    bool any = false;
    for (auto& gain : result)
    {
        const double over = gain / passband;
        any = any || over > mostGain;
        gain = passband * over / std::pow (1.0 + std::pow (over / mostGain, 6.0), 1.0 / 6.0);
    }
    if (capped != nullptr)
        *capped = any;
    return result;
}

ModalFilter FilterDesigner::design (const std::vector<double>& magnitude, bool estimated) const
{
    if (magnitude.size() != impl->hz.size())
        throw std::invalid_argument ("a target has one gain for each grid frequency");
    for (double gain : magnitude)
        if (! (gain >= 0.0 && std::isfinite (gain)))
            throw std::invalid_argument ("a target gain is a number, zero or more");
    if (*std::max_element (magnitude.begin(), magnitude.end()) < silent)
        return ModalFilter::silence (impl->sampleRate);

    const auto [least, most] = std::minmax_element (magnitude.begin(), magnitude.end());
    if (*least > 0.0 && *most / *least - 1.0 < 1e-9) // the same circuit, or one that differs by a plain gain
    {
        auto filter = ModalFilter::unity (impl->sampleRate);
        filter.direct = *most;
        return filter;
    }

    bool capped = false;
    auto target = softCapped (magnitude, &capped);
    const double peak = *std::max_element (target.begin(), target.end());
    for (auto& gain : target)
        gain = std::max (gain, peak * magnitudeFloor);

    std::vector<size_t> points;
    auto fitTarget = impl->fitTarget (target, peak, points);
    const double enough = estimated ? goodEnoughEstimatedDb : goodEnoughDb;
    ModalFilter best;
    const auto tryOrder = [&] (int order)
    {
        const auto fit = fitRational (fitTarget, order, iterations);
        const double error = impl->worstDb (fit, target, peak);
        if (fit.poles.size() <= FilterRunner::maxPoles && (best.poles.empty() || error < best.worstErrorDb))
        {
            best = toModal (fit, impl->sampleRate);
            best.worstErrorDb = error;
        }
        return fit;
    };
    bool isSharp = false;
    for (const int order : estimated ? std::vector<int> { 20, 28, 36 } : std::vector<int> { 10, 14, 20, 28 })
    {
        const auto fit = tryOrder (order);
        if (best.worstErrorDb > enough && ! isSharp)
        {
            isSharp = impl->sharpen (fitTarget, points, target, fit);
            if (isSharp)
                tryOrder (order);
        }
        if (best.worstErrorDb <= enough)
            break;
    }
    best.capped = capped;
    return best;
}

std::shared_ptr<const FilterDesigner> FilterDesigner::shared (double sampleRate)
{
    static std::mutex mutex;
    static std::map<double, std::shared_ptr<const FilterDesigner>> made;
    const std::lock_guard lock (mutex);
    auto& entry = made[sampleRate];
    if (entry == nullptr)
        entry = std::make_shared<const FilterDesigner> (sampleRate);
    return entry;
}
}
