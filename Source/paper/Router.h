#pragma once

#include "concurrency/Cancellation.h"

#include <cstdint>
#include <utility>
#include <vector>

namespace coldiron
{
/** Ways on the grid, clockwise. */
enum class Heading { right, down, left, up };

struct Cell
{
    int column = 0, row = 0;
    bool operator== (const Cell&) const = default;
};

/** Where wires may end: one lug. Any of its cells serves; a wire never leaves against `out`. */
struct Port
{
    std::vector<Cell> cells; ///< one or more, in a straight line outwards
    Heading out = Heading::right;
};

struct Board
{
    int columns = 0, rows = 0;
    std::vector<uint8_t> blocked; ///< columns * rows, 1 where no wire may pass; the cells of ports count as free
};

struct RouteResult
{
    std::vector<std::vector<Cell>> paths; ///< one a wire, in the order asked for; empty: no way found
    double cost = 0.0;
    int crossings = 0;
};

/** Finds a way for every wire (pairs of indices into `ports`) by ordered A*: wires never share a cell, cross only
    straight over straight, turn on no other wire and touch no lug of others. The order of routing is bettered over
    `rounds` rounds. No randomness: the same input gives the same ways.
    @throws Cancelled */
RouteResult route (const Board&, const std::vector<Port>& ports, const std::vector<std::pair<int, int>>& wires, int rounds,
                   const Cancellation& = {});
}
