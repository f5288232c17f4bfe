#include "paper/DrawingSvg.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace coldiron
{
namespace
{
const char* colourOf (Ink ink)
{
    switch (ink)
    {
    case Ink::none: return "none";
    case Ink::paper: return "#ffffff";
    case Ink::ink: return "#1c2a33";
    case Ink::mute: return "#55656c";
    case Ink::heat: return "#c23a12";
    case Ink::wire: return "#39474e";
    case Ink::well: return "#eef1ee";
    }
    return "none";
}

std::string number (double value)
{
    char text[32];
    std::snprintf (text, sizeof text, "%.2f", value);
    std::string result = text;
    while (result.back() == '0')
        result.pop_back();
    if (result.back() == '.')
        result.pop_back();
    return result == "-0" ? "0" : result;
}

std::string escaped (const std::string& text)
{
    std::string result;
    for (char c : text)
        switch (c)
        {
        case '&': result += "&amp;"; break;
        case '<': result += "&lt;"; break;
        case '>': result += "&gt;"; break;
        case '"': result += "&quot;"; break;
        default: result += c;
        }
    return result;
}

std::string spotText (double x, double y) { return number (x) + " " + number (y); }

std::string wayText (const Shape& shape)
{
    const auto& p = shape.spots;
    std::string d = "M" + spotText (p[0].x, p[0].y);
    for (size_t i = 1; i < p.size(); ++i)
    {
        if (i + 1 == p.size() || shape.radius <= 0.0)
        {
            d += "L" + spotText (p[i].x, p[i].y);
            continue;
        }
        const double before = std::hypot (p[i].x - p[i - 1].x, p[i].y - p[i - 1].y);
        const double behind = std::hypot (p[i + 1].x - p[i].x, p[i + 1].y - p[i].y);
        const double k = std::min ({ shape.radius, before / 2, behind / 2 });
        d += "L" + spotText (p[i].x - (p[i].x - p[i - 1].x) / before * k, p[i].y - (p[i].y - p[i - 1].y) / before * k) + "Q"
             + spotText (p[i].x, p[i].y) + " "
             + spotText (p[i].x + (p[i + 1].x - p[i].x) / behind * k, p[i].y + (p[i + 1].y - p[i].y) / behind * k);
    }
    return shape.closed ? d + "Z" : d;
}

std::string paint (const Shape& shape)
{
    std::string text = std::string (" fill=\"") + colourOf (shape.fill) + "\"";
    if (shape.stroke != Ink::none)
        text += std::string (" stroke=\"") + colourOf (shape.stroke) + "\" stroke-width=\"" + number (shape.weight)
                + "\" stroke-linecap=\"round\" stroke-linejoin=\"round\"";
    if (shape.dash > 0.0)
        text += " stroke-dasharray=\"" + number (shape.dash) + " " + number (shape.gap) + "\"";
    return text;
}
}

std::string drawingSvg (const Drawing& drawing)
{
    const auto size = std::to_string (drawing.width) + " " + std::to_string (drawing.height);
    std::string svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + size + "\" width=\""
                      + std::to_string (drawing.width) + "\" height=\"" + std::to_string (drawing.height)
                      + "\" role=\"img\" aria-label=\"Wiring, seen from the back\">\n";
    for (const auto& shape : drawing.shapes)
    {
        const auto& at = shape.spots.front();
        const auto type = " class=\"" + escaped (shape.type) + "\"";
        switch (shape.kind)
        {
        case Shape::Kind::polyline: svg += "<path" + type + " d=\"" + wayText (shape) + "\"" + paint (shape) + "/>\n"; break;
        case Shape::Kind::circle:
            svg += "<circle" + type + " cx=\"" + number (at.x) + "\" cy=\"" + number (at.y) + "\" r=\"" + number (shape.radius)
                   + "\"" + paint (shape) + "/>\n";
            break;
        case Shape::Kind::rect:
            svg += "<rect" + type + " x=\"" + number (at.x) + "\" y=\"" + number (at.y) + "\" width=\"" + number (shape.width)
                   + "\" height=\"" + number (shape.height) + "\" rx=\"" + number (shape.radius) + "\"" + paint (shape) + "/>\n";
            break;
        case Shape::Kind::text:
        {
            static constexpr const char* anchors[] = { "start", "middle", "end" };
            svg += "<text" + type + " x=\"" + number (at.x) + "\" y=\"" + number (at.y) + "\" font-family=\""
                   + (shape.named ? "Routed Gothic, B612, sans-serif" : "B612, sans-serif") + "\" font-size=\""
                   + number (shape.size) + "\"" + (shape.bold ? " font-weight=\"700\"" : "")
                   + (shape.italic ? " font-style=\"italic\"" : "") + " text-anchor=\"" + anchors[static_cast<int> (shape.anchor)]
                   + "\" fill=\"" + colourOf (shape.fill) + "\">" + escaped (shape.text) + "</text>\n";
            break;
        }
        }
    }
    return svg + "</svg>\n";
}
}
