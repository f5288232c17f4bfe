#include "paper/DrawingParts.h"

#include "wording/PartWords.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
using Anchor = Shape::Anchor;

Shape& Pen::line (const char* type, std::vector<Shape::Spot> spots, Ink stroke, double weight)
{
    Shape shape;
    shape.kind = Shape::Kind::polyline;
    shape.type = type;
    shape.spots = std::move (spots);
    shape.stroke = stroke;
    shape.weight = weight;
    return shapes.emplace_back (std::move (shape));
}

Shape& Pen::circle (const char* type, double x, double y, double radius, Ink fill, Ink stroke, double weight)
{
    Shape shape;
    shape.kind = Shape::Kind::circle;
    shape.type = type;
    shape.spots = { { x, y } };
    shape.radius = radius;
    shape.fill = fill;
    shape.stroke = stroke;
    shape.weight = weight;
    return shapes.emplace_back (std::move (shape));
}

Shape& Pen::rect (const char* type, double x, double y, double w, double h, double radius, Ink fill, Ink stroke, double weight)
{
    Shape shape;
    shape.kind = Shape::Kind::rect;
    shape.type = type;
    shape.spots = { { x, y } };
    shape.width = w;
    shape.height = h;
    shape.radius = radius;
    shape.fill = fill;
    shape.stroke = stroke;
    shape.weight = weight;
    return shapes.emplace_back (std::move (shape));
}

Shape& Pen::text (const char* type, double x, double y, const std::string& words, double size, Anchor anchor, Ink ink)
{
    Shape shape;
    shape.kind = Shape::Kind::text;
    shape.type = type;
    shape.spots = { { x, y } };
    shape.text = words;
    shape.size = size;
    shape.anchor = anchor;
    shape.fill = ink;
    return shapes.emplace_back (std::move (shape));
}

void Pen::bead (double x, double y, bool isNew)
{
    if (isNew)
        circle ("bead-new", x, y, 6.5, Ink::heat, Ink::paper, 1.5);
    else
        circle ("bead", x, y, 4, Ink::wire);
}

void Pen::groundSign (double x, double y, bool isNew)
{
    const auto ink = isNew ? Ink::heat : Ink::ink;
    const double weight = isNew ? 3.4 : 2.2;
    line ("ground", { { x, y }, { x, y + 9 } }, ink, weight);
    line ("ground", { { x - 11, y + 9 }, { x + 11, y + 9 } }, ink, weight);
    line ("ground", { { x - 7, y + 14 }, { x + 7, y + 14 } }, ink, weight);
    line ("ground", { { x - 3, y + 19 }, { x + 3, y + 19 } }, ink, weight);
}

void Pen::stepNumber (double x, double y, int number)
{
    rect ("step-box", x - 13, y - 12, 26, 24, 4, Ink::paper, Ink::heat, 2);
    text ("step", x, y + 6, std::to_string (number), 17, Anchor::middle).bold = true;
}

void Pen::cut (double x, double y, bool acrossWire)
{
    rect ("cut-gap", x - (acrossWire ? 7 : 10), y - (acrossWire ? 10 : 7), acrossWire ? 14 : 20, acrossWire ? 20 : 14, 0,
          Ink::paper);
    for (double d : { -5.0, 5.0 })
    {
        if (acrossWire)
            line ("cut", { { x + d - 3, y + 8 }, { x + d + 3, y - 8 } }, Ink::ink, 2.6);
        else
            line ("cut", { { x - 8, y + d + 3 }, { x + 8, y + d - 3 } }, Ink::ink, 2.6);
    }
}

namespace
{
constexpr double lead = 2.4;

/** Splits a name on two lines at the space nearest its middle. */
std::pair<std::string, std::string> twoLines (const std::string& title)
{
    size_t best = std::string::npos;
    for (size_t i = title.find (' '); i != std::string::npos; i = title.find (' ', i + 1))
        if (best == std::string::npos
            || std::abs (static_cast<double> (i) - title.size() / 2.0)
                   < std::abs (static_cast<double> (best) - title.size() / 2.0))
            best = i;
    return best == std::string::npos ? std::make_pair (title, std::string())
                                     : std::make_pair (title.substr (0, best), title.substr (best + 1));
}

class PartArtist
{
public:
    PartArtist (Pen& penToUse, const PlacedPart& placed) : pen (penToUse), p (placed), x (p.x), y (p.y), w (p.width), h (p.height)
    {
    }

