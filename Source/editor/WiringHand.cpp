#include "editor/WiringHand.h"

#include "files/Quantity.h"
#include "wording/HandWords.h"
#include "wording/PartWords.h"

#include <algorithm>
#include <cctype>
#include <cmath>

namespace coldiron
{
namespace
{
double distance (const Shape::Spot& a, const Shape::Spot& b) { return std::hypot (a.x - b.x, a.y - b.y); }

/** From a spot to a line of one spot or more. */
double distance (const Shape::Spot& at, const std::vector<Shape::Spot>& way)
{
    double least = distance (at, way.front());
    for (size_t i = 1; i < way.size(); ++i)
    {
        const auto &a = way[i - 1], &b = way[i];
        const double dx = b.x - a.x, dy = b.y - a.y, square = dx * dx + dy * dy;
        const double t = square > 0.0 ? std::clamp (((at.x - a.x) * dx + (at.y - a.y) * dy) / square, 0.0, 1.0) : 0.0;
        least = std::min (least, distance (at, { a.x + t * dx, a.y + t * dy }));
    }
    return least;
}

std::string lower (std::string text)
{
    for (auto& c : text)
        c = static_cast<char> (std::tolower (static_cast<unsigned char> (c)));
    return text;
}

std::vector<std::string> wordsOf (const std::string& text)
{
    std::vector<std::string> list { "" };
    for (char c : lower (text))
        if (std::isalnum (static_cast<unsigned char> (c)) != 0)
            list.back() += c;
        else if (! list.back().empty())
            list.emplace_back();
    if (list.back().empty())
        list.pop_back();
    return list;
}
}

void WiringHand::show (std::shared_ptr<const Drawing> next, const CircuitConfig& config)
{
    const bool same = drawing != nullptr && config.harness.sameAs (shown.harness) && config.setting == shown.setting;
    drawing = std::move (next);
    if (same)
        return;
    putBack();
    shown = config;
    checker.reset();
}

const HandCheck& WiringHand::check() const
{
    if (! checker)
        checker.emplace (shown);
    return *checker;
}

void WiringHand::hide()
{
    putBack();
    drawing = nullptr;
}

std::string WiringHand::pointNear (Shape::Spot at, double reach) const
{
    std::string best;
    if (drawing != nullptr)
        for (const auto& point : drawing->points)
            if (const double d = distance (at, point.spot); ! point.isOut && d <= reach)
            {
                reach = d;
                best = point.point;
            }
    return best;
}

const DrawnGrip* WiringHand::gripNear (Shape::Spot at, double reach) const
{
    const DrawnGrip* best = nullptr;
    double toLug = 1e9;
    if (drawing != nullptr)
        for (const auto& grip : drawing->grips)
        {
            const double d = distance (at, grip.way), lug = distance (at, grip.way.front());
            // Of two halves of one wire the one whose end is nearer.
            if (d < reach - 0.5 || (d < reach + 0.5 && lug < toLug))
            {
                reach = std::min (reach, d);
                toLug = lug;
                best = &grip;
            }
        }
    return best;
}

const Shape::Spot* WiringHand::spotOf (const std::string& point) const
{
    if (drawing != nullptr)
        for (const auto& drawn : drawing->points)
            if (drawn.point == point)
                return &drawn.spot;
    return nullptr;
}

std::string WiringHand::pointTowards (const std::string& from, int dx, int dy) const
{
    const auto* here = spotOf (from);
    if (here == nullptr)
        return pointAfter ("", 1);
    std::string best = from;
    double least = 1e9;
    for (const auto& point : drawing->points)
    {
        const double x = point.spot.x - here->x, y = point.spot.y - here->y;
        const double ahead = x * dx + y * dy, aside = std::abs (x * dy) + std::abs (y * dx);
        if (point.isOut || ahead < 5.0 || aside > 3.0 * ahead)
            continue;
        if (const double score = ahead + 2.0 * aside; score < least)
        {
            least = score;
            best = point.point;
        }
    }
    return best;
}

std::string WiringHand::pointAfter (const std::string& from, int by) const
{
    if (drawing == nullptr)
        return "";
    std::vector<std::string> list;
    for (const auto& name : harness().allPoints())
        if (spotOf (name) != nullptr)
            list.push_back (name);
    if (list.empty())
        return "";
    const auto found = std::find (list.begin(), list.end(), from);
    const int count = static_cast<int> (list.size());
    const int place = found == list.end() ? (by > 0 ? -1 : count) : static_cast<int> (found - list.begin());
    return list[static_cast<size_t> (((place + by) % count + count) % count)];
}

std::string WiringHand::pointCalled (const std::string& text) const
{
    const auto wanted = wordsOf (text);
    if (wanted.empty() || drawing == nullptr)
        return "";
    for (const auto& name : harness().allPoints())
    {
        const auto have = wordsOf (wording::point (harness(), name));
        const bool all = std::all_of (
            wanted.begin(), wanted.end(),
            [&] (const auto& word)
            { return std::any_of (have.begin(), have.end(), [&] (const auto& h) { return h.rfind (word, 0) == 0; }); });
        if (all && spotOf (name) != nullptr)
            return name;
    }
    return "";
}

void WiringHand::begin (Holding kind, HandMove next)
{
    what = kind;
    inHand = std::move (next);
    lit = kind == Holding::joint ? check().targets (inHand) : std::vector<std::string> {};
    if (kind == Holding::part)
        for (const auto& name : harness().allPoints())
            if (name != inHand.held && spotOf (name) != nullptr)
                lit.push_back (name);
    judge();
}

bool WiringHand::take (const DrawnGrip& grip)
{
    if (drawing == nullptr)
        return false;
    joint = joints = 0;
    takenAt.clear();
    begin (Holding::joint, { grip.held, grip.from, "" });
    if (judged.canBeDone())
        return true;
    putBack();
    return false;
}

bool WiringHand::takeAt (const std::string& point)
{
    if (drawing == nullptr)
        return false;
    const auto list = jointsAt (harness(), point);
    if (list.empty())
        return false;
    joint = takenAt == point && joints == list.size() ? (joint + 1) % list.size() : 0;
    joints = list.size();
    takenAt = point;
    begin (Holding::joint, { list[joint].held, list[joint].from, "" });
    return true;
}

void WiringHand::drawOutOf (const std::string& point)
{
    if (drawing == nullptr)
        return;
    joint = joints = 0;
    begin (Holding::joint, { point, "", "" });
}

bool WiringHand::takePart (const std::string& point, const std::string& value)
{
    const auto number = parseQuantity (value);
    if (drawing == nullptr || ! number || ! (*number > 0.0))
        return false;
    part = {};
    const bool small = *number < 1e-3; // farads, else ohms: no capacitor of a guitar has a millifarad, no resistor a milliohm
    if (small ? *number < 0.1e-12 : *number < 1.0 || *number > 10e9)
        return false;
    const std::string kind = small ? "cap" : "resistor";
    for (int i = 1; part.name.empty(); ++i)
        if (const auto name = kind + "-" + std::to_string (i); harness().find (name) == nullptr)
            part.name = name;
    if (small)
        part.kind = CapacitorPart { *number };
    else
        part.kind = ResistorPart { *number };
    begin (Holding::part, { point, "", "" });
    return true;
}

bool WiringHand::takeAway (const std::string& point)
{
    const auto* found = drawing != nullptr ? harness().find (splitPoint (point).first) : nullptr;
    if (found == nullptr || found->as<JackPart>() != nullptr)
        return false;
    part = *found;
    begin (Holding::removal, { point, "", "" });
    return true;
}

void WiringHand::putBack()
{
    what = Holding::nothing;
    inHand = {};
    lit.clear();
    judged = {};
    joint = joints = 0;
    takenAt.clear();
}

void WiringHand::over (const std::string& point)
{
    if (! isHolding() || what == Holding::removal || inHand.to == point)
        return;
    inHand.to = point == inHand.held ? "" : point;
    judge();
}

Harness WiringHand::tried() const
{
    if (what == Holding::joint)
        return applyStep (harness(), inHand);
    Step step;
    step.part = part.name;
    step.kind = what == Holding::removal ? Step::Kind::remove : Step::Kind::fit;
    step.as = part;
    Harness result = applyStep (harness(), step);
    if (what == Holding::part)
    {
        result = applyStep (result, HandMove { part.name + ".1", "", inHand.held });
        result = applyStep (result, HandMove { part.name + ".2", "", inHand.to });
    }
    return result;
}

void WiringHand::judge()
{
    question.clear();
    if (what == Holding::joint && inHand.from.empty() && inHand.to.empty())
        ask ("A new wire: to which point?");
    else if (what == Holding::part && inHand.to.empty())
        ask ("One leg is here: where does the other go?");
    else if (what == Holding::joint)
        judged = check().check (inHand);
    else
        try
        {
            judged = check().check (tried());
        }
        catch (const HarnessError& why)
        {
            judged = {};
            judged.kind = HandVerdict::Kind::refused;
            judged.refusal = refusalOf (why);
        }
}

void WiringHand::ask (std::string forTheOtherEnd)
{
    judged = {};
    judged.kind = HandVerdict::Kind::nothing;
    question = std::move (forTheOtherEnd);
}

std::string WiringHand::verdictWords() const { return question.empty() ? wording::handVerdict (judged, harness()) : question; }

std::string WiringHand::words() const
{
    switch (what)
    {
    case Holding::nothing: return "";
    case Holding::part: return wording::partValue (part) + " at " + wording::point (harness(), inHand.held);
    case Holding::removal: return "Remove " + wording::partTitle (part);
    case Holding::joint: break;
    }
    if (inHand.from.empty())
        return "New wire from " + wording::point (harness(), inHand.held);
    auto text = harness().isLead (inHand.held)
                    ? wording::point (harness(), inHand.held) + ", off " + wording::point (harness(), inHand.from)
                    : "Wire to " + wording::point (harness(), inHand.held) + ", off " + wording::point (harness(), inHand.from);
    if (joints > 1)
        text += " (" + std::to_string (joint + 1) + " of " + std::to_string (joints) + ", U takes the next)";
    return text;
}

std::optional<Harness> WiringHand::wanted() const
{
    if (! isHolding() || ! judged.canBeDone())
        return std::nullopt;
    if (what == Holding::part && inHand.to.empty())
        return std::nullopt;
    try
    {
        auto result = tried();
        if (result.sameAs (harness()))
            return std::nullopt;
        return result;
    }
    catch (const HarnessError&)
    {
        return std::nullopt;
    }
}
}
