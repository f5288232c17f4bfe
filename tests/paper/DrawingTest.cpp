// The wiring drawing: what it promises holds for every shipped guitar with every shipped rewire that fits it.
// Sources: none outside; the properties are those of a wiring diagram, common practice of the trade, no source.

#include "paper/Drawing.h"
#include "analysis/Changes.h"
#include "job/Job.h"
#include "paper/DrawingSvg.h"
#include "paper/Router.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <map>
#include <set>

namespace drawingTest
{
using namespace coldiron;

namespace
{
struct Case
{
    std::string what;
    Harness before, after;
};

/** Asks filled with the names there are, the first that the rewire takes. */
std::optional<Harness> applied (const std::string& rewire, const Guitar& guitar, const PresetFolders& presets)
{
    Diagnostics diagnostics;
    const auto info = readRewireInfo (rewire, presets, diagnostics);
    REQUIRE (info.has_value());
    std::vector<std::map<std::string, std::string>> tries { {} };
    for (const auto& ask : info->asks)
    {
        std::vector<std::string> names;
        for (const auto& part : guitar.harness.parts())
        {
            if (part.kindName() == ask.kind)
                names.push_back (part.name);
            if (ask.kind == "point")
                for (const auto& terminal : part.points())
                    names.push_back (part.name + "." + terminal);
        }
        if (ask.hasStandard && ! ask.standardOf.empty())
            continue; // taken from the guitar
        if (ask.hasStandard)
            names = { ask.standard };
        std::vector<std::map<std::string, std::string>> more;
        for (const auto& chosen : tries)
            for (const auto& name : names)
            {
                auto next = chosen;
                next[ask.name] = name;
                more.push_back (next);
            }
        tries = std::move (more);
    }
    for (const auto& arguments : tries)
    {
        Diagnostics why;
        const auto use = fillRewire (rewire, arguments, guitar.harness, presets, why);
        if (! use)
            continue;
        if (auto harness = applyRewires (guitar.harness, { *use }, "", why))
            return harness;
    }
    return std::nullopt;
}

const std::vector<Case>& cases()
{
    static const std::vector<Case> all = []
    {
        std::vector<Case> list;
        const auto presets = PresetFolders::standard();
        for (const auto& name : presets.list ("guitars"))
        {
            Diagnostics diagnostics;
            const auto guitar = readGuitar (name, presets, diagnostics);
            REQUIRE (guitar.has_value());
            list.push_back ({ name, guitar->harness, guitar->harness });
            for (const auto& rewire : presets.list ("rewires"))
                if (const auto harness = applied (rewire, *guitar, presets))
                    list.push_back ({ name + " with " + rewire, guitar->harness, *harness });
        }
        return list;
    }();
    return all;
}

SolderPair ordered (const std::string& a, const std::string& b) { return a < b ? SolderPair { a, b } : SolderPair { b, a }; }
}

TEST_CASE ("every shipped guitar with every rewire that fits is drawn whole", "[drawing]")
{
    REQUIRE (cases().size() > 20);
    for (const auto& one : cases())
    {
        INFO (one.what);
        const auto drawing = drawWiring (one.before, one.after, { 3, true, (&one - cases().data()) % 2 == 0 ? 0.0 : 1.72 });
        CHECK (drawing.unrouted == 0);

        const auto changes = changesBetween (one.before, one.after);
        const auto pairs = solderPairs (one.after);
        std::map<std::string, Shape::Spot> spots;
        for (const auto& point : drawing.points)
            spots[point.point] = point.spot;
        for (const auto& name : one.after.allPoints())
            if (name != "strings") // drawn where it is wired
                CHECK (spots.count (name) == 1);
        for (const auto& [a, b] : pairs)
            CHECK ((spots.count (a) == 1 && spots.count (b) == 1));

        std::map<std::pair<int, int>, int> straightAcross, straightAlong, turned;
        for (const auto& wire : drawing.wires)
        {
            INFO (wire.from << " to " << wire.to);
            REQUIRE (wire.way.size() >= 2);
            const auto pair = ordered (wire.from, wire.to);
            CHECK (wire.isOpened != std::binary_search (pairs.begin(), pairs.end(), pair));

            // It ends at its two lugs, or on the same lug further out.
            const auto near = [&] (const Shape::Spot& end, const std::string& name)
            {
                const auto& lug = spots.at (name);
                return (end.x == lug.x && std::abs (end.y - lug.y) <= 40) || (end.y == lug.y && std::abs (end.x - lug.x) <= 40);
            };
            CHECK (near (wire.way.front(), wire.from));
            CHECK (near (wire.way.back(), wire.to));

            for (size_t k = 1; k + 1 < wire.way.size(); ++k)
            {
                const auto &a = wire.way[k - 1], &c = wire.way[k], &b = wire.way[k + 1];
                const std::pair<int, int> cell { static_cast<int> (c.x), static_cast<int> (c.y) };
                ++(a.y == b.y ? straightAcross : a.x == b.x ? straightAlong : turned)[cell];
            }
        }
        // No wire lies along another, and none turns where another passes.
        for (const auto* way : { &straightAcross, &straightAlong, &turned })
            for (const auto& [cell, count] : *way)
                CHECK (count == 1);
        for (const auto& [cell, count] : turned)
            CHECK (straightAcross.count (cell) + straightAlong.count (cell) == 0);

        // Every new part and every removed one is flagged.
        size_t flags = 0;
        for (const auto& shape : drawing.shapes)
            flags += shape.type == "part-new" || shape.type == "part-out";
        CHECK (flags == changes.fitted.size() + changes.replaced.size() + changes.removed.size());
    }
}

TEST_CASE ("every solder point is in one place, far enough from any other, and every joint can be taken hold of", "[drawing]")
{
    double closest = 1e9;
    for (const auto& one : cases())
    {
        INFO (one.what);
        const auto drawing = drawWiring (one.before, one.after, { 1, true });
        std::map<std::string, Shape::Spot> spots;
        for (const auto& point : drawing.points)
        {
            CHECK (spots.emplace (point.point, point.spot).second);
            const bool stays = point.point == "strings" || one.after.find (splitPoint (point.point).first) != nullptr;
            CHECK (point.isOut != stays);
        }
        for (const auto& name : one.after.allPoints())
            CHECK (spots.count (name) == 1);
        for (auto a = drawing.points.begin(); a != drawing.points.end(); ++a)
            for (auto b = std::next (a); b != drawing.points.end(); ++b)
                closest = std::min (closest, std::hypot (a->spot.x - b->spot.x, a->spot.y - b->spot.y));

        std::map<SolderPair, std::set<std::string>> heldOf;
        for (const auto& grip : drawing.grips)
        {
            INFO (grip.held << " off " << grip.from);
            heldOf[ordered (grip.held, grip.from)].insert (grip.held);
            REQUIRE_FALSE (grip.way.empty());
            const auto& lug = spots.at (grip.from);
            const bool air = one.after.isLead (grip.held) && one.after.isLead (grip.from);
            const bool onCase = splitPoint (grip.from).second == "case", atSign = one.after.isLead (grip.held);
            const double near = std::hypot (grip.way.front().x - lug.x, grip.way.front().y - lug.y);
            CHECK ((air || onCase || atSign || near <= 40.0));
        }
        for (const auto& [a, b] : solderPairs (one.after))
        {
            INFO (a << " and " << b);
            const bool leadA = one.after.isLead (a), leadB = one.after.isLead (b),
                       tongue = splitPoint (a).first == splitPoint (b).first && ! leadA && ! leadB;
            const auto& held = heldOf[{ a, b }];
            CHECK (held.size() == (leadA != leadB ? 1u : tongue ? held.size() : 2u));
            CHECK_FALSE (held.empty());
            if (leadA != leadB)
                CHECK (*held.begin() == (leadA ? a : b));
        }
    }
    CHECK (closest >= 20.0); // drawing units: 10 px at half the scale at which a unit is a pixel
}

TEST_CASE ("each joint to make carries one number", "[drawing]")
{
    for (const auto& one : cases())
    {
        INFO (one.what);
        const auto changes = changesBetween (one.before, one.after);
        std::multiset<std::string> wanted, found;
        for (const auto& made : changes.made)
            wanted.insert (std::to_string (made.number));
        for (const auto& shape : drawWiring (one.before, one.after, { 1, true }).shapes)
            if (shape.type == "step")
                found.insert (shape.text);
        CHECK (found == wanted);
    }
}

TEST_CASE ("the same harness gives the same bytes", "[drawing]")
{
    const auto& one = cases().back();
    CHECK (drawingSvg (drawWiring (one.before, one.after)) == drawingSvg (drawWiring (one.before, one.after)));
}

TEST_CASE ("made and opened pairs turn one harness's pairs into the other's", "[drawing]")
{
    for (const auto& one : cases())
    {
        INFO (one.what);
        const auto changes = changesBetween (one.before, one.after);
        const auto old = solderPairs (one.before), now = solderPairs (one.after);
        std::set<SolderPair> pairs (old.begin(), old.end());
        for (const auto& opened : changes.opened)
            CHECK (pairs.erase (opened.pair) == 1);
        for (const auto& made : changes.made)
            CHECK (pairs.insert (made.pair).second);
        CHECK (std::vector<SolderPair> (pairs.begin(), pairs.end()) == now);
        if (one.what.find (" with ") == std::string::npos)
            CHECK (changes.nothing());
    }
}

TEST_CASE ("an independent volume moves two wires and makes no new part", "[drawing]")
{
    const auto presets = PresetFolders::standard();
    Diagnostics diagnostics;
    const auto guitar = readGuitar ("two-humbuckers-four-knobs", presets, diagnostics);
    REQUIRE (guitar.has_value());
    const auto use = fillRewire ("independent-volumes", { { "pot", "bridge-volume" } }, guitar->harness, presets, diagnostics);
    REQUIRE (use.has_value());
    const auto after = applyRewires (guitar->harness, { *use }, "", diagnostics);
    REQUIRE (after.has_value());
    const auto changes = changesBetween (guitar->harness, *after);
    CHECK (changes.fitted.empty());
    CHECK (changes.made.size() == changes.opened.size());
    // The pickup's lead, the tone's wire and the toggle's wire change lugs on one pot.
    CHECK (changes.made.size() == 3);
    CHECK (changes.jointsToMake (*after) >= 2);
}

TEST_CASE ("the router finds a way round a wall and refuses where there is none", "[drawing]")
{
    Board board { 20, 12, std::vector<uint8_t> (240, 0) };
    for (int row = 0; row < 11; ++row)
        board.blocked[static_cast<size_t> (row * 20 + 10)] = 1;
    const std::vector<Port> ports { { { { 4, 5 } }, Heading::right }, { { { 16, 5 } }, Heading::left } };
    CHECK (route (board, ports, { { 0, 1 } }, 3).paths[0].empty()); // the last row is the edge, where no wire runs
    board.blocked[10 * 20 + 10] = 0;
    const auto open = route (board, ports, { { 0, 1 } }, 3);
    REQUIRE (open.paths[0].size() == 23); // 12 across and 5 down and 5 up again, with both ends
    board.blocked[10 * 20 + 10] = 1;
    CHECK (route (board, ports, { { 0, 1 } }, 3).paths[0].empty());
}

TEST_CASE ("crossings of the whole catalogue are counted, and drawn into COLDIRON_DRAWINGS where that is set",
           "[drawing][.count]")
{
    int crossings = 0, worst = 0, many = 0;
    double scale = 0.0, smallest = 1e9;
    std::string where;
    const char* folder = std::getenv ("COLDIRON_DRAWINGS");
    for (const auto& one : cases())
    {
        const auto drawing =
            drawWiring (one.before, one.after, { 60, true, std::getenv ("COLDIRON_NARROW") != nullptr ? 0.0 : 1.72 });
        crossings += drawing.crossings;
        many += drawing.crossings > 15;
        if (drawing.crossings > worst)
        {
            worst = drawing.crossings;
            where = one.what;
        }
        const double fit = std::min (1136.0 / drawing.width, 660.0 / drawing.height); // the window at 1200 x 800
        scale += fit;
        smallest = std::min (smallest, fit);
        if (folder != nullptr)
        {
            auto name = one.what;
            std::replace (name.begin(), name.end(), ' ', '-');
            std::ofstream (std::string (folder) + "/" + name + ".svg") << drawingSvg (drawing);
        }
    }
    WARN (cases().size() << " drawings, " << crossings << " crossings, at most " << worst << " (" << where << "), " << many
                         << " with more than 15; scale at 1200 x 800 " << scale / cases().size() << " on average, " << smallest
                         << " least");
    CHECK (crossings > 0);
}
}
