#include "coilfit/CoilFitSolver.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
using FitParameters = FitShape::FitParameters;

class Solver
{
public:
    Solver (const FitShape& s, const FitResiduals& r, const std::array<bool, 5>& free) : shape (s), residuals (r)
    {
        for (int i = 0; i < 5; ++i)
            if (free[(size_t)i] && shape.has (i))
                active.push_back (i);
    }

    /** Readings, then the priors of the active parameters. */
    Eigen::VectorXd residual (const FitParameters& u) const
    {
        const auto read = residuals.of (shape.pickup (u));
        Eigen::VectorXd all (read.size() + (Eigen::Index)active.size());
        all.head (read.size()) = read;
        for (size_t i = 0; i < active.size(); ++i)
            all (read.size() + (Eigen::Index)i) = u[(size_t)active[i]] / FitShape::spread[(size_t)active[i]];
        return all;
    }

    Eigen::MatrixXd jacobian (const FitParameters& u, Eigen::Index rows) const
    {
        constexpr double step = 1e-4; // large against a resonance's 1e-8, small against any curve
        Eigen::MatrixXd result (rows, (Eigen::Index)active.size());
        for (size_t i = 0; i < active.size(); ++i)
        {
            auto up = u, down = u;
            up[(size_t)active[i]] += step;
            down[(size_t)active[i]] -= step;
            result.col ((Eigen::Index)i) = (residual (up) - residual (down)) / (2.0 * step);
        }
        return result;
    }

    FitSolution descend (FitParameters u) const
    {
        auto r = residual (u);
        double cost = r.squaredNorm(), damping = 1e-3;
        for (int round = 0; round < 60 && ! active.empty(); ++round)
        {
            const auto j = jacobian (u, r.size());
            const Eigen::MatrixXd normal = j.transpose() * j;
            const Eigen::VectorXd slope = j.transpose() * r;
            bool better = false;
            double moved = 0.0;
            while (! better && damping < 1e12)
            {
                Eigen::MatrixXd damped = normal;
                damped.diagonal() *= 1.0 + damping;
                const Eigen::VectorXd step = damped.ldlt().solve (-slope);
                auto next = u;
                for (size_t i = 0; i < active.size(); ++i)
                    next[(size_t)active[i]] = std::clamp (u[(size_t)active[i]] + step ((Eigen::Index)i), -6.0, 6.0);
                const auto tried = residual (next);
                better = tried.squaredNorm() < cost;
                damping *= better ? 0.2 : 5.0;
                if (better)
                {
                    moved = step.cwiseAbs().maxCoeff();
                    u = next;
                    r = tried;
                    cost = tried.squaredNorm();
                }
            }
            if (! better || moved < 1e-7)
                break;
        }

        FitSolution solution;
        solution.parameters = u;
        solution.cost = cost;
        const auto count = r.size() - (Eigen::Index)active.size();
        solution.readingCost = r.head (count).squaredNorm();
        solution.information = Eigen::MatrixXd::Zero (5, 5);
        const Eigen::MatrixXd j = jacobian (u, r.size()).topRows (count);
        const Eigen::MatrixXd normal = j.transpose() * j;
        for (size_t i = 0; i < active.size(); ++i)
            for (size_t k = 0; k < active.size(); ++k)
                solution.information (active[i], active[k]) = normal ((Eigen::Index)i, (Eigen::Index)k);
        return solution;
    }

    /** The first guess, and for each of five winding capacitances the best of five inductances: a coil below its
        resonance and one above it can fit the same reading. */
    std::vector<FitParameters> starts (const FitParameters& first) const
    {
        std::vector<FitParameters> best { first };
        for (const double farads : { -1.2, -0.6, 0.0, 0.6, 1.2 })
        {
            auto u = first;
            if (isActive (CoilFit::capacitance))
                u[CoilFit::capacitance] += farads;
            auto nearest = u;
            double least = residual (u).squaredNorm();
            for (const double henries : { -1.0, -0.5, 0.5, 1.0 })
            {
                auto tried = u;
                if (isActive (CoilFit::inductance))
                    tried[CoilFit::inductance] += henries;
                if (const double cost = residual (tried).squaredNorm(); cost < least)
                {
                    least = cost;
                    nearest = tried;
                }
            }
            best.push_back (nearest);
        }
        return best;
    }

private:
    const FitShape& shape;
    const FitResiduals& residuals;
    std::vector<int> active;

    bool isActive (int parameter) const { return std::find (active.begin(), active.end(), parameter) != active.end(); }
};
}

FitSolution solveFit (const FitShape& shape, const FitResiduals& residuals, const std::array<bool, 5>& free,
                      const FitParameters& start)
{
    constexpr double asGood = 9.0;  // a sum of squares this much worse is within three standard deviations
    constexpr double unlike = 0.05; // in logarithms; nearer ones are the same minimum, or matter little

    const Solver solver (shape, residuals, free);
    std::vector<FitSolution> found;
    for (const auto& from : solver.starts (start))
        found.push_back (solver.descend (from));
    std::stable_sort (found.begin(), found.end(), [] (const auto& a, const auto& b) { return a.cost < b.cost; });

    auto best = found.front();
    double widest = unlike;
    for (const auto& other : found)
        if (other.cost < best.cost + asGood)
            for (const int i : { CoilFit::inductance, CoilFit::capacitance })
                if (const double gap = std::abs (other.parameters[(size_t)i] - best.parameters[(size_t)i]); gap > widest)
                {
                    widest = gap;
                    best.rival = other.parameters;
                }
    return best;
}
}
