#include "response/GuitarResponse.h"

#include "response/SourceResponses.h"
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

GuitarResponse::GuitarResponse (const Harness& harness, const Setting& setting, const Load& load, const StringSet& set,
                                const BuildOptions& options)
    : circuit (buildCircuit (harness, setting, load, options)), stringSet (set)
{
    for (const auto& coil : circuit.coils)
        coilPositionList.push_back (coilPositionAt (stringSet, coil.bridgeMm, coil.slantMm, coil.hears));
    if (circuit.tip != ground)
        network.emplace (circuit.netlist, branchesOf (circuit), circuit.tip);
}

void GuitarResponse::sourceResponses (double hz, std::complex<double>* responses) const
{
    const bool heard = ! isSilent();
    if (heard)
        network->responses (hz, responses);
    for (int k = 0; k < numCoils(); ++k)
        responses[k] = heard ? responses[k] * circuit.coils[static_cast<size_t> (k)].stringDrive : 0.0;
}

Eigen::VectorXcd sourceResponses (const GuitarResponse& response, double hz)
{
    Eigen::VectorXcd h (response.numCoils());
    response.sourceResponses (hz, h.data());
    return h;
}

std::complex<double> GuitarResponse::unisonResponse (double hz) const { return coldiron::sourceResponses (*this, hz).sum(); }

void GuitarResponse::humResponses (double hz, std::complex<double>* responses) const
{
    const bool heard = ! isSilent();
    if (heard)
        network->responses (hz, responses);
    for (int k = 0; k < numCoils(); ++k)
        responses[k] = heard ? responses[k] * circuit.coils[static_cast<size_t> (k)].humDrive : 0.0;
}

std::complex<double> GuitarResponse::hum (double hz, double facing) const
{
    Eigen::VectorXcd h (numCoils());
    humResponses (hz, h.data());
    return facing * h.sum();
}

double GuitarResponse::power (double hz, const StringDraw& draw) const
{
    if (isSilent())
        return 0.0;
    const Eigen::VectorXcd h = coldiron::sourceResponses (*this, hz);
    const Eigen::MatrixXd weights = stringWeights (stringSet, coilPositionList, hz, draw);
    return std::max (0.0, (h.adjoint() * weights * h) (0).real());
}

std::complex<double> GuitarResponse::outputImpedance (double hz) const { return network ? network->outputImpedance (hz) : 0.0; }
}
