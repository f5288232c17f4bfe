#pragma once

#include "concurrency/Cancellation.h"
#include "guitar/Harness.h"

#include <string>
#include <vector>

namespace coldiron
{
/** The pens of a drawing. Screen and paper give each its colour. */
enum class Ink { none, paper, ink, mute, heat, wire, well };

/** One thing drawn, in drawing units (0.16 mm on A4). Screen, SVG and print walk the same list. */
struct Shape
{
    enum class Kind { polyline, circle, rect, text };
    enum class Anchor { start, middle, end };
    struct Spot
    {
        double x = 0.0, y = 0.0;
    };

    Kind kind = Kind::polyline;
    std::string type;                 ///< what it stands for: "wire-stays", "wire-new", "part", "name", ... (SVG class)
    std::vector<Spot> spots;          ///< polyline: two or more; others: one (circle: middle, rect: top left, text: baseline)
    double width = 0.0, height = 0.0; ///< rect
    double radius = 0.0;              ///< circle; rect and polyline: of the corners
    bool closed = false;              ///< polyline
    Ink fill = Ink::none, stroke = Ink::none;
    double weight = 2.0;          ///< of the stroke
    double dash = 0.0, gap = 0.0; ///< 0: solid
    std::string text;
    double size = 16.0;                               ///< of text
    bool bold = false, italic = false, named = false; ///< named: the face of names, else the face of values
    Anchor anchor = Anchor::start;
};

struct DrawnWire
{
    std::string from, to;
    bool isNew = false, isOpened = false;
    std::vector<Shape::Spot> way; ///< empty: no way found, both ends carry the same letter
};

/** A solder point as drawn, for picking. Every point of both harnesses has one, no two nearer than 20 units. */
struct DrawnPoint
{
    std::string point;
    Shape::Spot spot;
    bool isOut = false; ///< of a part that is removed: nothing can be soldered there any more
};

/** Where one end of a joint can be taken hold of: it comes off `from`, and `held`, a lead or the wire's other end, stays
    where it is. A wire has two grips, a lead on a lug one; a ground run has them at its signs. */
struct DrawnGrip
{
    std::string held, from;
    std::vector<Shape::Spot> way; ///< one spot or more, beginning at `from`
};

struct Drawing
{
    int width = 0, height = 0;
    std::vector<Shape> shapes;
    std::vector<DrawnWire> wires;
    std::vector<DrawnPoint> points;
    std::vector<DrawnGrip> grips; ///< of every joint of `after`
    int crossings = 0;
    int unrouted = 0;
};

struct DrawingOptions
{
    int rounds = 60; ///< of bettering the order of routing
    bool legend = true;
    double aspect = 0.0; ///< width over height of the page to fill; 0: as narrow as it comes
    Cancellation isUnwanted;
};

/** The wiring from the back, changes from `before` marked; the same harness twice draws it as it is. Everything comes
    from the two harnesses. Deterministic. Any thread; up to a second for a large guitar.
    @throws HarnessError, Cancelled */
Drawing drawWiring (const Harness& before, const Harness& after, const DrawingOptions& = {});
}
