#include "CatalogueFixture.h"

#include "circuit/StateForm.h"
#include "filter/FilterDesigner.h"
#include "response/TransferFunction.h"

#include <iostream>
#include <random>

namespace cataloguePropertiesTest
{
using namespace coldiron;
using namespace coldiron::catalogue;

// What holds of every network of resistors, capacitors and coupled coils [calc]: Re Z >= 0, Z12 = Z21, the whole is the
// sum of its sources, every pole in the left half plane. And the filter keeps its bar on circuits of the catalogue.
namespace
{
struct Circuit
{
    Harness harness;
    Setting setting;
    StringSet strings;
    std::string what;
};

Setting randomSetting (const Harness& harness, std::mt19937& random)
{
    Setting setting;
    for (const auto& control : controls (harness))
        if (control.positions.empty())
            setting.knobs[control.name] = std::uniform_int_distribution<int> (0, 20) (random) / 2.0;
        else
            setting.levers[control.name] = control.positions[random() % control.positions.size()];
    return setting;
}

bool isPassive (const Harness& harness)
{
    return std::none_of (harness.parts().begin(), harness.parts().end(),
                         [] (const Part& p) { return p.as<BufferPart>() != nullptr; });
}

/** Every guitar as it comes and with every rewire it can take, each at a few random settings of a fixed seed. */
template <typename Visit>
void visitCatalogue (Visit&& visit)
{
    std::mt19937 random (7);
    const auto presets = shipped();
    const auto rewires = presets.list ("rewires");
    for (const auto& name : presets.list ("guitars"))
    {
        Diagnostics diagnostics;
        const auto guitar = readGuitar (name, presets, diagnostics);
        REQUIRE (guitar.has_value());
        const StringSet strings { guitar->strings, std::vector<bool> (guitar->strings.size(), true) };
        std::vector<std::pair<Harness, std::string>> harnesses { { guitar->harness, name } };
        for (const auto& preset : rewires)
        {
            const auto info = readRewireInfo (preset, presets, diagnostics);
            REQUIRE (info.has_value());
            for (const auto& way : waysToFill (*info, guitar->harness))
            {
                Diagnostics why;
                const auto use = fillRewire (preset, way, guitar->harness, presets, why);
                if (auto rewired = use ? applyRewires (guitar->harness, { *use }, name, why) : std::nullopt)
                    harnesses.push_back ({ std::move (*rewired), name + ", " + preset });
            }
        }
        for (const auto& [harness, what] : harnesses)
            for (int i = 0; i < 2; ++i)
                visit (Circuit { harness, randomSetting (harness, random), strings, what });
    }
}

std::vector<BranchId> sourcesOf (const GuitarCircuit& circuit)
{
    std::vector<BranchId> branches;
    for (const auto& coil : circuit.coils)
        branches.push_back (coil.branch);
    return branches;
}
}

TEST_CASE ("Every circuit of the catalogue without a buffer is passive, stable, reciprocal and the sum of its sources")
{
    int circuits = 0, poles = 0;
    double leastReal = 1e9, rightmost = -1e99, unequal = 0.0, apart = 0.0;
    visitCatalogue (
        [&] (const Circuit& c)
        {
            if (! isPassive (c.harness))
                return;
            const auto built = buildCircuit (c.harness, c.setting, {});
            const auto branches = sourcesOf (built);
            if (built.tip == ground)
                return;
            ++circuits;
            const Network network (built.netlist, branches, built.tip);
            std::vector<std::complex<double>> all (branches.size()), one (1);
            for (const double hz : { 30.0, 400.0, 3000.0, 9000.0, 30000.0 })
            {
                const auto z = network.outputImpedance (hz);
                leastReal = std::min (leastReal, z.real() / std::abs (z));
                if (z.real() < -1e-9 * std::abs (z))
                    FAIL_CHECK (c.what << ": Re Z is " << z.real() << " ohm at " << hz << " Hz");
            }

            // The sources together against each alone in a circuit solved for it.
            network.responses (3000.0, all.data());
            for (size_t k = 0; k < branches.size(); ++k)
            {
                Network (built.netlist, { branches[k] }, built.tip).responses (3000.0, one.data());
                apart = std::max (apart, std::abs (all[k] - one[0]) / (std::abs (one[0]) + 1e-6));
            }

            // What coil a sends through coil b, b sends through a.
            for (size_t k = 1; k < branches.size(); ++k)
            {
                const auto there = branchCurrent (built.netlist, branches[0], branches[k], 3000.0);
                const auto back = branchCurrent (built.netlist, branches[k], branches[0], 3000.0);
                unequal = std::max (unequal, std::abs (there - back) / (std::abs (there) + 1e-12));
            }

            // p = 1 - 1/mu of each eigenvalue mu; those at 0 are no poles.
            const Eigen::VectorXcd eigenvalues = StateForm (built.netlist, branches, built.tip).matrix.eigenvalues();
            for (const auto& mu : eigenvalues)
                if (std::abs (mu) > 1e-9)
                {
                    const auto p = 1.0 - 1.0 / mu;
                    ++poles;
                    rightmost = std::max (rightmost, p.real() / std::abs (p));
                    if (p.real() > 1e-9 * std::abs (p))
                        FAIL_CHECK (c.what << ": a pole at " << p * Equations::shiftHz << " Hz lies in the right half plane");
                }
        });
    std::cout << "Properties: " << circuits << " circuits without a buffer, " << poles << " poles; least Re Z/|Z| " << leastReal
              << ", rightmost pole at Re/|p| " << rightmost << ", reciprocity within " << unequal << ", superposition within "
              << apart << "\n";
    CHECK (circuits > 1000);
    CHECK (poles > 5 * circuits);
    CHECK (unequal < 1e-6);
    CHECK (apart < 1e-6);
}

TEST_CASE ("The filter keeps its bar on a random share of the catalogue")
{
    constexpr double rates[] = { 44100.0, 48000.0, 88200.0, 96000.0, 192000.0 };
    std::mt19937 random (11);
    std::vector<double> circuitOnly, estimated;
    std::string worst;
    visitCatalogue (
        [&] (const Circuit& c)
        {
            if (random() % 8 != 0)
                return;
            const GuitarResponse before (c.harness, randomSetting (c.harness, random), {}, c.strings),
                after (c.harness, c.setting, {}, c.strings);
            if (before.isSilent() || after.isSilent())
                return;
            const TransferFunction transfer (before, after);
            const auto designer = FilterDesigner::shared (rates[random() % 5]);
            const bool mixed = transfer.confidence().isEstimated();
            const auto filter = designFilter (transfer, *designer);
            (mixed ? estimated : circuitOnly).push_back (filter.worstErrorDb);
            if (! mixed && filter.worstErrorDb >= *std::max_element (circuitOnly.begin(), circuitOnly.end()))
                worst = c.what;
        });
    const auto share = [] (std::vector<double> errors, double at)
    {
        std::sort (errors.begin(), errors.end());
        return errors[static_cast<size_t> (at * static_cast<double> (errors.size() - 1))];
    };
    REQUIRE (circuitOnly.size() > 50);
    REQUIRE (estimated.size() > 50);
    std::cout << "Filters on the catalogue: " << circuitOnly.size() << " of the same coils, p99 " << share (circuitOnly, 0.99)
              << ", worst " << share (circuitOnly, 1.0) << " dB (" << worst << "); " << estimated.size() << " estimated, p99 "
              << share (estimated, 0.99) << ", worst " << share (estimated, 1.0) << " dB\n";
    CHECK (share (circuitOnly, 0.99) < 0.1);
    CHECK (share (circuitOnly, 1.0) < 0.5);
    CHECK (share (estimated, 1.0) < 0.25);
}
}
