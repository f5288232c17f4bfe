#include "paper/Router.h"

#include "paper/Maze.h"

#include <algorithm>
#include <cstdlib>
#include <limits>

namespace coldiron
{
namespace
{
constexpr double noWay = 400.0;
constexpr int mostRefined = 8; // what it costs in time is worth it for the first few alone

int countCrossings (const std::vector<std::vector<Cell>>& paths, int columns, int rows)
{
    std::vector<uint8_t> passes (static_cast<size_t> (columns * rows));
    int count = 0;
    for (const auto& path : paths)
        for (size_t k = 1; k + 1 < path.size(); ++k)
            count += passes[static_cast<size_t> (path[k].row * columns + path[k].column)]++ > 0;
    return count;
}

using Wires = std::vector<std::pair<int, int>>;
using Paths = std::vector<std::vector<Cell>>;

void markOthers (Maze& maze, const Paths& paths, size_t but)
{
    maze.clear();
    for (size_t w = 0; w < paths.size(); ++w)
        if (w != but)
            maze.mark (paths[w]);
}

/** What all the ways cost, each among all others: a crossing counts for both. */
double priceOfAll (Maze& maze, const Wires& wires, const Paths& paths)
{
    double total = 0.0;
    for (size_t w = 0; w < paths.size(); ++w)
    {
        markOthers (maze, paths, w);
        const double price = paths[w].empty() ? noWay : maze.price (paths[w], wires[w].first, wires[w].second);
        total += price < 0.0 ? noWay : price;
    }
    return total;
}

/** Takes out one wire after another and finds it a way among all others, until none gains. */
void refine (Maze& maze, const Wires& wires, Paths& paths, const Cancellation& isUnwanted)
{
    for (int pass = 0; pass < 4; ++pass)
    {
        bool gained = false;
        for (size_t w = 0; w < paths.size(); ++w)
        {
            isUnwanted.check();
            markOthers (maze, paths, w);
            const double before = paths[w].empty() ? noWay : maze.price (paths[w], wires[w].first, wires[w].second);
            double after = 0.0;
            auto way = maze.find (wires[w].first, wires[w].second, after);
            if (! way.empty() && (before < 0.0 || after < before - 0.01))
            {
                paths[w] = std::move (way);
                gained = true;
            }
        }
        if (! gained)
            return;
    }
}

/** The corners of a way, both ends included. */
std::vector<Cell> cornersOf (const std::vector<Cell>& path)
{
    std::vector<Cell> corners { path.front() };
    for (size_t k = 1; k + 1 < path.size(); ++k)
        if (path[k - 1].column != path[k + 1].column && path[k - 1].row != path[k + 1].row)
            corners.push_back (path[k]);
    corners.push_back (path.back());
    return corners;
}

/** Every cell between corners; empty where two of them are on no straight line. */
std::vector<Cell> filled (const std::vector<Cell>& corners)
{
    std::vector<Cell> path { corners.front() };
    for (size_t i = 1; i < corners.size(); ++i)
    {
        const int dx = corners[i].column - path.back().column, dy = corners[i].row - path.back().row;
        if (dx != 0 && dy != 0)
            return {};
        while (! (path.back() == corners[i]))
            path.push_back ({ path.back().column + (dx > 0) - (dx < 0), path.back().row + (dy > 0) - (dy < 0) });
    }
    return path;
}

/** Slides each middle stretch to where its channel is widest, as long as the way costs no more and crosses as little. */
void straighten (Maze& maze, const Wires& wires, Paths& paths, const Cancellation& isUnwanted)
{
    constexpr int farthest = 30, wide = 3;
    constexpr double perCell = 0.8; // of clearance: less than a bend, more than the length it may cost
    for (int pass = 0; pass < 2; ++pass)
        for (size_t w = 0; w < paths.size(); ++w)
        {
            isUnwanted.check();
            if (paths[w].size() < 4)
                continue;
            markOthers (maze, paths, w);
            auto corners = cornersOf (paths[w]);
            for (size_t i = 1; i + 2 < corners.size(); ++i)
            {
                const bool across = corners[i].row == corners[i + 1].row;
                double best = maze.price (paths[w], wires[w].first, wires[w].second)
                              - perCell * maze.clearance (corners[i], corners[i + 1], wide);
                auto chosen = corners;
                for (int by = -farthest; by <= farthest; ++by)
                {
                    auto moved = corners;
                    for (const size_t end : { i, i + 1 })
                        (across ? moved[end].row : moved[end].column) += by;
                    const auto way = filled (moved);
                    const double price = way.empty() ? -1.0 : maze.price (way, wires[w].first, wires[w].second);
                    if (price < 0.0 || cornersOf (way).size() != corners.size())
                        continue;
                    const double score = price - perCell * maze.clearance (moved[i], moved[i + 1], wide);
                    if (score < best - 0.01)
                    {
                        best = score;
                        chosen = moved;
                    }
                }
                corners = chosen;
                paths[w] = filled (corners);
            }
        }
}
}

RouteResult route (const Board& board, const std::vector<Port>& ports, const std::vector<std::pair<int, int>>& wires, int rounds,
                   const Cancellation& isUnwanted)
{
    RouteResult best;
    best.paths.resize (wires.size());
    if (wires.empty())
        return best;

    Maze maze (board, ports);
    const auto straight = [&] (int w)
    {
        const auto& a = ports[static_cast<size_t> (wires[static_cast<size_t> (w)].first)].cells.front();
        const auto& b = ports[static_cast<size_t> (wires[static_cast<size_t> (w)].second)].cells.front();
        return std::abs (a.column - b.column) + std::abs (a.row - b.row);
    };

    std::vector<int> order (wires.size());
    for (int w = 0; w < static_cast<int> (wires.size()); ++w)
        order[static_cast<size_t> (w)] = w;
    std::stable_sort (order.begin(), order.end(), [&] (int a, int b) { return straight (a) < straight (b); });

    best.cost = std::numeric_limits<double>::max();
    double bestRaw = best.cost;
    int refined = 0;
    int bettered = 0; // the round of the last gain; many without one end it
    for (int round = 0; round < std::max (1, rounds) && round - bettered < 25; ++round)
    {
        maze.clear();
        double total = 0.0;
        std::vector<std::vector<Cell>> paths (wires.size());
        std::vector<std::pair<double, int>> detours;
        for (int w : order)
        {
            isUnwanted.check();
            double cost = 0.0;
            auto path = maze.find (wires[static_cast<size_t> (w)].first, wires[static_cast<size_t> (w)].second, cost);
            if (path.empty())
            {
                total += noWay;
                detours.push_back ({ noWay, w });
                continue;
            }
            total += cost;
            detours.push_back ({ cost - straight (w), w });
            maze.mark (path);
            paths[static_cast<size_t> (w)] = std::move (path);
        }
        // What is nearly as good as the best so far may become better once each wire knows all others.
        if (total < bestRaw + 22.0 && refined < mostRefined)
        {
            ++refined;
            bestRaw = std::min (bestRaw, total);
            refine (maze, wires, paths, isUnwanted);
            if (const double price = priceOfAll (maze, wires, paths); price < best.cost - 0.01)
            {
                bettered = round;
                best.cost = price;
                best.paths = std::move (paths);
            }
        }
        std::stable_sort (detours.begin(), detours.end(), [] (const auto& a, const auto& b) { return a.first > b.first; });
        const int worst = detours[static_cast<size_t> (round * 7) % std::min<size_t> (detours.size(), 5)].second;
        order.erase (std::find (order.begin(), order.end(), worst));
        order.insert (order.begin(), worst);
        // Joints of neighbours stay first for good: their only straight way must stay free.
        std::stable_partition (order.begin(), order.end(), [&] (int w) { return straight (w) <= 4; });
    }
    straighten (maze, wires, best.paths, isUnwanted);
    best.crossings = countCrossings (best.paths, board.columns, board.rows);
    return best;
}
}
