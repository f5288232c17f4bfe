#pragma once

// Harnesses of bare parts for the tests, put together by hand.

#include "guitar/Step.h"

#include <string>
#include <vector>

namespace coldiron::support
{
inline Part pot (const std::string& name, double ohms = 500e3)
{
    Part part;
    part.name = name;
    PotPart kind;
    kind.ohms = ohms;
    kind.taper = Taper::logarithmic (0.15);
    part.kind = kind;
    return part;
}

inline Part capacitor (const std::string& name, double farads)
{
    Part part;
    part.name = name;
    part.kind = CapacitorPart { farads };
    return part;
}

inline Part resistor (const std::string& name, double ohms)
{
    Part part;
    part.name = name;
    part.kind = ResistorPart { ohms };
    return part;
}

inline Part jack()
{
    Part part;
    part.name = "jack";
    part.kind = JackPart {};
    return part;
}

inline Coil coil (const std::string& name, double ohms, double henries, double farads, Magnet magnet = Magnet::north)
{
    Coil result;
    result.name = name;
    result.dcrOhms = ohms;
    result.henries = henries;
    result.farads = farads;
    result.magnet = magnet;
    return result;
}

inline Part single (const std::string& name, double ohms = 6e3, double henries = 2.5, double farads = 110e-12)
{
    Part part;
    part.name = name;
    PickupPart kind;
    kind.bridgeMm = 44.0;
    kind.pickup.coils = { coil ("coil", ohms, henries, farads) };
    part.kind = kind;
    return part;
}

/** Two equal coils of opposite magnets, wound alike: 4k, 2 H, 80 pF each, k = 0.15. */
inline Part humbucker (const std::string& name, double coupling = 0.15)
{
    Part part;
    part.name = name;
    PickupPart kind;
    kind.bridgeMm = 44.0;
    kind.pickup.coupling = coupling;
    kind.pickup.coils = { coil ("north", 4e3, 2.0, 80e-12), coil ("south", 4e3, 2.0, 80e-12, Magnet::south) };
    kind.pickup.coils[0].offsetMm = 9.0;
    kind.pickup.coils[1].offsetMm = -9.0;
    part.kind = kind;
    return part;
}

inline SwitchType pullType()
{
    SwitchType type;
    type.name = "Push-pull, two poles";
    type.points = { "a", "a-down", "a-up", "b", "b-down", "b-up" };
    type.positions = { { "down", { { "a", "a-down" }, { "b", "b-down" } } }, { "up", { { "a", "a-up" }, { "b", "b-up" } } } };
    type.rest = "down";
    return type;
}

inline SwitchType toggleType()
{
    SwitchType type;
    type.name = "Three-position toggle";
    type.points = { "neck", "bridge", "out" };
    type.positions = { { "neck", { { "neck", "out" } } },
                       { "both", { { "neck", "out" }, { "bridge", "out" } } },
                       { "bridge", { { "bridge", "out" } } } };
    return type;
}

inline Part lever (const std::string& name, SwitchType type)
{
    Part part;
    part.name = name;
    SwitchPart kind;
    kind.type = std::move (type);
    part.kind = kind;
    return part;
}

/** One pickup, volume, tone, 22 nF: the pickup's hot end is `hot`, its cold end `cold`. */
inline Harness oneVolumeOneTone (Part pickup, double potOhms, const std::string& hot, const std::string& cold)
{
    Harness harness;
    harness.addPart (std::move (pickup));
    harness.addPart (pot ("volume", potOhms));
    harness.addPart (pot ("tone", potOhms));
    harness.addPart (capacitor ("cap", 22e-9));
    harness.addPart (jack());
    harness.solder ({ hot, "volume.3", "tone.1" });
    harness.solder ({ cold, "volume.case", "ground" });
    harness.solder ({ "volume.1", "volume.case" });
    harness.solder ({ "volume.2", "jack.tip" });
    harness.solder ({ "tone.2", "cap.1" });
    harness.solder ({ "cap.2", "tone.case", "ground" });
    return harness;
}

inline Harness seriesHumbucker (double potOhms = 500e3)
{
    auto harness = oneVolumeOneTone (humbucker ("bridge"), potOhms, "bridge.north.start", "bridge.south.start");
    harness.solder ({ "bridge.north.finish", "bridge.south.finish" });
    return harness;
}

/** Two humbuckers, each with volume and tone, and a toggle. */
inline Harness fourKnobs()
{
    Harness harness;
    for (const std::string side : { "neck", "bridge" })
    {
        harness.addPart (humbucker (side));
        harness.addPart (pot (side + "-volume"));
        harness.addPart (pot (side + "-tone"));
        harness.addPart (capacitor (side + "-cap", 22e-9));
    }
    harness.addPart (lever ("selector", toggleType()));
    harness.addPart (jack());
    for (const std::string side : { "neck", "bridge" })
    {
        harness.solder ({ side + ".north.start", side + "-volume.3", side + "-tone.1" });
        harness.solder ({ side + ".north.finish", side + ".south.finish" });
        harness.solder ({ side + ".south.start", side + "-volume.case", "ground" });
        harness.solder ({ side + "-volume.1", side + "-volume.case" });
        harness.solder ({ side + "-volume.2", "selector." + side });
        harness.solder ({ side + "-tone.2", side + "-cap.1" });
        harness.solder ({ side + "-cap.2", side + "-tone.case", "ground" });
    }
    harness.solder ({ "selector.out", "jack.tip" });
    return harness;
}

inline Step solderStep (std::vector<PointName> points)
{
    Step step;
    step.kind = Step::Kind::solder;
    step.points = std::move (points);
    return step;
}

inline Step unsolderStep (const std::string& a, const std::string& b)
{
    Step step;
    step.kind = Step::Kind::unsolder;
    step.points = { a, b };
    return step;
}

inline Step swapStep (const std::string& a, const std::string& b)
{
    Step step;
    step.kind = Step::Kind::swap;
    step.points = { a, b };
    return step;
}

inline Step moveStep (const std::string& what, const std::string& to, const std::string& leaving = {},
                      const std::string& from = {})
{
    Step step;
    step.kind = Step::Kind::move;
    step.points = { what };
    step.to = to;
    step.leaving = leaving;
    step.from = from;
    return step;
}

inline Step fitStep (Part part)
{
    Step step;
    step.kind = Step::Kind::fit;
    step.part = part.name;
    step.as = std::move (part);
    return step;
}

inline Step fitPull (const std::string& name, const std::string& on, const std::string& serves)
{
    Part part = lever (name, pullType());
    part.as<SwitchPart>()->on = on;
    part.serves = serves;
    return fitStep (std::move (part));
}

inline Harness withSteps (Harness harness, const std::vector<Step>& steps)
{
    for (const auto& step : steps)
        harness = applyStep (harness, step);
    return harness;
}
}
