#pragma once

#include <functional>
#include <string>
#include <vector>

namespace coldiron::bench
{
/** What a simulator's transient analysis made, at its own uneven steps. */
struct TransientRun
{
    std::vector<double> seconds, volts;

    /** The voltage between the steps, by the polynomial through the six nearest. */
    double at (double time) const;

    /** At i / sampleRate, i < frames. */
    std::vector<double> sampled (double sampleRate, size_t frames) const;
};

/** Runs a netlist by ngspice's transient analysis.
    @param lines   the circuit, without a title, an analysis or .end; sources written `vNAME a b external` are asked
                   for their voltage at any time and all get the same
    @param node    whose voltage is wanted
    @throws std::runtime_error when ngspice makes nothing of it */
TransientRun transientRun (const std::vector<std::string>& lines, const std::string& node, double seconds,
                           double step, const std::function<double (double)>& source);

/** A table of a smooth signal, read between its places by the polynomial through the four nearest. */
class SmoothTable
{
public:
    SmoothTable (std::vector<double> values, double rate) : table (std::move (values)), sampleRate (rate) {}
    double operator() (double seconds) const;

private:
    std::vector<double> table;
    double sampleRate;
};
}
