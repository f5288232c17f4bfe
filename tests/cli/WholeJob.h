#pragma once

#include "Run.h"

#include <nlohmann/json.hpp>

#include <map>
#include <string>
#include <vector>

namespace coldiron::support
{
/** A guitar on the bench and one wish answered, all by the command: `new`, `offer --add`. Requires that both work and that the
    option put in uses the rewire asked for. */
class ShopFloor
{
public:
    ShopFloor (const std::string& guitar, const std::vector<std::string>& at, const std::string& wish, const std::string& rewire);

    const nlohmann::json& option() const { return put; } ///< as it stands in the job

    /** DC ohms at the jack with the switches so; those not named as they come first. "recorded" or the option's letter. */
    double ohms (const std::map<std::string, std::string>& levers = {}, bool recorded = false) const;
    std::string reads (const std::map<std::string, std::string>& levers) const; ///< "ohms", "short", "open"

    nlohmann::json column (bool recorded = false) const; ///< of `compare`

    /** Level at a frequency [dB], at the option's setting. */
    double db (double hz, bool recorded = false) const;

    /** Renders the job. @returns the level of the option's file re the take's as recorded [dB]; -200 where it is silent */
    double renderedDb() const;

private:
    Fixture fixture;
    std::string job, letter;
    nlohmann::json put;

    nlohmann::json reading (const std::map<std::string, std::string>& levers, bool recorded) const;
};

/** What a command prints as JSON; requires that it ends well. */
nlohmann::json printed (const std::vector<std::string>& command);

/** DC resistance of each coil of a pickup preset [ohms], added. */
double pickupOhms (const std::string& preset);
double oneCoilOhms (const std::string& preset);

/** Two resistances in parallel. */
inline double beside (double a, double b) { return a * b / (a + b); }
}
