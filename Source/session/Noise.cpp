#include "session/Noise.h"

#include "session/KeptState.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
Noise::Noise (SharedState& s, Automation& a) : shared (s), automation (a) {}

void Noise::set (std::atomic<double>& place, double value)
{
    place = value;
    shared.announceHeard();
}

void Noise::setHumDb (double db) { automation.move (ParameterKind::hum, 0, db); }

void Noise::setMainsHz (double hz)
{
    if (std::isfinite (hz))
        set (shared.mainsHz, hz > 55.0 ? 60.0 : 50.0);
}

void Noise::setFacingDegrees (double degrees)
{
    if (std::isfinite (degrees))
        set (shared.facingDegrees, std::clamp (degrees, 0.0, 90.0));
}

void Noise::setBuzz (double share)
{
    if (std::isfinite (share))
        set (shared.buzz, std::clamp (share, 0.0, 1.0));
}

void Noise::setHissGainDb (double db)
{
    if (std::isfinite (db))
        set (shared.hissGainDb, std::clamp (db, -1.0, 80.0));
}

void Noise::keep (JobTree& state) const
{
    state["hum_db"] = humDb();
    state["mains_hz"] = mainsHz();
    state["facing_deg"] = facingDegrees();
    state["buzz"] = buzz();
    state["hiss_db"] = hissGainDb();
}

void Noise::restore (const JobTree& state)
{
    shared.humDb = kept::numberIn (state, "hum_db", -80.0, 0.0, -80.0);
    shared.mainsHz = kept::numberIn (state, "mains_hz", 50.0, 60.0, 50.0) > 55.0 ? 60.0 : 50.0;
    shared.facingDegrees = kept::numberIn (state, "facing_deg", 0.0, 90.0, 0.0);
    shared.buzz = kept::numberIn (state, "buzz", 0.0, 1.0, 0.0);
    shared.hissGainDb = kept::numberIn (state, "hiss_db", -1.0, 80.0, -1.0);
}
}