    void draw()
    {
        switch (p.figure)
        {
        case Figure::pickup: pickup(); break;
        case Figure::pot: pot(); break;
        case Figure::block: block(); break;
        case Figure::lever: lever(); break;
        case Figure::strip: strip(); break;
        case Figure::standing: standing(); break;
        case Figure::lying: lying(); break;
        case Figure::bridge: bridge(); break;
        case Figure::jack: jack(); break;
        }
    }

private:
    Pen& pen;
    const PlacedPart& p;
    const double x, y, w, h;

    Ink outline() const { return p.mark == PartMark::isNew ? Ink::heat : p.mark == PartMark::isOut ? Ink::mute : Ink::ink; }
    double weight() const { return p.mark == PartMark::isNew ? 4.0 : 2.0; }

    void finish (Shape& body)
    {
        body.type = p.mark == PartMark::isNew ? "part-new" : p.mark == PartMark::isOut ? "part-out" : "part";
        if (p.mark == PartMark::isOut)
        {
            body.dash = 7;
            body.gap = 6;
        }
    }

    void flag (double fx, double fy)
    {
        if (p.mark == PartMark::stays)
            return;
        const bool isNew = p.mark == PartMark::isNew;
        pen.rect ("flag", fx, fy - 14, 42, 19, 3, isNew ? Ink::heat : Ink::mute);
        pen.text ("flag-text", fx + 21, fy, isNew ? "NEW" : "OUT", 14, Anchor::middle, Ink::paper).bold = true;
    }

    Shape& name (double nx, double ny, const std::string& words, Anchor anchor, double size = 21)
    {
        auto& shape = pen.text ("name", nx, ny, words, size, anchor);
        shape.named = true;
        return shape;
    }

    void pickup()
    {
        finish (pen.rect ("part", x, y, w, h, 14, Ink::paper, outline(), weight()));
        name (x, y - 13, wording::partTitle (*p.part), Anchor::start, 19);
        if (p.mark == PartMark::stays)
            pen.text ("value", x + w + 16, y - 13, wording::partValue (*p.part), 16, Anchor::end, Ink::mute);
        const auto& part = p.part->as<PickupPart>()->pickup;
        for (size_t i = 0; i < part.coils.size(); ++i)
        {
            const double cy = y + static_cast<double> (i) * 80;
            pen.rect ("coil", x + 12, cy + 13, 96, 54, 27, Ink::well, Ink::ink, 1.6);
            auto& poles = pen.line ("coil-poles", { { x + 32, cy + 52 }, { x + 88, cy + 52 } }, Ink::ink, 1.4);
            poles.dash = 1;
            poles.gap = 10;
            pen.text ("coil-name", x + 60, cy + 43, part.coils[i].name, 16, Anchor::middle);
        }
        for (const auto& terminal : p.terminals)
        {
            const auto pointName = splitPoint (terminal.point).second;
            const auto dot = pointName.find ('.');
            pen.line ("lead",
                      { { x + w - 2, static_cast<double> (terminal.y) },
                        { static_cast<double> (terminal.x), static_cast<double> (terminal.y) } },
                      Ink::ink, lead);
            pen.text ("lug", x + w - 8, terminal.y + 5, dot == std::string::npos ? pointName : pointName.substr (dot + 1), 16,
                      Anchor::end);
            for (const auto& [leadName, colour] : part.colours)
                if (leadName == pointName)
                    pen.text ("colour", x + w + 26, terminal.y - 6, colour, 16, Anchor::start, Ink::mute).italic = true;
        }
        flag (x + w - 42, y - 13);
    }

