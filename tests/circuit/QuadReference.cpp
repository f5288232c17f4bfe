#include "QuadReference.h"

#include <numbers>
#include <stdexcept>

namespace coldiron::support
{
namespace
{
using Quad = __float128;

struct Complex
{
    Quad re = 0, im = 0;

    Complex operator+ (Complex o) const { return { re + o.re, im + o.im }; }
    Complex operator- (Complex o) const { return { re - o.re, im - o.im }; }
    Complex operator* (Complex o) const { return { re * o.re - im * o.im, re * o.im + im * o.re }; }
    Quad square() const { return re * re + im * im; }
    Complex operator/ (Complex o) const
    {
        const auto d = o.square();
        return { (re * o.re + im * o.im) / d, (im * o.re - re * o.im) / d };
    }
};
}

std::vector<std::vector<std::complex<double>>> quadVoltages (const Netlist& netlist, const std::vector<BranchId>& sources,
                                                             double hz)
{
    const auto nodes = (size_t)netlist.numNodes(), branches = netlist.branches().size();
    const auto n = nodes + branches + netlist.followers().size();
    const auto width = n + sources.size();
    std::vector<std::vector<Complex>> a (n, std::vector<Complex> (width));
    const Quad w = 2.0 * std::numbers::pi * hz;

    const auto admittance = [&a] (NodeId from, NodeId to, Complex y)
    {
        const auto i = (size_t)from, j = (size_t)to;
        a[i][i] = a[i][i] + y;
        a[j][j] = a[j][j] + y;
        a[i][j] = a[i][j] - y;
        a[j][i] = a[j][i] - y;
    };
    const auto incidence = [&a] (NodeId node, size_t current, Quad sign)
    {
        a[(size_t)node][current].re += sign;
        a[current][(size_t)node].re += sign;
    };

    for (NodeId node = 1; node < netlist.numNodes(); ++node)
        admittance (node, ground, { 1e-12, 0 });
    for (const auto& r : netlist.resistors())
        admittance (r.a, r.b, { 1 / (Quad)r.ohms, 0 });
    for (const auto& c : netlist.capacitors())
        admittance (c.a, c.b, { 0, w * c.farads });
    for (size_t k = 0; k < branches; ++k)
    {
        const auto& branch = netlist.branches()[k];
        incidence (branch.a, nodes + k, 1);
        incidence (branch.b, nodes + k, -1);
        a[nodes + k][nodes + k] = { -(Quad)branch.ohms, -w * branch.henries };
    }
    for (const auto& m : netlist.couplings())
    {
        const auto i = nodes + (size_t)m.first, j = nodes + (size_t)m.second;
        a[i][j].im -= w * m.henries;
        a[j][i].im -= w * m.henries;
    }
    for (size_t k = 0; k < netlist.followers().size(); ++k)
    {
        const auto& follower = netlist.followers()[k];
        incidence (follower.out, nodes + branches + k, 1);
        a[nodes + branches + k][(size_t)follower.in].re -= follower.gain;
    }
    for (size_t k = 0; k < sources.size(); ++k)
        a[nodes + (size_t)sources[k]][n + k].re = 1;

    // Ground's equation gives way to v = 0.
    a[0].assign (width, {});
    a[0][0].re = 1;

    for (size_t i = 0; i < n; ++i)
    {
        auto best = i;
        for (auto row = i + 1; row < n; ++row)
            if (a[row][i].square() > a[best][i].square())
                best = row;
        std::swap (a[i], a[best]);
        if (a[i][i].square() == 0)
            throw std::runtime_error ("singular");
        for (auto row = i + 1; row < n; ++row)
        {
            if (a[row][i].square() == 0)
                continue;
            const auto factor = a[row][i] / a[i][i];
            for (auto column = i; column < width; ++column)
                a[row][column] = a[row][column] - factor * a[i][column];
        }
    }

    std::vector<std::vector<std::complex<double>>> responses;
    for (size_t k = 0; k < sources.size(); ++k)
    {
        std::vector<Complex> x (n);
        for (auto i = n; i-- > 0;)
        {
            auto sum = a[i][n + k];
            for (auto j = i + 1; j < n; ++j)
                sum = sum - a[i][j] * x[j];
            x[i] = sum / a[i][i];
        }
        auto& voltages = responses.emplace_back();
        for (size_t node = 0; node < nodes; ++node)
            voltages.emplace_back ((double)x[node].re, (double)x[node].im);
    }
    return responses;
}
}
