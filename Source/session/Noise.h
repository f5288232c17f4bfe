#pragma once

#include "session/Automation.h"
#include "session/JobTree.h"

namespace coldiron
{
/** The hum and hiss that are heard with the playing. */
class Noise
{
public:
    Noise (SharedState&, Automation&);

    double humDb() const { return shared.humDb.load(); } ///< of one coil against the take's loudness; -80 and below is off
    void setHumDb (double);                              ///< -80 to 0
    double mainsHz() const { return shared.mainsHz.load(); }
    void setMainsHz (double);                                            ///< 50 or 60
    double facingDegrees() const { return shared.facingDegrees.load(); } ///< of the coils' axis from the field: 0 faces it
    void setFacingDegrees (double);                                      ///< 0 to 90
    double buzz() const { return shared.buzz.load(); }             ///< current pulses of rectifiers and dimmers on top of the hum
    void setBuzz (double);                                         ///< 0 to 1
    double hissGainDb() const { return shared.hissGainDb.load(); } ///< what an amplifier lifts it by; below 0 is off
    void setHissGainDb (double);                                   ///< -1 to 80

    void keep (JobTree& state) const;
    void restore (const JobTree& state);

private:
    SharedState& shared;
    Automation& automation;

    void set (std::atomic<double>&, double value);
};
}
