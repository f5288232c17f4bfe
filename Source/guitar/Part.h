#pragma once

#include "guitar/Coil.h"
#include "guitar/Taper.h"

#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace coldiron
{
struct PickupPart
{
    Pickup pickup;
    double bridgeMm = 0.0; ///< middle of the pickup to the bridge, > 0
};

struct PotPart
{
    double ohms = 500e3; ///< > 0
    Taper taper;
    std::string shaft;       ///< pots on one shaft share a knob of this name; empty: the part's own name
    bool noLoad = false;     ///< no-load: at knob 10 the wiper leaves the track
    bool turnedOver = false; ///< meets its taper from the other end: r(t) = 1 - share(1 - t)
    double tolerance = 0.2;  ///< share of the value
    double rest = 10.0; ///< 0..10: where the knob stands when nothing is said, a blend's detent; the same for all of one shaft
};

struct CapacitorPart
{
    double farads = 0.0;
    double tolerance = 0.1;
};
struct ResistorPart
{
    double ohms = 0.0;
    double tolerance = 0.05;
};
struct InductorPart
{
    double henries = 0.0;
    double ohms = 0.0;
    double tolerance = 0.1;
}; ///< with its own DC resistance

/** What touches what: data, never code. */
struct SwitchType
{
    struct Position
    {
        std::string name;
        std::vector<std::vector<std::string>> contacts; ///< each a group of points that touch
    };

    std::string name;
    std::vector<std::string> points; ///< order kept: it is the order of the lugs
    std::vector<Position> positions; ///< order kept; the first is the default unless `rest` says another
    std::string rest;                ///< empty: none

    const Position* find (const std::string& position) const;
    const Position& standard() const; ///< rest, or the first. @throws HarnessError where there is none
};

struct SwitchPart
{
    SwitchType type;
    std::string on;    ///< sits on this pot (push-pull); empty: stands alone
    std::string shaft; ///< switches thrown together share a name; empty: the part's own name
};

struct JackPart
{
    bool stereo = false;
};

/** An active stage: unity (or given) gain, its own input and output resistance. Points in, out, ground. */
struct BufferPart
{
    double gain = 1.0;
    double inputOhms = 1e6;
    double outputOhms = 1e3;
};

/** One part of a harness and its solder points. */
struct Part
{
    std::string name;
    std::variant<PickupPart, PotPart, CapacitorPart, ResistorPart, InductorPart, SwitchPart, JackPart, BufferPart> kind;
    std::string serves; ///< the pickup to whose side it belongs; empty: none
    std::string preset; ///< the name the values came from, for lists; may be empty

    template <typename T>
    const T* as() const
    {
        return std::get_if<T> (&kind);
    }
    template <typename T>
    T* as()
    {
        return std::get_if<T> (&kind);
    }

    std::vector<std::string> points() const;      ///< without the part's name, e.g. "1", "north.start", "case"
    bool isLead (const std::string& point) const; ///< coil leads and the legs of capacitors, resistors and inductors
    std::string kindName() const;  ///< "pickup", "pot", "capacitor", "resistor", "inductor", "switch", "jack", "buffer"
    std::string knobName() const;  ///< pots: shaft or name
    std::string leverName() const; ///< switches: shaft or name
};

bool operator== (const Part&, const Part&); ///< same name, kind and values
}
