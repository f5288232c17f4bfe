#pragma once

#include <array>
#include <string>
#include <utility>
#include <vector>

namespace coldiron
{
/** One cell of eddy-current loss: a resistance across an inductance, in series with the coil. */
struct LossCell
{
    double henries = 0.0; ///< > 0
    double ohms = 0.0;    ///< > 0
};

enum class Magnet { north, south, none };         ///< the pole that faces the strings
enum class Wound { clockwise, counterClockwise }; ///< seen from the strings, from start to finish

struct Coil
{
    std::string name;     ///< "north", "south", or "coil" where there is one
    double dcrOhms = 0.0; ///< > 0
    double henries = 0.0; ///< the uncelled inductance, >= 0
    double farads = 0.0;  ///< winding capacitance across the whole coil, >= 0
    std::vector<LossCell> losses;
    Magnet magnet = Magnet::north;
    Wound wound = Wound::clockwise;
    double offsetMm = 0.0;          ///< from the pickup's middle, positive towards the neck
    double output = 1.0;            ///< the whole string EMF, relative; > 0. Files leave it out for turns / 5000
    double turns = 5000.0;          ///< > 0; only the hum counts it
    std::vector<std::string> hears; ///< strings heard; empty: all

    /** Sign of the string EMF from start to finish: winding times magnet; 0 without a magnet. */
    int stringSign() const;

    /** Sign of the hum EMF from start to finish: winding alone. */
    int humSign() const;
};

/** How a pickup's values are known, the second of the two marks. Ordered: the weakest first. */
enum class Provenance { assumed, fromOhms, measured };

struct Pickup
{
    std::string name;
    std::vector<Coil> coils; ///< one or more, order kept
    double coupling = 0.0;   ///< k between any two coils, -1 < k < 1, positive when aiding as the string drives them
    std::vector<std::array<std::string, 2>>
        inside;           ///< joints not brought out, as "north.finish"; a lead may be one with "shield"
    double slantMm = 0.0; ///< bridge distance at the lowest string minus that at the highest
    bool shield = false;  ///< has a cover, baseplate or braid to solder to
    Provenance known = Provenance::assumed;
    std::vector<std::pair<std::string, std::string>> colours; ///< lead -> colour, as found on the bench

    /** Whether that lead is joined to cover or braid inside: a two-lead braided pickup's cold lead. */
    bool isOnShieldInside (const std::string& lead) const;
};
}
