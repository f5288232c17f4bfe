#include "paper/DrawingSlots.h"

#include "paper/DrawingNeighbours.h"

#include <algorithm>
#include <map>
#include <set>

namespace coldiron
{
namespace
{
constexpr int columnGap = 90, pickupGap = 140, rowGap = 40, margin = 40;

/** The pot, or pot below a push-pull, that a loose part hangs on; empty: none. */
std::string hangsOn (const Harness& harness, const Part& part)
{
    for (const char* end : { "1", "2" })
    {
        const auto landing = harness.landings().find (part.name + "." + end);
        if (landing == harness.landings().end())
            continue;
        std::vector<std::string> near;
        if (! landing->second.lug.empty())
            near.push_back (landing->second.lug);
        for (const auto& point : near)
        {
            const auto& other = harness.partOf (point);
            if (other.as<PotPart>() != nullptr && splitPoint (point).second != "case")
                return other.name;
            const auto* lever = other.as<SwitchPart>();
            if (lever != nullptr && ! lever->on.empty())
                return lever->on;
        }
    }
    return "";
}

/** A pot with its block above and what hangs below. */
struct Stack
{
    std::vector<std::pair<PlacedPart, std::pair<int, int>>> items; ///< with place relative to the first
    Extents room;

    void add (PlacedPart item, int dx, int dy)
    {
        const auto e = extentsOf (item);
        const int ox = item.figure == Figure::pickup ? 0 : dx, oy = dy;
        if (items.empty())
            room = e;
        else
        {
            room.left = std::max (room.left, e.left - ox);
            room.right = std::max (room.right, e.right + ox);
            room.top = std::max (room.top, e.top - oy);
            room.bottom = std::max (room.bottom, e.bottom + oy);
        }
        items.push_back ({ std::move (item), { dx, dy } });
    }
};

struct Planner
{
    const Harness& before;
    const Harness& after;
    const Changes& changes;
    Neighbours old, now;
    std::vector<PlacedPart> placed;
    std::set<std::string> done;

    Planner (const Harness& b, const Harness& a, const Changes& c) : before (b), after (a), changes (c), old (b), now (a) {}

    const Neighbours& around (const std::string& part) const { return before.find (part) != nullptr ? old : now; }

    std::vector<const Part*> allParts() const
    {
        std::vector<const Part*> all;
        for (const auto& part : after.parts())
            all.push_back (&part);
        for (const auto& part : before.parts())
            if (changes.removed.count (part.name) > 0)
                all.push_back (&part);
        return all;
    }

    PlacedPart make (const Part& part) const
    {
        PlacedPart item;
        item.part = &part;
        item.figure = figureOf (part);
        item.mark = changes.removed.count (part.name) > 0                                            ? PartMark::isOut
                    : changes.fitted.count (part.name) > 0 || changes.replaced.count (part.name) > 0 ? PartMark::isNew
                                                                                                     : PartMark::stays;
        measure (item);
        return item;
    }

    /** The row of a pot: its pickup's, -1 where it serves all alike. */
    int rowOf (const Part& part, const std::vector<const Part*>& pickups) const
    {
        int best = 1000, row = -1;
        for (int i = 0; i < static_cast<int> (pickups.size()); ++i)
        {
            const auto& name = pickups[static_cast<size_t> (i)]->name;
            if (part.serves == name)
                return i;
            const auto& near = around (part.name);
            if (near.wiring().find (name) == nullptr)
                continue;
            const int d = near.distance (name, part.name);
            if (d < best)
            {
                best = d;
                row = i;
            }
            else if (d == best)
                row = -1;
        }
        return pickups.size() == 1 ? 0 : row;
    }

