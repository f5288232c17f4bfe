#pragma once

#include "guitar/SolderPoint.h"

#include <variant>

namespace coldiron
{
/** `PICKUP.hot`, `PICKUP.cold`: every connection from that pickup's side to ground (cold), or every other (hot). */
struct PickupSide
{
    std::string pickup;
    bool cold = false;
};

/** `POT.in`, `POT.out`: the lug that the signal enters or leaves by. */
struct PotLug
{
    std::string pot;
    bool output = false;
};

/** A solder point as a rewire names it: the point itself, or what it is to the wiring ("Roles" in DEVELOPERS.md), with an
    `@` in front of it: where that lead or side lands.

    A part that is no pickup and no pot may have a terminal called like a role (a buffer's `out`). Only a harness tells the
    two apart, so a role is the point of that name as well. */
class PointName
{
public:
    using Role = std::variant<SolderPoint, PickupSide, PotLug>;

    PointName() = default; ///< none: empty()
    PointName (const SolderPoint& named) : point (named) {}

    /** For the layers that still speak in text. */
    PointName (const std::string& text) : PointName (parse (text)) {}
    operator std::string() const { return text(); }

    /** A name that stands in the code. */
    template <size_t size>
    PointName (const char (&literal)[size]) : PointName (parse (literal))
    {
    }

    static PointName parse (const std::string& text);
    static PointName landingOf (PointName); ///< with one `@` more

    int landings() const { return ats; } ///< how many `@` it has: 0 the point or side, 1 where it lands, 2 where that lands
    PointName withoutLanding() const;    ///< with one `@` less, if it has one

    Role role() const;                                     ///< of what stands behind any `@`
    const SolderPoint& literally() const { return point; } ///< the point of that name, read as no role

    std::string text() const { return std::string (static_cast<size_t> (ats), '@') + point.text(); }
    bool empty() const { return ats == 0 && point.empty(); }

    bool operator== (const PointName&) const = default;
    friend std::ostream& operator<< (std::ostream& stream, const PointName& name) { return stream << name.text(); }

private:
    SolderPoint point;
    int ats = 0;
};
}
