#include "paper/Router.h"

#include <algorithm>
#include <cstdlib>
#include <limits>
#include <queue>

namespace coldiron
{
namespace
{
// What a step costs, in cells. Found by trial: a crossing worth 22 cells keeps detours short.
constexpr float bend = 4.0f, crossing = 22.0f, besideWire = 1.2f, besidePart = 0.8f, sideways = 2.0f;
constexpr double noWay = 400.0;
constexpr int stepColumn[] = { 1, 0, -1, 0 };
constexpr int stepRow[] = { 0, 1, 0, -1 };

// What a cell holds, as bits.
constexpr uint8_t across = 1, along = 2, corner = 3;

class Maze
{
public:
    Maze (const Board& board, const std::vector<Port>& portList)
        : columns (board.columns), rows (board.rows), blocked (board.blocked), ports (portList),
          owner (static_cast<size_t> (columns * rows), -1), occupied (owner.size()), best (owner.size() * 4),
          from (owner.size() * 4), reached (owner.size() * 4)
    {
        for (int p = 0; p < static_cast<int> (ports.size()); ++p)
            for (const auto& cell : ports[static_cast<size_t> (p)].cells)
            {
                blocked[at (cell)] = 0;
                owner[at (cell)] = p;
            }
    }

    void clear() { std::fill (occupied.begin(), occupied.end(), uint8_t (0)); }

    /** The cheapest way; empty where there is none. */
    std::vector<Cell> find (int start, int goal, double& cost);

    void mark (const std::vector<Cell>& path)
    {
        for (size_t k = 1; k + 1 < path.size(); ++k)
        {
            const bool straightAcross = path[k - 1].row == path[k + 1].row;
            const bool straightAlong = path[k - 1].column == path[k + 1].column;
            const uint8_t mine = straightAcross ? across : straightAlong ? along : corner;
            auto& cell = occupied[at (path[k])];
            cell = cell != 0 && cell != mine ? corner : mine;
        }
    }

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

    /** The cost so far; none yet in this search is infinite. */
    float& costOf (size_t state)
    {
        if (reached[state] != search)
        {
            reached[state] = search;
            best[state] = std::numeric_limits<float>::max();
            from[state] = -1;
        }
        return best[state];
    }

    size_t at (const Cell& c) const { return static_cast<size_t> (c.row * columns + c.column); }
};

std::vector<Cell> Maze::find (int start, int goal, double& cost)
{
    using Entry = std::pair<float, int>;
    std::priority_queue<Entry, std::vector<Entry>, std::greater<>> open;
    ++search;

    const auto& a = ports[static_cast<size_t> (start)];
    const auto& b = ports[static_cast<size_t> (goal)];
    const auto distance = [&b] (int column, int row)
    {
        int least = std::numeric_limits<int>::max();
        for (const auto& cell : b.cells)
            least = std::min (least, std::abs (column - cell.column) + std::abs (row - cell.row));
        return static_cast<float> (least);
    };

    const int outOfStart = static_cast<int> (a.out), intoGoal = (static_cast<int> (b.out) + 2) % 4;
    for (const auto& cell : a.cells)
        for (int d = 0; d < 4; ++d)
            if (d != (outOfStart + 2) % 4)
            {
                const int state = static_cast<int> (at (cell)) * 4 + d;
                costOf (static_cast<size_t> (state)) = d == outOfStart ? 0.0f : sideways;
                open.push ({ best[static_cast<size_t> (state)] + distance (cell.column, cell.row), state });
            }

    while (! open.empty())
    {
        const auto [estimate, state] = open.top();
        open.pop();
        const int index = state / 4, d = state % 4;
        const int column = index % columns, row = index / columns;
        const float soFar = best[static_cast<size_t> (state)];
        if (estimate > soFar + distance (column, row) + 1e-3f)
            continue;
        if (owner[static_cast<size_t> (index)] == goal)
        {
            cost = soFar;
            std::vector<Cell> path;
            for (int s = state; s != -1; s = from[static_cast<size_t> (s)])
                path.push_back ({ (s / 4) % columns, (s / 4) / columns });
            std::reverse (path.begin(), path.end());
            return path;
        }

        const bool atStart = owner[static_cast<size_t> (index)] == start;
        for (int e = 0; e < 4; ++e)
        {
            // No turning back, no corner on another wire, and a start is left straight in the way it was entered with.
            if (e == (d + 2) % 4 || (e != d && (atStart || occupied[static_cast<size_t> (index)] != 0)))
                continue;
            const int nextColumn = column + stepColumn[e], nextRow = row + stepRow[e];
            if (nextColumn < 1 || nextRow < 1 || nextColumn >= columns - 1 || nextRow >= rows - 1)
                continue;
            const auto next = static_cast<size_t> (nextRow * columns + nextColumn);
            const bool isGoal = owner[next] == goal;
            if (! isGoal && (blocked[next] != 0 || owner[next] >= 0))
                continue;

            float step = 1.0f + (e != d ? bend : 0.0f);
            if (isGoal)
            {
                if (e == (intoGoal + 2) % 4)
                    continue;
                if (e != intoGoal)
                    step += sideways;
            }
            else
            {
                const auto other = occupied[next];
                if (other != 0)
                {
                    if (other == corner || (other == across) == (e % 2 == 0))
                        continue;
                    step += crossing;
                }
                const auto side = static_cast<size_t> (e % 2 == 1 ? 1 : columns);
                if (occupied[next - side] != 0 || occupied[next + side] != 0)
                    step += besideWire;
                if (blocked[next - side] != 0 || blocked[next + side] != 0)
                    step += besidePart;
            }
            const auto nextState = next * 4 + static_cast<size_t> (e);
            if (soFar + step < costOf (nextState))
            {
                best[nextState] = soFar + step;
                from[nextState] = state;
                open.push ({ soFar + step + distance (nextColumn, nextRow), static_cast<int> (nextState) });
            }
        }
    }
    return {};
}

int countCrossings (const std::vector<std::vector<Cell>>& paths, int columns, int rows)
{
    std::vector<uint8_t> passes (static_cast<size_t> (columns * rows));
    int count = 0;
    for (const auto& path : paths)
        for (size_t k = 1; k + 1 < path.size(); ++k)
            count += passes[static_cast<size_t> (path[k].row * columns + path[k].column)]++ > 0;
    return count;
}
}

RouteResult route (const Board& board, const std::vector<Port>& ports, const std::vector<std::pair<int, int>>& wires, int rounds)
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
    int bettered = 0; // the round of the last gain; many without one end it
    for (int round = 0; round < std::max (1, rounds) && round - bettered < 25; ++round)
    {
        maze.clear();
        double total = 0.0;
        std::vector<std::vector<Cell>> paths (wires.size());
        std::vector<std::pair<double, int>> detours;
        for (int w : order)
        {
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
        if (total < best.cost)
        {
            bettered = round;
            best.cost = total;
            best.paths = std::move (paths);
        }
        std::stable_sort (detours.begin(), detours.end(), [] (const auto& a, const auto& b) { return a.first > b.first; });
        const int worst = detours[static_cast<size_t> (round * 7) % std::min<size_t> (detours.size(), 5)].second;
        order.erase (std::find (order.begin(), order.end(), worst));
        order.insert (order.begin(), worst);
        // Joints of neighbours stay first for good: their only straight way must stay free.
        std::stable_partition (order.begin(), order.end(), [&] (int w) { return straight (w) <= 4; });
    }
    best.crossings = countCrossings (best.paths, board.columns, board.rows);
    return best;
}
}
