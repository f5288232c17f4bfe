#pragma once

// Voices of the bench's harnesses, for measuring.

#include "guitar/Bench.h"
#include "response/TransferFunction.h"

#include <cmath>

namespace coldiron::support
{
inline StringSet sixStrings (double scaleMm = 647.7)
{
    StringSet set;
    for (const char* name : { "E2", "A2", "D3", "G3", "B3", "E4" })
        set.strings.push_back ({ name, noteHz (name), scaleMm });
    set.played.assign (set.strings.size(), true);
    return set;
}

inline StringSet fourBassStrings()
{
    StringSet set;
    for (const char* name : { "E1", "A1", "D2", "G2" })
        set.strings.push_back ({ name, noteHz (name), 863.6 });
    set.played.assign (set.strings.size(), true);
    return set;
}

/** The pots' ends are not floored: the worked values were made without. */
inline BuildOptions unfloored()
{
    BuildOptions options;
    options.potFloorOhms = 1e-6;
    return options;
}

/** 500 pF of cable and 1 Mohm, nothing else: the load of the worked cases. */
inline Load workedLoad() { return { 500e-12, 1e6, 0.0 }; }

inline double db (std::complex<double> ratio) { return 20.0 * std::log10 (std::abs (ratio)); }

inline GuitarResponse voiceOf (const Harness& harness, const Setting& setting = {}, const Load& load = {},
                               const BuildOptions& options = {})
{
    return GuitarResponse (harness, setting, load, sixStrings(), options);
}

/** Two humbuckers as the selector has them, 152 and 44 mm from the bridge. */
inline Harness apart()
{
    auto harness = fourKnobs();
    Part neck = *harness.find ("neck");
    neck.as<PickupPart>()->bridgeMm = 152.0;
    harness.replacePart ("neck", neck, {});
    return harness;
}

/** The neck pickup turned over: both together are out of phase. */
inline Harness reversedNeck()
{
    auto harness = apart();
    harness.swapLeads ("neck.north.start", "neck.south.start");
    return harness;
}

/** A four-lead humbucker with volume and tone, its two coils wired as asked. */
enum class Wiring { series, parallel, splitOpen, splitShorted };

inline Harness humbuckerWired (Wiring wiring, Part pickup, double potOhms = 500e3)
{
    auto harness = oneVolumeOneTone (std::move (pickup), potOhms, "bridge.north.start",
                                     wiring == Wiring::series ? "bridge.south.start" : "bridge.north.finish");
    switch (wiring)
    {
    case Wiring::series: harness.solder ({ "bridge.north.finish", "bridge.south.finish" }); break;
    case Wiring::parallel: // the south coil turned over: the strings add, the hum goes
        harness.solder ({ "bridge.south.finish", "volume.3" });
        harness.solder ({ "bridge.south.start", "volume.case" });
        break;
    case Wiring::splitOpen: harness.solder ({ "bridge.south.start", "volume.case" }); break;
    case Wiring::splitShorted:
        harness.solder ({ "bridge.south.start", "volume.case" });
        harness.solder ({ "bridge.south.finish", "volume.case" });
        break;
    }
    return harness;
}

/** The highest point of the plain response around the given frequency: (hz, dB re 1). */
inline std::pair<double, double> peakNear (const GuitarResponse& response, double hz)
{
    double low = std::log (0.7 * hz), high = std::log (1.4 * hz);
    for (int i = 0; i < 100; ++i)
    {
        const double a = low + (high - low) / 3.0, b = high - (high - low) / 3.0;
        if (std::abs (response.unisonResponse (std::exp (a))) < std::abs (response.unisonResponse (std::exp (b))))
            low = a;
        else
            high = b;
    }
    return { std::exp (low), db (response.unisonResponse (std::exp (low))) };
}
}