    void pot()
    {
        pen.line ("lead", { { x + 56, y - 20 }, { x + 70, y - 20 } }, Ink::ink, lead);
        for (int i = 0; i < 3; ++i)
        {
            const double lx = x + 40 - 40 * i;
            pen.rect ("lug-body", lx - 11, y + 40, 22, 49, 11, Ink::well, Ink::ink, 1.8);
            pen.line ("lead", { { lx, y + 89 }, { lx, y + 100 } }, Ink::ink, lead);
        }
        finish (pen.circle ("part", x, y, 60, Ink::paper, outline(), weight()));
        for (int i = 0; i < 3; ++i)
            pen.text ("lug", x + 40 - 40 * i, y + 81, std::to_string (i + 1), 17, Anchor::middle).bold = true;
        const auto [first, second] = twoLines (wording::partTitle (*p.part));
        if (second.empty())
            name (x, y, first, Anchor::middle, 23);
        else
        {
            name (x, y - 14, first, Anchor::middle);
            name (x, y + 8, second, Anchor::middle);
        }
        pen.text ("value", x, y + 31, wording::partValue (*p.part), 15, Anchor::middle, Ink::mute);
        flag (x + 42, y - 52);
    }

    void block()
    {
        const auto& part = *p.part->as<SwitchPart>();
        std::vector<std::string> poles;
        isPlainPushPull (part.type, poles);
        finish (pen.rect ("part", x - 60, y - 60, 120, 120, 8, Ink::paper, outline(), weight()));
        const bool restUp = part.type.standard().name == "up";
        for (size_t i = 0; i < poles.size(); ++i)
        {
            const double side = i == 0 ? -1.0 : 1.0;
            for (int row : { -40, 0, 40 })
            {
                pen.line ("lead", { { x + side * 42, y + row }, { x + side * 90, y + row } }, Ink::ink, lead);
                pen.rect ("lug-body", x + side * 38 - 8, y + row - 5, 16, 10, 5, Ink::ink);
            }
            const double closed = restUp ? -40 : 40;
            pen.line ("contact", { { x + side * 38, y }, { x + side * 38, y + closed } }, Ink::ink, 7);
            auto& other = pen.line ("contact-other", { { x + side * 38, y }, { x + side * 38, y - closed } }, Ink::ink, 2);
            other.dash = 2;
            other.gap = 5;
            pen.text ("pole", x + side * 38, y - 66, poles[i], 16, Anchor::middle, Ink::mute);
        }
        pen.text ("value", x, y - 35, "up", 16, Anchor::middle, Ink::mute);
        pen.text ("value", x, y + 5, "com", 16, Anchor::middle, Ink::mute);
        pen.text ("value", x, y + 45, "down", 15, Anchor::middle, Ink::mute);
        name (x - 60, y - 84, wording::partTitle (*p.part), Anchor::start, 18);
        if (part.on.empty())
            flag (x + 42, y - 52);
    }

    void lugsDown()
    {
        for (const auto& terminal : p.terminals)
        {
            const double lx = terminal.x;
            pen.rect ("lug-body", lx - 7, y + 32, 14, 27, 7, Ink::well, Ink::ink, 1.8);
            pen.line ("lead", { { lx, y + 58 }, { lx, static_cast<double> (terminal.y) } }, Ink::ink, lead);
            pen.text ("lug", lx, y + 24, splitPoint (terminal.point).second, 16, Anchor::middle);
        }
    }

    void lever()
    {
        finish (pen.rect ("part", x - w / 2, y - 40, w, 90, 8, Ink::paper, outline(), weight()));
        name (x, y - 50, wording::partTitle (*p.part), Anchor::middle);
        lugsDown();
        pen.line ("symbol", { { x, y + 4 }, { x + 24, y - 24 } }, Ink::ink, 3.4);
        pen.circle ("symbol", x, y + 4, 4, Ink::ink);
        std::vector<Shape::Spot> arc;
        for (int i = 0; i <= 12; ++i)
        {
            const double angle = (-140.0 + 100.0 * i / 12.0) * 3.14159265358979 / 180.0;
            arc.push_back ({ x + 36 * std::cos (angle), y + 4 + 36 * std::sin (angle) });
        }
        auto& sweep = pen.line ("symbol", std::move (arc), Ink::ink, 1.4);
        sweep.dash = 3;
        sweep.gap = 4;
        flag (x + w / 2 - 42, y - 44);
    }

