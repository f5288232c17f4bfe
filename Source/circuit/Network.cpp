#include "circuit/Network.h"

#include "circuit/HessenbergForm.h"
#include "circuit/ModalForm.h"

#include <optional>
#include <stdexcept>

namespace coldiron
{
namespace
{
void validateArguments (const Netlist& netlist, const std::vector<BranchId>& sources, NodeId output)
{
    if (output < 0 || output >= netlist.numNodes())
        throw std::invalid_argument ("the output is no node of the circuit");
    for (const auto source : sources)
        if (source < 0 || source >= (BranchId)netlist.branches().size())
            throw std::invalid_argument ("a source is no branch of the circuit");
}
}

struct Network::Impl
{
    Impl (const Netlist& netlist, const std::vector<BranchId>& sources, NodeId output) : numSources ((int)sources.size())
    {
        validateArguments (netlist, sources, output);
        const StateForm state (netlist, sources, output);
        modal.emplace (state);
        if (! modal->isWellConditioned())
        {
            hessenberg.emplace (state);
            modal.reset();
        }
    }

    void responses (double hz, int first, int count, std::complex<double>* result) const
    {
        const auto w = hz / Equations::shiftHz;
        if (modal)
            modal->responses (w, first, count, result);
        else
            hessenberg->responses (w, first, count, result);
    }

    int numSources;
    std::optional<ModalForm> modal;
    std::optional<HessenbergForm> hessenberg;
};

Network::Network (const Netlist& netlist, std::vector<BranchId> sources, NodeId output)
    : impl (std::make_unique<Impl> (netlist, sources, output))
{
}

Network::~Network() = default;
Network::Network (Network&&) noexcept = default;
Network& Network::operator= (Network&&) noexcept = default;

int Network::numSources() const { return impl->numSources; }

bool Network::isModal() const { return impl->modal.has_value(); }

void Network::responses (double hz, std::complex<double>* responses) const
{
    impl->responses (hz, 0, impl->numSources, responses);
}

std::complex<double> Network::outputImpedance (double hz) const
{
    std::complex<double> impedance;
    impl->responses (hz, impl->numSources, 1, &impedance);
    return impedance;
}
}
