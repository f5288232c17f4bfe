#pragma once

#include "guitar/Setting.h"

#include <map>

namespace coldiron
{
/** Points joined by wires, landings, joints inside pickups and, where given, closed contacts: union-find. */
class Nets
{
public:
    /** Wires and landings alone: no contact is closed. */
    explicit Nets (const Harness&);

    /** With the contacts that the setting closes. @param ringOnSleeve  a mono plug is in the jack */
    Nets (const Harness&, const Setting&, bool ringOnSleeve = false);

    int net (const SolderPoint&) const; ///< numbers from 0, ground's net included
    int count() const { return total; }
    bool joined (const SolderPoint& a, const SolderPoint& b) const { return net (a) == net (b); }

private:
    std::map<SolderPoint, int> netOf;
    int total = 0;

    void build (const Harness&, const Setting*, bool ringOnSleeve);
};
}
