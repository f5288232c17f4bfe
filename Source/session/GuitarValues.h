#pragma once

#include "guitar/Coil.h"
#include "session/JobEdit.h"

#include <optional>
#include <string>
#include <vector>

namespace coldiron
{
class JobEditor;
struct Job;

/** A value of the guitar, or of what hangs on it, that can be typed. */
struct GuitarValue
{
    enum class Kind {
        pickupOhms,
        jackOhms,
        pot,
        capacitor,
        resistor,
        inductor,
        bridgeMm,
        scaleMm,
        cable,
        inputOhms,
        inputFarads
    };
    enum class Side { guitar, recording, listening };

    Kind kind = Kind::pot;
    std::string part;                       ///< of the guitar; empty where the value belongs to none
    double number = 0.0;                    ///< base units; mm
    double last = 0.0;                      ///< scale: that of the highest string
    std::string taper;                      ///< pots
    Provenance known = Provenance::assumed; ///< pickups
    Side side = Side::guitar;

    bool isSame (const GuitarValue& o) const { return kind == o.kind && part == o.part && side == o.side; } ///< of the same thing
};

/** Pickups first, then pots, capacitors, resistors, inductors in the harness's order, distances, the scale. */
std::vector<GuitarValue> valuesOf (const Job&);

/** What a meter would read of one pickup alone at the jack; nothing where no switch position leaves it alone.
    @param where  set to the switches in words: "selector at bridge, all knobs at 10" */
std::optional<GuitarValue> jackValueOf (const Job&, const std::string& pickup, std::string& where);

/** Cable and input of the recording or of the listening. */
std::vector<GuitarValue> loadValuesOf (const Job&, GuitarValue::Side);

/** As it would be typed: "500k log-15", "22n", "44". */
std::string typedText (const GuitarValue&);

/** What may be typed there, in few words. */
std::string typingHint (const GuitarValue&);

/** A number as people type it: "22n", "22 nF", "0.022 uF", "4k7", "500K", "1,5k". Nothing for anything else. */
std::optional<double> typedQuantity (std::string text);

/** The next preferred value above or below what is typed: E12 for capacitors, E24 for resistors (IEC 60063), 1-2.5-5 for
    pots, 1 mm for lengths, 10 p for cables. What cannot be read steps from the value that stands. */
std::string steppedText (const GuitarValue&, const std::string& typed, int direction);

/** What typing that does. A refusal says what was found, what is expected, and nothing is changed. */
JobEdit typedEdit (const JobEditor&, const GuitarValue&, const std::string& typed);
}
