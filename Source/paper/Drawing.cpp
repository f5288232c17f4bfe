#include "paper/Drawing.h"

#include "paper/DrawingGrips.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace coldiron
{
namespace
{
using Anchor = Shape::Anchor;

class WiringRenderer : private DrawingGrips
{
public:
    using DrawingGrips::DrawingGrips;

    Drawing draw()
    {
        sortPairs();
        size();
        routeRuns();
        drawAll();
        collectGrips();
        return std::move (drawing);
    }

private:
    static std::vector<Shape::Spot> corners (const std::vector<Shape::Spot>& way)
    {
        std::vector<Shape::Spot> result { way.front() };
        for (size_t i = 1; i + 1 < way.size(); ++i)
        {
            const bool straight =
                (way[i - 1].x == way[i].x && way[i].x == way[i + 1].x) || (way[i - 1].y == way[i].y && way[i].y == way[i + 1].y);
            if (! straight)
                result.push_back (way[i]);
        }
        if (way.size() > 1)
            result.push_back (way.back());
        return result;
    }

    /** The best place for a number or a cut: in a long free stretch, away from lugs, signs, numbers and other wires. */
    Shape::Spot labelSpot (const Run& run, const std::vector<Shape::Spot>& isNonlinear, bool& across)
    {
        Shape::Spot best = isNonlinear.front();
        double bestScore = -1e9;
        across = true;
        for (size_t i = 0; i + 1 < isNonlinear.size(); ++i)
        {
            const double length = std::hypot (isNonlinear[i + 1].x - isNonlinear[i].x, isNonlinear[i + 1].y - isNonlinear[i].y);
            for (double f : { 0.5, 0.35, 0.65, 0.2, 0.8 })
            {
                const Shape::Spot at { isNonlinear[i].x + (isNonlinear[i + 1].x - isNonlinear[i].x) * f,
                                       isNonlinear[i].y + (isNonlinear[i + 1].y - isNonlinear[i].y) * f };
                double score = std::min (length, 160.0) - std::abs (f - 0.5) * 20;
                for (const auto& taken : busy)
                    if (std::hypot (taken.x - at.x, taken.y - at.y) < 27)
                        score -= 500;
                for (const auto& other : runs)
                    if (&other != &run
                        && std::any_of (other.way.begin(), other.way.end(),
                                        [&] (const auto& c) { return std::abs (c.x - at.x) < 14 && std::abs (c.y - at.y) < 13; }))
                        score -= 90;
                if (score > bestScore)
                {
                    bestScore = score;
                    best = at;
                    across = isNonlinear[i].y == isNonlinear[i + 1].y;
                }
            }
        }
        busy.push_back (best);
        return best;
    }

    void drawRun (Pen& pen, const Run& run)
    {
        if (run.way.size() < 2)
            return;
        const auto isNonlinear = corners (run.way);
        const double weight = run.isNew ? 4.8 : run.isOpened ? 2.0 : 2.4;
        pen.line ("casing", isNonlinear, Ink::paper, weight + 5).radius = 8;
        auto& line = pen.line (run.isNew      ? "wire-new"
                               : run.isOpened ? "wire-opened"
                                              : "wire-stays",
                               isNonlinear,
                               run.isNew      ? Ink::heat
                               : run.isOpened ? Ink::mute
                                              : Ink::wire,
                               weight);
        line.radius = 8;
        if (run.isOpened)
        {
            line.dash = 7;
            line.gap = 6;
        }
    }

    void drawBeads (Pen& pen, const Run& run)
    {
        if (run.way.empty())
            return;
        const bool bothLeads = isLeadPoint (run.pair.first) && isLeadPoint (run.pair.second);
        if (bothLeads) // an air joint: one bead, where the leads meet
        {
            const auto middle = run.way[run.way.size() / 2];
            if (run.isOpened)
                return;
            pen.bead (middle.x, middle.y, run.isNew);
            return;
        }
        for (int e = 0; e < 2; ++e)
        {
            const auto& point = e == 0 ? run.pair.first : run.pair.second;
            if (isLeadPoint (point))
                continue;
            const auto& at = e == 0 ? run.way.front() : run.way.back();
            if (run.isOpened)
                pen.circle ("bead-open", at.x, at.y, 5, Ink::paper, Ink::mute, 1.8);
            else
                pen.bead (at.x, at.y, run.isNew && point != run.resting);
        }
    }

    void drawTongue (Pen& pen, const SolderTab& tongue)
    {
        const auto lugName = splitPoint (tongue.pair.first).second == "case" ? tongue.pair.second : tongue.pair.first;
        const auto& spotted = terminals.at (lugName);
        const double side = spotted.terminal->x < spotted.part->x ? -1.0 : 1.0;
        const double lx = spotted.terminal->x, ly = spotted.terminal->y - 16;
        const Shape::Spot rim { spotted.part->x + side * 56.0, spotted.part->y + 20.0 };
        const auto ink = tongue.isNew ? Ink::heat : tongue.isOpened ? Ink::mute : Ink::ink;
        std::vector<Shape::Spot> bow;
        const Shape::Spot p0 { lx + side * 4, ly }, p1 { lx + side * 34, ly + 8 }, p2 { lx + side * 44, ly - 34 };
        for (int i = 0; i <= 12; ++i)
        {
            const double t = i / 12.0, u = 1 - t;
            bow.push_back ({ u * u * u * p0.x + 3 * u * u * t * p1.x + 3 * u * t * t * p2.x + t * t * t * rim.x,
                             u * u * u * p0.y + 3 * u * u * t * p1.y + 3 * u * t * t * p2.y + t * t * t * rim.y });
        }
        const auto middle = bow[6];
        auto& line = pen.line (tongue.isOpened ? "tongue-opened" : "tongue", std::move (bow), ink, tongue.isNew ? 4.8 : 3.2);
        if (tongue.isOpened)
        {
            line.dash = 7;
            line.gap = 6;
            pen.cut (middle.x, middle.y, false);
        }
        else
            pen.bead (rim.x, rim.y, tongue.isNew);
        if (tongue.number > 0)
        {
            pen.stepNumber (middle.x + side * 12, middle.y, tongue.number);
            busy.push_back ({ middle.x + side * 12, middle.y });
        }
    }

    void drawStub (Pen& pen, const std::string& point)
    {
        const auto found = terminals.find (point);
        if (found == terminals.end())
            return;
        const auto& t = *found->second.terminal;
        const double dx = t.out == Heading::left || (t.out == Heading::down && splitPoint (point).second != "1") ? -1.0 : 1.0;
        auto& line = pen.line ("wire-opened", { { t.x + dx * 6, t.y + 4.0 }, { t.x + dx * 30, t.y + 28.0 } }, Ink::mute, 2);
        line.dash = 7;
        line.gap = 5;
        const double x = t.x + dx * 18, y = t.y + 16;
        pen.circle ("cut-gap", x, y, 6, Ink::paper);
        for (double d : { -3.0, 3.0 }) // two strokes across the slanting stub
            pen.line ("cut", { { x + dx * d - dx * 5, y + d + 5 }, { x + dx * d + dx * 5, y + d - 5 } }, Ink::ink, 2.4);
        busy.push_back ({ x, y });
    }

    /** A lead on nothing is taped off. */
    void drawTape (Pen& pen, const Terminal& t)
    {
        const bool across = t.out == Heading::left || t.out == Heading::right;
        pen.rect ("tape", t.x - (across ? 10 : 6), t.y - (across ? 6 : 10), across ? 20 : 12, across ? 12 : 20, 4, Ink::paper,
                  Ink::ink, 1.8);
        if (t.out == Heading::right)
            pen.text ("taped", t.x + 16, t.y + 5, "taped off", 16, Anchor::start, Ink::mute).italic = true;
    }

    void drawGround (Pen& pen, const std::string& point, const GroundMark& mark)
    {
        const auto& t = *terminals.at (point).terminal;
        const auto sign = signSpot (t);
        const auto ink = mark.isNew ? Ink::heat : Ink::ink;
        if (sign.x != t.x)
            pen.line ("ground", { { static_cast<double> (t.x), static_cast<double> (t.y) }, sign }, ink, mark.isNew ? 3.4 : 2.2);
        pen.groundSign (sign.x, sign.y + (t.out == Heading::down ? 2 : 0), mark.isNew);
        if (! isPickupPoint (point))
            pen.bead (t.x, t.y, mark.isNew);
        for (size_t i = 0; i < mark.numbers.size(); ++i)
        {
            const auto at = numberSpot (t, i);
            pen.stepNumber (at.x, at.y, mark.numbers[i]);
        }
    }

    void drawLegend (Pen& pen)
    {
        const double y = drawing.height - 24;
        const bool changed = ! changes.nothing();
        const auto words = [&] (double x, const char* text) { pen.text ("legend", x, y + 5, text, 16, Anchor::start); };
        pen.line ("legend", { { 40, y }, { 80, y } }, Ink::wire, 2.4);
        words (90, "stays");
        double x = 160;
        if (changed)
        {
            pen.line ("legend", { { x + 8, y }, { x + 48, y } }, Ink::heat, 4.8);
            pen.bead (x + 8, y, true);
            pen.bead (x + 48, y, true);
            words (x + 62, "solder, in order");
            x += 212;
            auto& dashed = pen.line ("legend", { { x, y }, { x + 50, y } }, Ink::mute, 2);
            dashed.dash = 7;
            dashed.gap = 6;
            pen.cut (x + 25, y, true);
            words (x + 62, "unsolder");
            x += 160;
        }
        pen.groundSign (x + 12, y - 8, false);
        words (x + 34, "ground, all one net");
        x += 210;
        const auto more = [&] (const char* text, double width)
        {
            if (x + width > drawing.width - 40) // a narrow drawing goes without
                return;
            words (x, text);
            x += width + 24;
        };
        if (hasPushPull())
            more ("push-pull drawn down", 170);
        if (! changes.fitted.empty())
            more ("what stays on a new part is soldered anew", 330);
    }

    bool hasPushPull() const
    {
        const auto& parts = after.parts();
        return std::any_of (parts.begin(), parts.end(),
                            [] (const Part& part)
                            {
                                const auto* lever = part.as<SwitchPart>();
                                return lever != nullptr && ! lever->on.empty();
                            });
    }

    void drawAll()
    {
        Pen pen (drawing.shapes);
        pen.rect ("sheet", 0, 0, drawing.width, drawing.height, 0, Ink::paper);
        for (const auto& [point, spotted] : terminals)
            busy.push_back ({ static_cast<double> (spotted.terminal->x), static_cast<double> (spotted.terminal->y) });
        for (const auto& [point, mark] : marks)
        {
            const auto sign = signSpot (*terminals.at (point).terminal);
            busy.push_back ({ sign.x, sign.y + 10 });
            for (size_t i = 0; i < mark.numbers.size(); ++i)
                busy.push_back (numberSpot (*terminals.at (point).terminal, i));
        }

        drawBlockLinks (pen);
        // Opened below, then what stays, then what is new.
        for (int layer = 0; layer < 3; ++layer)
            for (const auto& run : runs)
                if ((run.isOpened ? 0 : run.isNew ? 2 : 1) == layer)
                    drawRun (pen, run);
        for (const auto& part : placed)
            drawPart (pen, part);
        for (const auto& tongue : tongues)
            drawTongue (pen, tongue);
        for (const auto& [point, mark] : marks)
            drawGround (pen, point, mark);
        drawLongLugs (pen);
        for (const auto& run : runs)
            drawBeads (pen, run);
        for (const auto& point : stubs)
            drawStub (pen, point);
        for (const auto& lead : freeLeads)
            drawTape (pen, *terminals.at (lead).terminal);
        char letter = 'a';
        for (const auto& run : runs)
        {
            if (run.way.size() < 2)
            {
                // No way found: the same letter at both ends.
                for (const auto& end : { run.pair.first, run.pair.second })
                {
                    const auto& t = *terminals.at (end).terminal;
                    pen.circle ("letter-ring", t.x, t.y, 11, Ink::paper, run.isNew ? Ink::heat : Ink::ink, 2);
                    pen.text ("letter", t.x, t.y + 5, std::string (1, letter), 15, Anchor::middle);
                }
                ++letter;
                continue;
            }
            if (! run.isNew && ! run.isOpened)
                continue;
            bool across = true;
            const auto at = labelSpot (run, corners (run.way), across);
            if (run.isOpened)
                pen.cut (at.x, at.y, across);
            else
                pen.stepNumber (at.x, at.y, run.number);
        }
        if (options.legend)
            drawLegend (pen);
    }

    /** A push-pull's block belongs to its pot: two dotted lines. */
    void drawBlockLinks (Pen& pen)
    {
        for (const auto& block : placed)
        {
            const auto* part = block.part->as<SwitchPart>();
            if (part == nullptr || part->on.empty())
                continue;
            for (const auto& pot : placed)
                if (pot.part->name == part->on)
                    for (double d : { -20.0, 20.0 })
                    {
                        const bool beside = block.x != pot.x;
                        std::vector<Shape::Spot> way { { pot.x + d, block.y + block.height / 2.0 }, { pot.x + d, pot.y - 60.0 } };
                        if (beside)
                            way = { { block.x + block.width / 2.0, pot.y + d }, { pot.x - 57.0, pot.y + d } };
                        auto& link =
                            pen.line ("block-link", std::move (way), block.mark == PartMark::isNew ? Ink::heat : Ink::ink, 2);
                        link.dash = 2;
                        link.gap = 5;
                    }
        }
    }

    /** A lug with many wires is drawn as long as its wires need. */
    void drawLongLugs (Pen& pen)
    {
        std::map<std::string, Shape::Spot> farthest;
        for (const auto& run : runs)
            if (! run.way.empty())
                for (int e = 0; e < 2; ++e)
                {
                    const auto& point = e == 0 ? run.pair.first : run.pair.second;
                    const auto& t = *terminals.at (point).terminal;
                    const auto& end = e == 0 ? run.way.front() : run.way.back();
                    auto& far = farthest.emplace (point, Shape::Spot { static_cast<double> (t.x), static_cast<double> (t.y) })
                                    .first->second;
                    if (std::abs (end.x - t.x) + std::abs (end.y - t.y) > std::abs (far.x - t.x) + std::abs (far.y - t.y))
                        far = end;
                }
        for (const auto& [point, far] : farthest)
        {
            const auto& t = *terminals.at (point).terminal;
            if (far.x != t.x || far.y != t.y)
                pen.line ("lead", { { static_cast<double> (t.x), static_cast<double> (t.y) }, far }, Ink::ink, 5);
        }
    }
};
}

Drawing drawWiring (const Harness& before, const Harness& after, const DrawingOptions& options)
{
    return WiringRenderer (before, after, options).draw();
}
}
