#include "paper/Maze.h"

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
constexpr int stepColumn[] = { 1, 0, -1, 0 };
constexpr int stepRow[] = { 0, 1, 0, -1 };

// What a cell holds, as bits.
constexpr uint8_t across = 1, along = 2, corner = 3;
}

Maze::Maze (const Board& board, const std::vector<Port>& portList)
    : columns (board.columns), rows (board.rows), blocked (board.blocked), ports (portList),
      owner (static_cast<size_t> (columns * rows), -1), occupied (owner.size()), best (owner.size() * 4), from (owner.size() * 4),
      reached (owner.size() * 4)
{
    for (int p = 0; p < static_cast<int> (ports.size()); ++p)
        for (const auto& cell : ports[static_cast<size_t> (p)].cells)
        {
            blocked[at (cell)] = 0;
            owner[at (cell)] = p;
        }
}

void Maze::clear() { std::fill (occupied.begin(), occupied.end(), uint8_t (0)); }

void Maze::mark (const std::vector<Cell>& path)
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

/** The cost so far; none yet in this search is infinite. */
float& Maze::costOf (size_t state)
{
    if (reached[state] != search)
    {
        reached[state] = search;
        best[state] = std::numeric_limits<float>::max();
        from[state] = -1;
    }
    return best[state];
}

float Maze::stepCost (int start, int goal, size_t index, int d, int e) const
{
    // No turning back, no corner on another wire, and a start is left straight in the way it was entered with.
    if (e == (d + 2) % 4 || (e != d && (owner[index] == start || occupied[index] != 0)))
        return -1.0f;
    const int nextColumn = static_cast<int> (index) % columns + stepColumn[e],
              nextRow = static_cast<int> (index) / columns + stepRow[e];
    if (nextColumn < 1 || nextRow < 1 || nextColumn >= columns - 1 || nextRow >= rows - 1)
        return -1.0f;
    const auto next = static_cast<size_t> (nextRow * columns + nextColumn);
    float step = 1.0f + (e != d ? bend : 0.0f);
    if (owner[next] == goal)
    {
        const int intoGoal = (static_cast<int> (ports[static_cast<size_t> (goal)].out) + 2) % 4;
        if (e == (intoGoal + 2) % 4)
            return -1.0f;
        return e != intoGoal ? step + sideways : step;
    }
    if (blocked[next] != 0 || owner[next] >= 0)
        return -1.0f;
    const auto other = occupied[next];
    if (other != 0)
    {
        if (other == corner || (other == across) == (e % 2 == 0))
            return -1.0f;
        step += crossing;
    }
    const auto side = static_cast<size_t> (e % 2 == 1 ? 1 : columns);
    if (occupied[next - side] != 0 || occupied[next + side] != 0)
        step += besideWire;
    if (blocked[next - side] != 0 || blocked[next + side] != 0)
        step += besidePart;
    return step;
}

double Maze::price (const std::vector<Cell>& path, int start, int goal) const
{
    if (path.size() < 2)
        return -1.0;
    const auto way = [&path] (size_t k)
    {
        const int dx = path[k + 1].column - path[k].column, dy = path[k + 1].row - path[k].row;
        return dx == 1 && dy == 0 ? 0 : dx == 0 && dy == 1 ? 1 : dx == -1 && dy == 0 ? 2 : dx == 0 && dy == -1 ? 3 : -1;
    };
    const int outOfStart = static_cast<int> (ports[static_cast<size_t> (start)].out);
    int d = way (0);
    if (d < 0 || d == (outOfStart + 2) % 4 || owner[at (path.front())] != start || owner[at (path.back())] != goal)
        return -1.0;
    double total = d == outOfStart ? 0.0 : sideways;
    for (size_t k = 0; k + 1 < path.size(); ++k)
    {
        const int e = way (k);
        const float step = e < 0 ? -1.0f : stepCost (start, goal, at (path[k]), d, e);
        if (step < 0.0f || (k + 2 < path.size() && owner[at (path[k + 1])] >= 0))
            return -1.0;
        total += step;
        d = e;
    }
    return total;
}

int Maze::clearance (const Cell& a, const Cell& b, int most) const
{
    const bool isAcross = a.row == b.row;
    int least = most;
    for (const int side : { -1, 1 })
        for (int far = 1; far <= least; ++far)
            for (int i = std::min (isAcross ? a.column : a.row, isAcross ? b.column : b.row);
                 i <= std::max (isAcross ? a.column : a.row, isAcross ? b.column : b.row); ++i)
            {
                const Cell cell = isAcross ? Cell { i, a.row + side * far } : Cell { a.column + side * far, i };
                const bool outside = cell.column < 0 || cell.row < 0 || cell.column >= columns || cell.row >= rows;
                // A wire that only crosses does not narrow the channel.
                if (outside || blocked[at (cell)] != 0 || owner[at (cell)] >= 0
                    || (occupied[at (cell)] & (isAcross ? across : along)) != 0)
                    least = std::min (least, far - 1);
            }
    return least;
}

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

    const int outOfStart = static_cast<int> (a.out);
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

        for (int e = 0; e < 4; ++e)
        {
            const float step = stepCost (start, goal, static_cast<size_t> (index), d, e);
            if (step < 0.0f)
                continue;
            const int nextColumn = column + stepColumn[e], nextRow = row + stepRow[e];
            const auto next = static_cast<size_t> (nextRow * columns + nextColumn);
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
}