    void strip()
    {
        const double top = y - std::floor (h / 20) * 10;
        finish (pen.rect ("part", x - w / 2, top, w, h, 8, Ink::paper, outline(), weight()));
        name (x, top - 12, wording::partTitle (*p.part), Anchor::middle);
        if (const auto* part = p.part->as<SwitchPart>())
        {
            const auto count = part->type.positions.size();
            auto& rail = pen.line ("symbol", { { x - w / 2 + 24, top + 24 }, { x + w / 2 - 24, top + 24 } }, Ink::ink, 1.4);
            rail.dash = 3;
            rail.gap = 4;
            for (size_t i = 0; i < count; ++i)
            {
                const double px =
                    x - w / 2 + 24 + (w - 48) * static_cast<double> (i) / static_cast<double> (std::max<size_t> (1, count - 1));
                const bool stands = &part->type.positions[i] == &part->type.standard();
                pen.circle ("symbol", px, top + 24, stands ? 7 : 3.5, stands ? Ink::ink : Ink::paper, Ink::ink, 1.6);
            }
        }
        for (const auto& terminal : p.terminals)
        {
            const bool left = terminal.out == Heading::left;
            const double edge = left ? x - w / 2 : x + w / 2;
            pen.line ("lead",
                      { { edge, static_cast<double> (terminal.y) },
                        { static_cast<double> (terminal.x), static_cast<double> (terminal.y) } },
                      Ink::ink, lead);
            pen.circle ("lug-body", edge, terminal.y, 5, Ink::well, Ink::ink, 1.8);
            pen.text ("lug", edge + (left ? 12 : -12), terminal.y + 5, splitPoint (terminal.point).second, 16,
                      left ? Anchor::start : Anchor::end);
        }
        flag (x + w / 2 - 42, top + 16);
    }

    void standing()
    {
        pen.line ("lead", { { x, y - 40 }, { x, y + 40 } }, Ink::ink, lead);
        if (p.part->as<CapacitorPart>() != nullptr)
        {
            finish (pen.rect ("part", x - 20, y - 17, 40, 34, 12, Ink::paper, outline(), weight()));
            for (double d : { -3.5, 3.5 })
                pen.line ("symbol", { { x - 11, y + d }, { x + 11, y + d } }, Ink::ink, lead);
        }
        else
            finish (pen.rect ("part", x - 12, y - 24, 24, 48, 4, Ink::paper, outline(), weight()));
        pen.text ("value", x - 28, y + 6, wording::partValue (*p.part), 16, Anchor::end);
        flag (x + 26, y - 8);
    }

    void lying()
    {
        pen.line ("lead", { { x - 50, y }, { x + 50, y } }, Ink::ink, lead);
        if (p.part->as<CapacitorPart>() != nullptr)
        {
            finish (pen.rect ("part", x - 22, y - 18, 44, 36, 13, Ink::paper, outline(), weight()));
            for (double d : { -4.0, 4.0 })
                pen.line ("symbol", { { x + d, y - 11 }, { x + d, y + 11 } }, Ink::ink, lead);
        }
        else
        {
            finish (pen.rect ("part", x - 28, y - 12, 56, 24, 4, Ink::paper, outline(), weight()));
            if (p.part->as<InductorPart>() != nullptr)
                for (int i = 0; i < 3; ++i)
                    pen.circle ("symbol", x - 14 + 14 * i, y, 6, Ink::none, Ink::ink, 1.8);
        }
        pen.text ("value", x, y + 36, wording::partValue (*p.part), 16, Anchor::middle);
        flag (x - 21, y - 24);
    }

    void bridge()
    {
        finish (pen.rect ("part", x, y, w, h, 6, Ink::paper, outline(), weight()));
        name (x + 14, y + 27, "Bridge, strings", Anchor::start, 19);
        pen.line ("lead", { { x + w - 2, y + 20 }, { x + w + 20, y + 20 } }, Ink::ink, lead);
    }

    void jack()
    {
        finish (pen.circle ("part", x, y, 52, Ink::paper, outline(), weight()));
        pen.circle ("symbol", x, y, 45, Ink::none, Ink::mute, 1);
        name (x, y - 62, wording::partTitle (*p.part), Anchor::middle);
        for (const auto& terminal : p.terminals)
        {
            pen.line ("lead",
                      { { x - 47, static_cast<double> (terminal.y) },
                        { static_cast<double> (terminal.x), static_cast<double> (terminal.y) } },
                      Ink::ink, 5);
            pen.text ("lug", x - 33, terminal.y + 5, splitPoint (terminal.point).second, 16, Anchor::start);
        }
        flag (x + 20, y - 50);
    }
};
}

void drawPart (Pen& pen, const PlacedPart& placed) { PartArtist (pen, placed).draw(); }
}
