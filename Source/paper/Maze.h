#pragma once

#include "paper/Router.h"

#include <cstddef>

namespace coldiron
{
/** The grid with the wires routed so far. */
class Maze
{
public:
    Maze (const Board&, const std::vector<Port>&);

    void clear();
    void mark (const std::vector<Cell>& path);

    /** The cheapest way between two ports; empty where there is none. */
    std::vector<Cell> find (int start, int goal, double& cost);

    /** What a way costs among the wires marked; negative where it is not allowed. */
    double price (const std::vector<Cell>& path, int start, int goal) const;

    /** Cells free beside a stretch, 0 to `most`, the lesser of both sides; other wires and parts end them. */
    int clearance (const Cell& a, const Cell& b, int most) const;

private:
    int columns, rows;
    std::vector<uint8_t> blocked;
    const std::vector<Port>& ports;
    std::vector<int> owner;
    std::vector<uint8_t> occupied;
    std::vector<float> best;
    std::vector<int> from;
    std::vector<uint32_t> reached; ///< the search that wrote `best` and `from` last
    uint32_t search = 0;

    float& costOf (size_t state);
    size_t at (const Cell& c) const { return static_cast<size_t> (c.row * columns + c.column); }

    /** The cost of a step from one cell, entered in way d, to the next in way e; negative where it is not allowed. */
    float stepCost (int start, int goal, size_t index, int d, int e) const;
};
}
