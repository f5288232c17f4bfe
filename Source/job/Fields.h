#pragma once

#include "engine/OutputChain.h"
#include "files/Field.h"
#include "guitar/Load.h"
#include "listening/Trials.h"

#include <string>
#include <vector>

/** Every number that jobs and presets hold, and those that are set where they are heard. The readers, the values typed in the
    window, the plugin's parameters, the command's options and the tables of presets/README.md (a test compares them) agree
    because they all take their ranges from here. */
namespace coldiron::fields
{
// A coil.
inline constexpr Field dcr { "dcr", "ohm", 1.0, 1e6, 1.0, true };
inline constexpr Field inductance { "inductance", "H", 1e-4, 100.0, 1.0, true };
inline constexpr Field capacitance { "capacitance", "F", 0.0, 1e-7, 0.0 };
inline constexpr Field lossInductance { "inductance", "H", 1e-4, 100.0, 1.0, true };
inline constexpr Field lossResistance { "resistance", "ohm", 1.0, 1e8, 1e5, true };
inline constexpr Field offset { "offset_mm", "mm", -100.0, 100.0, 0.0 };
inline constexpr Field turns { "turns", "", 1.0, 1e5, 5000.0 };
inline constexpr Field output { "output", "", 1e-3, 100.0, Field::none }; ///< left out: the turns over their standard

// A pickup.
inline constexpr Field coupling { "coupling", "", -0.95, 0.95, 0.0 };
inline constexpr Field slant { "slant_mm", "mm", -100.0, 100.0, 0.0 };

// A taper.
inline constexpr Field midTravel { "mid_travel", "", 0.01, 0.49, Field::none };
inline constexpr Field travel { "travel", "", 0.0, 1.0, 0.0, true };
inline constexpr Field share { "share", "", 0.0, 1.0, 0.0, true };

// A guitar.
inline constexpr Field scale { "scale_mm", "mm", 100.0, 3000.0, 650.0, true };
inline constexpr Field stringHz { "strings", "Hz", 5.0, 5000.0, 100.0, true };
inline constexpr Field runLength { "mm", "mm", 1.0, 5000.0, 100.0, true };
inline constexpr Field runPerMetre { "per_metre", "F", 1e-12, 2e-9, 1e-10, true };
inline constexpr Field runCapacitance { "capacitance", "F", 1e-13, 1e-8, Field::none };

// Its parts. What tolerances and rests are where nothing is said stands with each part (guitar/Part.h).
inline constexpr Field bridgeDistance { "bridge_mm", "mm", 1.0, 2000.0, 50.0, true };
inline constexpr Field pot { "pot", "ohm", 100.0, 1e8, 500e3, true };
inline constexpr Field knob { "rest", "", 0.0, 10.0, 10.0 }; ///< where a pot stands: its rest, a setting, a parameter
inline constexpr Field tolerance { "tolerance", "", 0.0, 0.9, Field::none };
inline constexpr Field capacitor { "capacitor", "F", 1e-13, 1e-3, 1e-9, true };
inline constexpr Field resistor { "resistor", "ohm", 1e-3, 1e10, 1e3, true };
inline constexpr Field inductor { "inductor", "H", 1e-6, 1e3, 1.0, true };
inline constexpr Field inductorResistance { "resistance", "ohm", 0.0, 1e6, 0.0 };
inline constexpr Field bufferGain { "buffer", "", 0.01, 100.0, 1.0, true };
inline constexpr Field bufferInput { "input_resistance", "ohm", 1e3, 1e9, 1e6 };
inline constexpr Field bufferOutput { "output_resistance", "ohm", 1.0, 1e6, 1e3 };

// What hangs on the jack.
inline constexpr Field cable { "cable", "F", 0.0, 1e-6, Load().cableFarads };
inline constexpr Field inputResistance { "resistance", "ohm", 100.0, 1e12, Load().inputOhms };
inline constexpr Field inputCapacitance { "capacitance", "F", 0.0, 1e-6, Load().inputFarads };

// A blind test.
inline constexpr Field trials { "trials", "", AbxTrials::fewest, AbxTrials::most, AbxTrials::fewest, true };
inline constexpr Field right { "right", "", 0.0, AbxTrials::most, 0.0, true };
inline constexpr Field blindTake { "take", "", 1.0, 10000.0, Field::none };

// Readings at the jack.
inline constexpr Field meterAccuracy { "accuracy", "", 1e-3, 0.2, 0.01 }; ///< a share (common practice of the trade, no source)

// What is heard: kept in a job where it says so, in a plugin's state, given to the command.
inline constexpr Field drive { "drive_db", "dB", 0.0, 24.0, 0.0 };
inline constexpr Field hum { "hum_db", "dB", -80.0, 0.0, -80.0 }; ///< the least is none
inline constexpr Field facing { "facing_deg", "deg", 0.0, 90.0, 0.0 };
inline constexpr Field buzz { "buzz", "", 0.0, 1.0, 0.0 };
inline constexpr Field hiss { "hiss_db", "dB", -1.0, 80.0, -1.0 }; ///< below 0 is none
inline constexpr Field trim { "trim_db", "dB", -24.0, 24.0, 0.0 };
}

namespace coldiron
{
/** The fields of one shape, for what goes through them all: the test of presets/README.md. */
struct FieldTable
{
    std::string shape;   ///< "a coil"
    std::string heading; ///< of the section of presets/README.md that describes it
    std::vector<Field> fields;
};
const std::vector<FieldTable>& fieldTables();
}
