#include "audition/Voice.h"

#include "audition/Drives.h"
#include "strings/StringMix.h"

#include <array>

namespace coldiron
{
namespace
{
std::vector<BranchId> branchesOf (const GuitarCircuit& circuit)
{
    std::vector<BranchId> branches;
    for (const auto& coil : circuit.coils)
        branches.push_back (coil.branch);
    return branches;
}
}

Voice::Voice (const Harness& harness, const Setting& setting, const Load& load, const StringSet& set,
              const BuildOptions& options)
    : circuit (buildCircuit (harness, setting, load, options)), stringSet (set)
{
    for (const auto& coil : circuit.coils)
        earList.push_back (makeEar (stringSet, coil.bridgeMm, coil.slantMm, coil.hears));
    if (circuit.tip != ground)
        network.emplace (circuit.netlist, branchesOf (circuit), circuit.tip);
}

void Voice::drives (double hz, std::complex<double>* answers) const
{
    const bool heard = ! isSilent();
    if (heard)
        network->responses (hz, answers);
    for (int k = 0; k < numCoils(); ++k)
        answers[k] = heard ? answers[k] * circuit.coils[static_cast<size_t> (k)].stringDrive : 0.0;
}

Eigen::VectorXcd drivesOf (const Voice& voice, double hz)
{
    Eigen::VectorXcd h (voice.numCoils());
    voice.drives (hz, h.data());
    return h;
}

std::complex<double> Voice::plain (double hz) const
{
    return drivesOf (*this, hz).sum();
}

void Voice::humDrives (double hz, std::complex<double>* answers) const
{
    const bool heard = ! isSilent();
    if (heard)
        network->responses (hz, answers);
    for (int k = 0; k < numCoils(); ++k)
        answers[k] = heard ? answers[k] * circuit.coils[static_cast<size_t> (k)].humDrive : 0.0;
}

std::complex<double> Voice::hum (double hz, double facing) const
{
    Eigen::VectorXcd h (numCoils());
    humDrives (hz, h.data());
    return facing * h.sum();
}

double Voice::power (double hz, const StringDraw& draw) const
{
    if (isSilent())
        return 0.0;
    const Eigen::VectorXcd h = drivesOf (*this, hz);
    const Eigen::MatrixXd weights = stringWeights (stringSet, earList, hz, draw);
    return std::max (0.0, (h.adjoint() * weights * h)(0).real());
}

std::complex<double> Voice::outputImpedance (double hz) const
{
    return network ? network->outputImpedance (hz) : 0.0;
}
}
