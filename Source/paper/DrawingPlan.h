#pragma once

#include "guitar/Nets.h"
#include "paper/DrawingParts.h"
#include "paper/DrawingSlots.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

namespace coldiron
{
inline constexpr int wiringGrid = 10, wiringLegend = 50; ///< [drawing units]

/** A sign of ground at one point. */
struct GroundMark
{
    bool isNew = false;
    std::vector<int> numbers;
};

/** A wire to route. */
struct Run
{
    SolderPair pair;
    bool isNew = false, isOpened = false;
    int number = 0;
    std::string resting;
    std::vector<Shape::Spot> way;
};

/** What is to be drawn, before it is: joints sorted into wires, signs of ground, tongues and stubs; places; ways. */
class DrawingPlan
{
public:
    DrawingPlan (const Harness& beforeHarness, const Harness& afterHarness, const DrawingOptions& wanted)
        : before (beforeHarness), after (afterHarness), options (wanted), changes (changesBetween (before, after)),
          placed (placeParts (before, after, changes, options.aspect)), netsBefore (before), netsAfter (after)
    {
        for (size_t i = 0; i < placed.size(); ++i)
            for (const auto& terminal : placed[i].terminals)
                terminals[terminal.point] = { &terminal, &placed[i] };
    }

protected:
    struct Spotted
    {
        const Terminal* terminal = nullptr;
        const PlacedPart* part = nullptr;
    };

    const Harness& before;
    const Harness& after;
    const DrawingOptions options;
    const Changes changes;
    const std::vector<PlacedPart> placed;
    const Nets netsBefore, netsAfter;
    std::map<std::string, Spotted> terminals;
    std::map<std::string, GroundMark> marks;
    std::vector<Run> runs;
    struct SolderTab
    {
        SolderPair pair;
        bool isNew = false, isOpened = false;
        int number = 0;
    };
    std::vector<SolderTab> tongues;
    std::vector<std::string> stubs, freeLeads;
    std::vector<Shape::Spot> busy; ///< where no number may stand: lugs, signs, other numbers
    Drawing drawing;

    static bool isGround (const Harness& harness, const Nets& nets, const SolderPair& pair)
    {
        return nets.joined (pair.first, harness.point ("ground"));
    }

    static bool isTongue (const Harness& harness, const SolderPair& pair)
    {
        const auto [a, lugA] = splitPoint (pair.first);
        const auto [b, lugB] = splitPoint (pair.second);
        return a == b && harness.find (a)->as<PotPart>() != nullptr && (lugA == "case" || lugB == "case");
    }

    bool isLeadPoint (const std::string& point) const
    {
        return (after.find (splitPoint (point).first) != nullptr ? after : before).isLead (point);
    }

    bool isPickupPoint (const std::string& point) const { return terminals.at (point).part->figure == Figure::pickup; }

    void sortPairs()
    {
        for (const auto& pair : changes.stays)
        {
            if (isTongue (after, pair))
                tongues.push_back ({ pair });
            else if (isGround (after, netsAfter, pair))
                for (const auto& end : { pair.first, pair.second })
                    marks[end];
            else
                runs.push_back ({ pair, false, false, 0, "", {} });
        }

        for (const auto& made : changes.made)
        {
            const auto& [a, b] = made.pair;
            if (isTongue (after, made.pair))
                tongues.push_back ({ made.pair, true, false, made.number });
            else if (isGround (after, netsAfter, made.pair))
            {
                // The number stands at the lead, else at the end that had no ground run yet.
                const bool firstCarries = isLeadPoint (a) || (! isLeadPoint (b) && marks.count (a) == 0);
                const auto& carrier = firstCarries ? a : b;
                auto& mark = marks[carrier];
                mark.isNew = true;
                mark.numbers.push_back (made.number);
                const auto& other = firstCarries ? b : a;
                if (marks.count (other) == 0)
                    marks[other].isNew = ! (splitPoint (other).second == "sleeve");
            }
            else
                runs.push_back ({ made.pair, true, false, made.number, made.resting, {} });
        }

        for (const auto& opened : changes.opened)
        {
            const auto& [a, b] = opened.pair;
            const bool drawnA = terminals.count (a) > 0, drawnB = terminals.count (b) > 0;
            if (! drawnA || ! drawnB) // a part replaced by one with other points: its old ones are gone with it
            {
                if (drawnA || drawnB)
                    stubs.push_back (drawnA ? a : b);
            }
            else if (isTongue (before, opened.pair))
                tongues.push_back ({ opened.pair, false, true, 0 });
            else if (isGround (before, netsBefore, opened.pair))
            {
                bool shown = false;
                for (const auto& end : { a, b })
                    if (marks.count (end) == 0)
                    {
                        stubs.push_back (end);
                        shown = true;
                    }
                if (! shown)
                    stubs.push_back (isLeadPoint (a) ? a : b);
            }
            else if (! opened.stubAt.empty())
                stubs.push_back (opened.stubAt);
            else
                runs.push_back ({ opened.pair, false, true, 0, "", {} });
        }
        for (const auto& [lead, landing] : after.landings())
            if (landing.isFree() && terminals.count (lead) > 0)
                freeLeads.push_back (lead);
        std::sort (stubs.begin(), stubs.end());
        stubs.erase (std::unique (stubs.begin(), stubs.end()), stubs.end());
    }

