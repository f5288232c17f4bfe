#pragma once

#include <complex>
#include <functional>
#include <map>
#include <string>
#include <vector>

namespace coldiron::support
{
/** The general circuit simulator ngspice, in process: the standing independent check of whole circuits.

    A netlist is its lines without title and `.end`; names count without their case. What is read is named as ngspice
    names its vectors: `tip` for a node's voltage, `vx#branch` for the current into a source's first node.
    The simulator is one for the process, so only one thread may use it. Failures throw std::runtime_error with what
    the simulator printed.
*/
class Ngspice
{
public:
    using Lines = std::vector<std::string>;
    using Names = std::vector<std::string>;

    /** Responses of a small-signal analysis: values[vector][frequency]. */
    struct Ac
    {
        std::vector<double> hz;
        std::vector<std::vector<std::complex<double>>> values;
    };

    /** Voltages over time, at the simulator's own steps: values[vector][step]. */
    struct Transient
    {
        std::vector<double> seconds;
        std::vector<std::vector<double>> values;

        /** One vector read at k / rate, k = 0 .. frames - 1, by a cubic through the four nearest steps. */
        std::vector<double> at (size_t vector, double rate, size_t frames) const;
    };

    /** What an `external` voltage source gives at a time [s]. */
    using Waveform = std::function<double (double seconds)>;

    /** At each of the frequencies: about 0.1 ms each beside the parsing. */
    static Ac ac (const Lines&, const Names& vectors, const std::vector<double>& hz);

    /** `points` per decade, both ends included as ngspice does it: much faster than a list. */
    static Ac acDecades (const Lines&, const Names& vectors, int points, double fromHz, double toHz);

    /** `points` in all, evenly spaced, both ends included. */
    static Ac acLinear (const Lines&, const Names& vectors, int points, double fromHz, double toHz);

    /** Starts with every store empty and steps evenly by `step` seconds (trapezoidal rule: it warps frequencies by
        about (pi f step)^2 / 3 of themselves, so take a step under 1 us for audio).
        @param sources  waveforms of the netlist's `external` voltage sources, by name in lower case; their lines
                        read `vNAME a b external`: version 39 crashes on a `dc` value beside it */
    static Transient transient (const Lines&, const Names& vectors, const std::map<std::string, Waveform>& sources,
                                double seconds, double step);

    /** A recording as a waveform: its samples joined by a windowed sinc of 64 samples, silence around it. */
    static Waveform bandLimited (std::vector<double> samples, double rate);
};
}
