#pragma once

#include "paper/Anatomy.h"
#include "paper/Drawing.h"

#include <vector>

namespace coldiron
{
/** Adds shapes one after another. */
class Pen
{
public:
    explicit Pen (std::vector<Shape>& target) : shapes (target) {}

    Shape& line (const char* type, std::vector<Shape::Spot> spots, Ink stroke, double weight);
    Shape& circle (const char* type, double x, double y, double radius, Ink fill, Ink stroke = Ink::none, double weight = 2.0);
    Shape& rect (const char* type, double x, double y, double w, double h, double radius, Ink fill, Ink stroke = Ink::none,
                 double weight = 2.0);
    Shape& text (const char* type, double x, double y, const std::string&, double size, Shape::Anchor, Ink = Ink::ink);

    void bead (double x, double y, bool isNew);
    void groundSign (double x, double y, bool isNew);
    void stepNumber (double x, double y, int number); ///< x, y: the middle
    void cut (double x, double y, bool acrossWire);   ///< two strokes over a wire that runs across or along

private:
    std::vector<Shape>& shapes;
};

/** The shapes of one part in its place. */
void drawPart (Pen&, const PlacedPart&);
}
