#pragma once

#include "circuit/Network.h"
#include "guitar/GuitarCircuit.h"
#include "strings/StringDraw.h"
#include "strings/StringSet.h"

#include <complex>
#include <optional>
#include <vector>

namespace coldiron
{
/** One harness at one setting into one load on one guitar's strings, ready to be asked at any frequency.
    The plot, the table, the command and the sound all ask this one. Immutable; any thread may ask. */
class GuitarResponse
{
public:
    GuitarResponse (const Harness&, const Setting&, const Load&, const StringSet&, const BuildOptions& = {});

    /** No coil reaches the jack, or the jack is shorted. */
    bool isSilent() const { return circuit.path != Path::open || circuit.coils.empty(); }
    const GuitarCircuit& guitar() const { return circuit; }
    const StringSet& strings() const { return stringSet; }
    const std::vector<CoilPosition>& coilPositions() const { return coilPositionList; }
    int numCoils() const { return static_cast<int> (circuit.coils.size()); }

    /** V at the input per volt of each coil's own EMF, times its string drive: h. All zeros when silent.
        Allocates nothing: `responses` has numCoils() places. */
    void sourceResponses (double hz, std::complex<double>* responses) const;

    /** All coils driven alike, each with its string sign. */
    std::complex<double> unisonResponse (double hz) const;

    /** All coils in one field: V at the input per volt of hum EMF of one 5000-turn coil. Coils of equal turns cancel wholly here;
        heardHum() adds what the assumed mismatch leaves.
        @param facing  -1..1, the cosine of the coil axis to the field; 1 is worst */
    std::complex<double> hum (double hz, double facing = 1.0) const;

    /** Hum of each coil alone, in the order of guitar().coils; `responses` has numCoils() places. */
    void humResponses (double hz, std::complex<double>* responses) const;

    /** h^H W h: the power heard from the strings, relative. */
    double power (double hz, const StringDraw& = {}) const;

    /** Impedance seen into the input's node, load and cable included where the response was built with them [ohms];
        0 where tip and sleeve are one node. */
    std::complex<double> outputImpedance (double hz) const;

private:
    GuitarCircuit circuit;
    StringSet stringSet;
    std::vector<CoilPosition> coilPositionList;
    std::optional<Network> network; ///< none where tip and sleeve are one node
};
}
