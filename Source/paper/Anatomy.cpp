#include "paper/Anatomy.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <cstdio>

namespace coldiron
{
namespace
{
int rowsOf (const PlacedPart& p)
{
    const int count = static_cast<int> (p.part->points().size());
    return count > 6 ? (count + 1) / 2 : count;
}

/** Room for the longest name, B612 at 16 units: about 9.5 a letter. */
int nameWidth (const std::vector<std::string>& names)
{
    size_t longest = 0;
    for (const auto& name : names)
        longest = std::max (longest, name.size());
    return static_cast<int> (std::ceil (static_cast<double> (longest) * 9.5 / 10.0)) * 10;
}
}

bool isPlainPushPull (const SwitchType& type, std::vector<std::string>& poles)
{
    const auto has = [&type] (const std::string& name)
    { return std::find (type.points.begin(), type.points.end(), name) != type.points.end(); };
    poles.clear();
    for (const auto& name : type.points)
        if (has (name + "-down") && has (name + "-up"))
            poles.push_back (name);
    return ! poles.empty() && poles.size() <= 2 && type.points.size() == poles.size() * 3;
}

const Part& bridgePart()
{
    static const Part part { "strings", JackPart {}, "", "" };
    return part;
}

Figure figureOf (const Part& part)
{
    if (&part == &bridgePart())
        return Figure::bridge;
    if (part.as<PickupPart>() != nullptr)
        return Figure::pickup;
    if (part.as<PotPart>() != nullptr)
        return Figure::pot;
    if (part.as<JackPart>() != nullptr)
        return Figure::jack;
    if (const auto* lever = part.as<SwitchPart>())
    {
        std::vector<std::string> poles;
        if (isPlainPushPull (lever->type, poles))
            return Figure::block;
        return lever->type.points.size() <= 4 && nameWidth (lever->type.points) <= 80 && lever->on.empty() ? Figure::lever
                                                                                                           : Figure::strip;
    }
    return part.as<BufferPart>() != nullptr ? Figure::strip : Figure::lying;
}

void measure (PlacedPart& p)
{
    const auto points = p.part->points();
    const int count = static_cast<int> (points.size());
    switch (p.figure)
    {
    case Figure::pickup:
        p.width = 200;
        p.height = std::max (2, count) * 40;
        break;
    case Figure::pot: p.width = p.height = 120; break;
    case Figure::block: p.width = p.height = 120; break;
    case Figure::lever:
        p.width = std::max (180, count * std::max (60, nameWidth (points) / 20 * 20 + 20));
        p.height = 90;
        break;
    case Figure::strip:
        p.width = (count > 6 ? 2 : 1) * std::max (60, nameWidth (points)) + 60;
        p.width = (std::max (p.width, 140) + 19) / 20 * 20;
        p.height = rowsOf (p) * 40 + 50;
        break;
    case Figure::standing:
        p.width = 40;
        p.height = 80;
        break;
    case Figure::lying:
        p.width = 100;
        p.height = 40;
        break;
    case Figure::jack: p.width = p.height = 120; break;
    case Figure::bridge:
        p.width = 200;
        p.height = 40;
        break;
    }
}

Extents extentsOf (const PlacedPart& p)
{
    const int w = p.width, h = p.height;
    switch (p.figure)
    {
    case Figure::pickup: return { 0, 36, w + 20, h + 10 };
    case Figure::pot: return { 70, 70, 110, 120 };
    case Figure::block: return { 130, 100, 130, 70 };
    case Figure::lever: return { w / 2, 80, w / 2, 100 };
    case Figure::strip: return { w / 2 + 60, h / 2 + 40, w / 2 + 60, h / 2 + 10 };
    case Figure::standing: return { 90, 50, 50, 70 };
    case Figure::lying: return { 70, 40, 70, 50 };
    case Figure::bridge: return { 0, 10, w + 20, h + 10 };
    default: return { 110, 90, 60, 70 };
    }
}

void buildAnatomy (PlacedPart& p)
{
    const int x = p.x, y = p.y, w = p.width, h = p.height;
    const auto points = p.part->points();
    p.terminals.clear();
    p.taken.clear();
    const auto add = [&p] (const std::string& terminal, int tx, int ty, Heading out) {
        p.terminals.push_back ({ p.part->name + "." + terminal, tx, ty, out });
    };

    switch (p.figure)
    {
    case Figure::pickup:
    {
        // Start and finish, then finish and start: a series joint is two neighbours.
        const auto& coils = p.part->as<PickupPart>()->pickup.coils;
        int row = 0;
        for (size_t c = 0; c < coils.size(); ++c)
            for (int e = 0; e < 2; ++e, ++row)
                add (coils[c].name + ((e == 0) == (c % 2 == 0) ? ".start" : ".finish"), x + w + 20, y + 20 + row * 40,
                     Heading::right);
        if (p.part->as<PickupPart>()->pickup.shield)
            add ("shield", x + w + 20, y + 20 + row * 40, Heading::right);
        p.taken = { { x - 10, y - 36, w + 20, h + 46 } };
        break;
    }
    case Figure::pot:
        add ("1", x + 40, y + 100, Heading::down);
        add ("2", x, y + 100, Heading::down);
        add ("3", x - 40, y + 100, Heading::down);
        add ("case", x + 70, y - 20, Heading::right);
        p.taken = { { x - 60, y - 60, 120, 150 } };
        if (p.mark != PartMark::stays)
            p.taken.push_back ({ x + 40, y - 70, 50, 20 });
        break;
    case Figure::block:
    {
        std::vector<std::string> poles;
        isPlainPushPull (p.part->as<SwitchPart>()->type, poles);
        for (size_t i = 0; i < poles.size(); ++i)
        {
            const int tx = i == 0 ? x - 90 : x + 90;
            const auto out = i == 0 ? Heading::left : Heading::right;
            add (poles[i] + "-up", tx, y - 40, out);
            add (poles[i], tx, y, out);
            add (poles[i] + "-down", tx, y + 40, out);
            for (int row : { -40, 0, 40 })
                p.taken.push_back ({ i == 0 ? x - 80 : x + 60, y + row, 20, 0 });
        }
        p.taken.push_back ({ x - 60, y - 100, 120, 160 });
        break;
    }
    case Figure::lever:
    {
        const int count = static_cast<int> (points.size());
        const int pitch = std::max (60, nameWidth (points) / 20 * 20 + 20);
        for (int i = 0; i < count; ++i)
            add (points[static_cast<size_t> (i)], x + i * pitch - (count - 1) * pitch / 2, y + 70, Heading::down);
        p.taken = { { x - w / 2, y - 70, w, 130 } };
        break;
    }
    case Figure::strip:
    {
        const int rows = rowsOf (p), count = static_cast<int> (points.size());
        for (int i = 0; i < count; ++i)
        {
            const bool left = i < rows;
            const int row = left ? i : i - rows;
            add (points[static_cast<size_t> (i)], left ? x - w / 2 - 20 : x + w / 2 + 20, y - (h / 20) * 10 + 50 + row * 40 + 10,
                 left ? Heading::left : Heading::right);
        }
        p.taken = { { x - w / 2 - 10, y - h / 2 - 36, w + 20, h + 46 } };
        break;
    }
    case Figure::bridge:
        p.terminals.push_back ({ "strings", x + w + 20, y + 20, Heading::right });
        p.taken = { { x - 10, y - 10, w + 20, h + 20 } };
        break;
    case Figure::standing:
        add (p.turned ? "2" : "1", x, y - 40, Heading::up);
        add (p.turned ? "1" : "2", x, y + 40, Heading::down);
        p.taken = { { x - 20, y - 30, 40, 60 }, { x - 90, y - 14, 70, 30 } };
        break;
    case Figure::lying:
        add (p.turned ? "2" : "1", x - 50, y, Heading::left);
        add (p.turned ? "1" : "2", x + 50, y, Heading::right);
        p.taken = { { x - 40, p.mark == PartMark::stays ? y - 20 : y - 50, 80, p.mark == PartMark::stays ? 62 : 92 } };
        break;
    default:
    {
        const int count = static_cast<int> (points.size());
        const int pitch = count > 2 ? 30 : 40;
        for (int i = 0; i < count; ++i)
            add (points[static_cast<size_t> (i)], x - 70, y + i * pitch - (count - 1) * pitch / 2, Heading::left);
        p.taken = { { x - 60, y - 90, 120, 150 } };
    }
    }
}
}
