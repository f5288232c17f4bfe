#pragma once

#include "analysis/OhmTable.h"

namespace coldiron
{
/** The rows of a table that differ: where the readings are the same whatever a switch says, its position becomes "any" and one row
    is left of them. Rows count as the same within 0.1 % in everything they say. Nothing is lost: putting each position for "any"
    gives the whole table again. */
std::vector<OhmReading> rowsThatDiffer (std::vector<OhmReading> table);

/** Where several volumes are heard at once at every position of the switches: for each of them the reading with the others at 0 and
    it at 10, that tells its pickup apart. Empty for other guitars. @returns the volume, its reading */
std::vector<std::pair<std::string, OhmReading>> volumesApart (const Harness&);
}