    void size()
    {
        for (const auto& part : placed)
            for (const auto& terminal : part.terminals)
                drawing.points.push_back ({ terminal.point,
                                            { static_cast<double> (terminal.x), static_cast<double> (terminal.y) },
                                            part.mark == PartMark::isOut });
        std::tie (drawing.width, drawing.height) = sizeOf (placed, options.legend);
    }

    /** Where the sign of ground hangs, away from the lug. */
    Shape::Spot signSpot (const Terminal& t) const
    {
        const double x = t.x + (t.out == Heading::right ? 20 : t.out == Heading::left ? -20 : 0);
        return { x, static_cast<double> (t.y) };
    }

    Shape::Spot numberSpot (const Terminal& t, size_t index) const
    {
        const auto sign = signSpot (t);
        if (t.out == Heading::left)
            return { sign.x - 31 - 30.0 * static_cast<double> (index), sign.y + 12 };
        if (t.out == Heading::right)
            return { sign.x + 31 + 30.0 * static_cast<double> (index), sign.y + 12 };
        return { sign.x + 30.0 * static_cast<double> (index), sign.y + 38 };
    }

    void routeRuns()
    {
        Board board;
        board.columns = drawing.width / wiringGrid;
        board.rows = (drawing.height - wiringLegend) / wiringGrid;
        board.blocked.assign (static_cast<size_t> (board.columns * board.rows), 0);
        const auto block = [&board] (double x, double y, double w, double h)
        {
            const int x0 = static_cast<int> (std::ceil (x / wiringGrid)),
                      x1 = static_cast<int> (std::floor ((x + w) / wiringGrid));
            const int y0 = static_cast<int> (std::ceil (y / wiringGrid)),
                      y1 = static_cast<int> (std::floor ((y + h) / wiringGrid));
            for (int row = std::max (0, y0); row <= std::min (board.rows - 1, y1); ++row)
                for (int column = std::max (0, x0); column <= std::min (board.columns - 1, x1); ++column)
                    board.blocked[static_cast<size_t> (row * board.columns + column)] = 1;
        };
        for (const auto& part : placed)
            for (const auto& area : part.taken)
                block (area.x, area.y, area.width, area.height);
        for (const auto& [point, mark] : marks)
        {
            const auto& t = *terminals.at (point).terminal;
            const auto sign = signSpot (t);
            block (sign.x - 10, sign.y + (t.out == Heading::down ? 10 : 0), 20, t.out == Heading::down ? 20 : 26);
            for (size_t i = 0; i < mark.numbers.size(); ++i)
            {
                const auto at = numberSpot (t, i);
                block (at.x - 15, at.y - 14, 30, 28);
            }
        }

        for (const auto& lead : freeLeads)
            if (const auto& t = *terminals.at (lead).terminal; t.out == Heading::right)
                block (t.x + 10, t.y - 10, 80, 20); // "taped off"

        std::map<std::string, int> wiresAt;
        for (const auto& run : runs)
            for (const auto& end : { run.pair.first, run.pair.second })
                ++wiresAt[end];
        std::map<std::string, int> portOf;
        std::vector<Port> ports;
        for (const auto& part : placed)
            for (const auto& terminal : part.terminals)
            {
                static constexpr int dx[] = { 1, 0, -1, 0 }, dy[] = { 0, 1, 0, -1 };
                const int way = static_cast<int> (terminal.out), count = wiresAt[terminal.point];
                Port port { {}, terminal.out };
                for (int i = 0; i < (count <= 3 ? 1 : 1 + (count - 2) / 2); ++i)
                    port.cells.push_back ({ terminal.x / wiringGrid + dx[way] * i, terminal.y / wiringGrid + dy[way] * i });
                portOf[terminal.point] = static_cast<int> (ports.size());
                ports.push_back (port);
            }

        std::vector<std::pair<int, int>> wires;
        for (const auto& run : runs)
            wires.push_back ({ portOf.at (run.pair.first), portOf.at (run.pair.second) });
        const auto result = route (board, ports, wires, options.rounds, options.isUnwanted);
        drawing.crossings = result.crossings;
        for (size_t i = 0; i < runs.size(); ++i)
        {
            for (const auto& cell : result.paths[i])
                runs[i].way.push_back (
                    { static_cast<double> (cell.column * wiringGrid), static_cast<double> (cell.row * wiringGrid) });
            drawing.unrouted += runs[i].way.empty();
            drawing.wires.push_back ({ runs[i].pair.first, runs[i].pair.second, runs[i].isNew, runs[i].isOpened, runs[i].way });
        }
    }
};
}
