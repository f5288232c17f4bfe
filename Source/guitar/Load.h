#pragma once

namespace coldiron
{
/** What hangs on the jack: cable and input. */
struct Load
{
    double cableFarads = 500e-12;  ///< >= 0
    double inputOhms = 1e6;        ///< > 0
    double inputFarads = 20e-12;   ///< >= 0

    bool operator== (const Load&) const = default;
};
}
