#pragma once

#include "circuit/Netlist.h"

#include <complex>
#include <vector>

namespace coldiron::support
{
/** Node voltages (ground at 0) per volt of EMF in each drive: plain modified nodal equations in SI units by Gaussian
    elimination in quadruple precision, which shares nothing with the product but the netlist. */
std::vector<std::vector<std::complex<double>>> quadVoltages (const Netlist&, const std::vector<BranchId>& sources, double hz);
}
