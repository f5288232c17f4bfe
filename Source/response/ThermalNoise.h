#pragma once

#include <complex>
#include <functional>

namespace coldiron
{
inline constexpr double boltzmann = 1.380649e-23; ///< [J/K], exact in the SI
inline constexpr double roomKelvin = 293.15;

/** Thermal noise of an impedance, rms over a band: sqrt (4 k T integral of Re Z df) [V]. */
double thermalNoise (const std::function<std::complex<double> (double)>& impedance, double fromHz, double toHz,
                     double kelvin = roomKelvin);
}
