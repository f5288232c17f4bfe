#pragma once

#include "concurrency/Cancellation.h"
#include "response/CircuitConfig.h"

namespace coldiron
{
/** What one coil adds to the mains hum at the jack. */
struct CoilHum
{
    std::string pickup, coil;
    double share =
        0.0; ///< of one 5000-turn coil's EMF at 100 Hz, facing the field, in step with the coil that hums most; below 0: against it
};

/** Of all coils, in their order; a silent response gives zeros. Their sum is what is left at the jack. */
std::vector<CoilHum> coilHums (const GuitarResponse&);

/** Two pickups of which one coil each is kept, wound alike as they are connected: together they hum like two coils. With
    the other coil of one of them the strings still add, since its magnet is the other way round too, and the hum goes. */
struct OtherCoil
{
    std::string lever, position; ///< where the two sound together; empty: as the option stands
    std::string pickup;          ///< whose coil is to be changed
    std::string kept, other;     ///< keep `other` instead of `kept`
    double humDb = 0.0;          ///< of both together re the louder one alone, as it is
    double otherHumDb = 0.0;     ///< the same with the other coil, each seeing the circuit that its neighbour saw
};

/** Looks at the option's own setting and at every position of every lever, knobs at 10. Either pickup may be the one to
    change, so two answers where both have such a coil; none where nothing is to be won. */
std::vector<OtherCoil> otherCoils (const CircuitConfig&, const Cancellation& = {});
}
