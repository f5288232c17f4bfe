#pragma once

#include "guitar/Setting.h"

#include <map>
#include <string>

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

    int net (const std::string& fullPoint) const; ///< numbers from 0, ground's net included
    int count() const { return total; }
    bool joined (const std::string& a, const std::string& b) const { return net (a) == net (b); }

private:
    std::map<std::string, int> netOf;
    int total = 0;

    void build (const Harness&, const Setting*, bool ringOnSleeve);
};
}