    Stack stackOf (const Part& pot, const std::vector<const Part*>& parts, bool beside)
    {
        Stack stack;
        stack.add (make (pot), 0, 0);
        done.insert (pot.name);
        int above = -60, left = -70;
        for (const auto* part : parts)
        {
            const auto* lever = part->as<SwitchPart>();
            if (lever == nullptr || lever->on != pot.name || done.count (part->name) > 0)
                continue;
            auto block = make (*part);
            done.insert (part->name);
            if (beside)
            {
                const auto room = extentsOf (block);
                stack.add (block, (left - room.right - 20) / 10 * 10, 0);
                left -= room.left + room.right + 30;
                continue;
            }
            const int half = block.height / 2;
            above -= (block.figure == Figure::block ? 100 : 60) + (half + 9) / 10 * 10 - 60;
            stack.add (block, 0, above - 60);
            above -= 60 + half;
        }

        int below = 170, column = 0;
        std::vector<const Part*> loose;
        for (const auto* part : parts)
            if (figureOf (*part) == Figure::lying && done.count (part->name) == 0
                && hangsOn (around (part->name).wiring(), *part) == pot.name)
                loose.push_back (part);
        for (const auto* part : loose)
        {
            // A tone's capacitor stands on lug 2.
            const auto& wiring = around (part->name).wiring();
            const auto on = [&] (const char* end)
            { return wiring.landings().at (part->name + "." + end).lug == pot.name + ".2"; };
            const auto otherOnPot = [&] (const char* end)
            {
                const auto [where, lug] = splitPoint (wiring.landings().at (part->name + "." + end).lug);
                return where == pot.name && lug != "case";
            };
            const bool first = on ("1") && ! otherOnPot ("2"), second = on ("2") && ! otherOnPot ("1");
            const bool grounded = around (part->name).onGround (part->name + (first ? ".2" : ".1"));
            if ((! first && ! second) || ! grounded || below > 170)
                continue;
            auto item = make (*part);
            item.figure = Figure::standing;
            item.turned = second;
            measure (item);
            stack.add (item, 0, 180);
            done.insert (part->name);
            below = 310;
        }
        for (const auto* part : loose)
        {
            if (done.count (part->name) > 0)
                continue;
            const bool alone = loose.size() == 1;
            stack.add (make (*part), alone ? 0 : column == 0 ? -80 : 80, below + (alone ? 40 : 40));
            done.insert (part->name);
            if (++column == 2)
            {
                column = 0;
                below += 100;
            }
        }
        return stack;
    }

