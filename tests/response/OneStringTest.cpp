// The change for one string alone, against the formula written out a second time:
// |T|^2 = (h_new^H W h_new) / (h_rec^H W h_rec), W_ij = w/2 [c (d_i - d_j) - c (d_i + d_j)],
// c (D) = cos (k D) exp (-(k D sigma)^2 / 2), k = 2 pi f / c_s, c_s = 2 scale f_open, sigma 0.12; w cancels [calc].
#include "response/Band.h"
#include "response/Responses.h"
#include "response/SourceResponses.h"

#include <catch2/catch.hpp>

#include <numbers>

namespace oneStringTest
{
using namespace coldiron;
using namespace coldiron::support;

namespace
{
CircuitConfig at (const std::string& position)
{
    CircuitConfig config { apart(), {}, {}, sixStrings() };
    config.setting.levers["selector"] = position;
    return config;
}

double powerByFormula (const GuitarResponse& response, double openHz, double scaleMm, double hz)
{
    const double k = 2.0 * std::numbers::pi * hz / (2.0 * 1e-3 * scaleMm * openHz);
    const auto c = [&] (double d) { return std::cos (k * d) * std::exp (-0.5 * (k * d * 0.12) * (k * d * 0.12)); };
    const Eigen::VectorXcd h = sourceResponses (response, hz);
    double sum = 0.0;
    for (Eigen::Index i = 0; i < h.size(); ++i)
        for (Eigen::Index j = 0; j < h.size(); ++j)
        {
            const double di = 1e-3 * response.guitar().coils[static_cast<size_t> (i)].bridgeMm,
                         dj = 1e-3 * response.guitar().coils[static_cast<size_t> (j)].bridgeMm;
            sum += 0.5 * (c (di - dj) - c (di + dj)) * (std::conj (h[i]) * h[j]).real();
        }
    return sum;
}
}

TEST_CASE ("one string alone changes as the formula says, and as a guitar with that string alone")
{
    const std::vector<double> hz { 82.0, 196.0, 500.0, 1335.0, 2967.0, 6000.0 };
    for (const int only : { 0, 2, 5 })
    {
        auto bridge = at ("bridge"), both = at ("both");
        bridge.strings.only = both.strings.only = only;
        const auto string = bridge.strings.strings[static_cast<size_t> (only)];
        bridge.strings.played[static_cast<size_t> (only)] = both.strings.played[static_cast<size_t> (only)] =
            false; // asked for all the same
        const GuitarResponse recorded = bridge.response(), option = both.response();
        const auto gains = TransferFunction (recorded, option).gains (hz);

        auto aloneBridge = at ("bridge"), aloneBoth = at ("both");
        for (auto* config : { &aloneBridge, &aloneBoth })
        {
            config->strings.strings = { string };
            config->strings.played = { true };
        }
        const GuitarResponse aloneRecorded = aloneBridge.response(), aloneOption = aloneBoth.response();
        const auto alone = TransferFunction (aloneRecorded, aloneOption).gains (hz);
        for (size_t i = 0; i < hz.size(); ++i)
        {
            INFO (string.name << " at " << hz[i]);
            const double formula = std::sqrt (powerByFormula (option, string.hz, string.scaleMm, hz[i])
                                              / powerByFormula (recorded, string.hz, string.scaleMm, hz[i]));
            CHECK (db (gains[i] / formula) == Approx (0.0).margin (1e-6));
            CHECK (db (gains[i] / alone[i]) == Approx (0.0).margin (1e-6));
            CHECK (db (TransferFunction (recorded, option).gain (hz[i]) / gains[i]) == Approx (0.0).margin (1e-9));
        }
    }
}

TEST_CASE ("strings differ where other coils are heard, and not where the coils are the same")
{
    const auto changeAt = [] (const std::string& position, int only, double hz)
    {
        auto bridge = at ("bridge"), option = at (position);
        bridge.strings.only = option.strings.only = only;
        if (position == "bridge")
            option.setting.knobs["bridge-tone"] = 0.0;
        const GuitarResponse a = bridge.response(), b = option.response();
        return db (TransferFunction (a, b).gain (hz));
    };
    CHECK (std::abs (changeAt ("neck", 0, 700.0) - changeAt ("neck", 5, 700.0)) > 3.0);
    CHECK (changeAt ("bridge", 0, 700.0) == Approx (changeAt ("bridge", 5, 700.0)).margin (1e-9));
    CHECK (changeAt ("bridge", 0, 700.0) == Approx (changeAt ("bridge", -1, 700.0)).margin (1e-9));
}
}
