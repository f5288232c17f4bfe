#pragma once

#include "guitar/GuitarCircuit.h"

namespace coldiron
{
/** Whether any coil drives the tip: a coil and the jack lie on one loop, that is, two ways without a common node
    lead from the coil's two ends to tip and ground. A hanging coil or a cut wire fails this whatever the values are. */
bool leadsToTip (const GuitarCircuit&);
}