    void put (const Stack& stack, int x, int y)
    {
        for (auto [item, offset] : stack.items)
        {
            item.x = x + offset.first;
            item.y = y + offset.second;
            placed.push_back (std::move (item));
        }
    }
};

int upTo10 (int value) { return (value + 9) / 10 * 10; }
}

std::vector<PlacedPart> placeAll (const Harness& before, const Harness& after, const Changes& changes, PlanStyle& style)
{
    Planner plan (before, after, changes);
    const auto parts = plan.allParts();

    std::vector<const Part*> pickups;
    for (const auto* part : parts)
        if (part->as<PickupPart>() != nullptr)
            pickups.push_back (part);
    std::stable_sort (pickups.begin(), pickups.end(),
                      [] (const Part* a, const Part* b)
                      { return a->as<PickupPart>()->bridgeMm > b->as<PickupPart>()->bridgeMm; });

    // Stacks by column (0 volumes, 1 tones) and row; what serves every pickup takes the first free row.
    std::map<std::pair<int, int>, std::vector<Stack>> stacks;
    std::vector<std::pair<int, const Part*>> common;
    for (const auto* part : parts)
    {
        if (part->as<PotPart>() == nullptr)
            continue;
        const int column = plan.around (part->name).isVolume (part->name) ? 0 : 1;
        const int row = plan.rowOf (*part, pickups);
        if (row >= 0)
            stacks[{ column, row }].push_back (plan.stackOf (*part, parts, style.blocksBeside));
        else
            common.push_back ({ column, part });
    }
    const int rows = std::max<int> (1, static_cast<int> (pickups.size()));
    for (const auto& [column, part] : common)
    {
        int row = 0;
        while (row < rows - 1 && ! stacks[{ column, row }].empty())
            ++row;
        stacks[{ column, row }].push_back (plan.stackOf (*part, parts, style.blocksBeside));
    }

    // Rows: as high as their highest column.
    std::vector<int> rowTop, potY;
    int y = margin + 20;
    for (int row = 0; row < rows; ++row)
    {
        int top = 0, height = 0;
        for (int column : { 0, 1 })
        {
            const auto& list = stacks[{ column, row }];
            if (! list.empty())
                top = std::max (top, list.front().room.top);
        }
        for (int column : { 0, 1 })
        {
            int total = 0;
            bool firstInRow = true;
            for (const auto& stack : stacks[{ column, row }])
            {
                total += (firstInRow ? top : upTo10 (stack.room.top) + 20) + upTo10 (stack.room.bottom);
                firstInRow = false;
            }
            height = std::max (height, total);
        }
        if (style.pickupsClose && height == 0)
        {
            rowTop.push_back (y);
            potY.push_back (y);
            continue; // a pickup without pots of its own takes no row
        }
        if (row < static_cast<int> (pickups.size()) && ! style.pickupsClose)
        {
            auto item = plan.make (*pickups[static_cast<size_t> (row)]);
            height = std::max (height, item.height + 50);
        }
        rowTop.push_back (y);
        potY.push_back (y + upTo10 (top));
        y += upTo10 (height) + rowGap;
    }
    const int bottom = y;

    int x = margin, below = margin + 20;
    for (int row = 0; row < static_cast<int> (pickups.size()); ++row)
    {
        auto item = plan.make (*pickups[static_cast<size_t> (row)]);
        item.x = margin;
        item.y = std::max (rowTop[static_cast<size_t> (row)] + 40,
                           std::min (potY[static_cast<size_t> (row)] - 60, rowTop[static_cast<size_t> (row)] + 120));
        item.y = upTo10 (style.pickupsClose ? below + extentsOf (item).top : item.y);
        below = item.y + extentsOf (item).bottom + 20;
        plan.placed.push_back (item);
        plan.done.insert (item.part->name);
        x = std::max (x, item.x + item.width + 20);
    }

    {
        PlacedPart item; // drawn unwired too: it can be wired by hand
        item.part = &bridgePart();
        item.figure = Figure::bridge;
        measure (item);
        item.x = margin;
        item.y = margin + 20;
        for (const auto& other : plan.placed)
            item.y = std::max (item.y, upTo10 (other.y + extentsOf (other).bottom) + 50);
        plan.placed.push_back (item);
        x = std::max (x, item.x + item.width + 20);
    }

    // A switch that the pickups reach before any pot stands before the pots.
    std::vector<const Part*> early, late;
    for (const auto* part : parts)
        if (part->as<SwitchPart>() != nullptr && plan.done.count (part->name) == 0)
        {
            int direct = 0;
            for (const auto* pickup : pickups)
                direct += plan.around (part->name).wiring().find (pickup->name) != nullptr
                          && plan.around (part->name).distance (pickup->name, part->name) == 1;
            (direct * 2 > static_cast<int> (pickups.size()) && pickups.size() > 1 ? early : late).push_back (part);
        }

    const auto column = [&] (const std::vector<const Part*>& list, int gap, int startY)
    {
        int left = 0, right = 0, at = startY;
        for (const auto* part : list)
        {
            const auto e = extentsOf (plan.make (*part));
            left = std::max (left, e.left);
            right = std::max (right, e.right);
        }
        const int middle = upTo10 (x + gap + left);
        for (const auto* part : list)
        {
            auto item = plan.make (*part);
            const auto e = extentsOf (item);
            item.x = middle;
            item.y = at + upTo10 (e.top);
            at = item.y + upTo10 (e.bottom) + 20;
            plan.placed.push_back (item);
            plan.done.insert (part->name);
        }
        if (! list.empty())
        {
            x = middle + right;
            ++style.gaps;
        }
        return at;
    };

    column (early, pickupGap + style.spread, margin + 20);
    for (int c : { 0, 1 })
    {
        int left = 0, right = 0;
        for (int row = 0; row < rows; ++row)
            for (const auto& stack : stacks[{ c, row }])
            {
                left = std::max (left, stack.room.left);
                right = std::max (right, stack.room.right);
            }
        if (left == 0)
            continue;
        const int middle = upTo10 (x + (c == 0 && early.empty() ? pickupGap : columnGap) + style.spread + left);
        ++style.gaps;
        for (int row = 0; row < rows; ++row)
        {
            int at = potY[static_cast<size_t> (row)];
            bool firstInRow = true;
            for (const auto& stack : stacks[{ c, row }])
            {
                if (! firstInRow)
                    at += upTo10 (stack.room.top) + 20;
                plan.put (stack, middle, at);
                at += upTo10 (stack.room.bottom);
                firstInRow = false;
            }
        }
        x = middle + right;
    }

    // Last the switches at the end of the way, what is left over, and the jack.
    std::vector<const Part*> last = late;
    for (const auto* part : parts)
        if (plan.done.count (part->name) == 0 && part->as<JackPart>() == nullptr && part->as<SwitchPart>() == nullptr)
            last.push_back (part);
    for (const auto* part : parts)
        if (part->as<JackPart>() != nullptr)
            last.push_back (part);
    column (last, 60 + style.spread,
            last.size() == 1 ? std::max (margin + 20, std::min (potY.back(), bottom - 300)) : margin + 20);

    for (auto& item : plan.placed)
        buildAnatomy (item);
    return plan.placed;
}
}
