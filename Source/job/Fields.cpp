#include "job/Fields.h"

namespace coldiron
{
const std::vector<FieldTable>& fieldTables()
{
    using namespace fields;
    static const std::vector<FieldTable> tables {
        { "a pickup", "## pickups/", { coupling, slant } },
        { "a coil", "A coil:", { dcr, inductance, capacitance, offset, output, turns } },
        { "a loss cell", "A coil:", { lossInductance, lossResistance } },
        { "a taper", "## tapers/", { midTravel } },
        { "a guitar", "## guitars/", { stringHz, scale } },
        { "a run of wire", "## guitars/", { runLength, runPerMetre, runCapacitance } },
        { "a part",
          "Parts, by their first key:",
          { bridgeDistance, pot, knob, capacitor, resistor, inductor, inductorResistance, bufferGain, bufferInput, bufferOutput,
            tolerance } },
        { "a load", "## jobs/", { cable, inputResistance, inputCapacitance } },
        { "what is heard after the jack", "## jobs/", { drive } },
        { "a file of readings", "## readings", { meterAccuracy } },
        { "a blind test", "**Blind tests**", { trials, blindTake } },
    };
    return tables;
}
}
