#include "editor/Tokens.h"

#include "Assets.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
juce::Colour rgb (juce::uint32 value) { return juce::Colour (0xff000000u | value); }

juce::Typeface::Ptr face (const void* data, int size)
{
    return juce::Typeface::createSystemTypefaceFor (data, static_cast<size_t> (size));
}

/** The design's sizes are em sizes, which JUCE calls the point height. */
juce::Font sized (const juce::Typeface::Ptr& typeface, float size) { return juce::Font (typeface).withPointHeight (size); }
}

const Tokens& Tokens::light()
{
    static const Tokens tokens { rgb (0xE7EBE8),
                                 rgb (0xFBFBF7),
                                 rgb (0xF1F3EF),
                                 rgb (0xC6CECB),
                                 rgb (0x55656C),
                                 rgb (0x1C2A33),
                                 rgb (0xC23A12),
                                 rgb (0xFFFFFF),
                                 { rgb (0x1C2A33), rgb (0x4E85D3), rgb (0xBE7228), rgb (0x68006A), rgb (0x34936A), rgb (0x634AB6),
                                   rgb (0x3D3A02), rgb (0x9A323C), rgb (0x057275) } };
    return tokens;
}

const Tokens& Tokens::dark()
{
    static const Tokens tokens { rgb (0x121D24),
                                 rgb (0x1C2A33),
                                 rgb (0x17242C),
                                 rgb (0x3B4D57),
                                 rgb (0xA2B0B4),
                                 rgb (0xEFEADB),
                                 rgb (0xFF8A55),
                                 rgb (0x121D24),
                                 { rgb (0xEFEADB), rgb (0x4091F9), rgb (0xC28B1F), rgb (0xD577B2), rgb (0x36C29E), rgb (0xDCB1FF),
                                   rgb (0xC6E266), rgb (0xF6727C), rgb (0x9BFAFC) } };
    return tokens;
}

const std::vector<float>& dashOf (OptionId id)
{
    static const std::array<std::vector<float>, 9> dashes {
        { {}, {}, { 12, 5 }, { 3, 5 }, { 14, 4, 3, 4 }, { 7, 4 }, { 14, 4, 3, 4, 3, 4 }, { 1, 5 }, { 20, 6 } }
    };
    return dashes[indexOf (id)];
}

void strokeDashed (juce::Graphics& g, const juce::Path& path, OptionId id, float weight)
{
    const auto& dash = dashOf (id);
    const juce::PathStrokeType stroke (weight, juce::PathStrokeType::curved,
                                       id == OptionId::G ? juce::PathStrokeType::rounded : juce::PathStrokeType::butt);
    if (dash.empty())
    {
        g.strokePath (path, stroke);
        return;
    }
    juce::Path dashed;
    stroke.createDashedStroke (dashed, path, dash.data(), static_cast<int> (dash.size()));
    g.fillPath (dashed);
}

double contrast (juce::Colour a, juce::Colour b)
{
    const auto luminance = [] (juce::Colour c)
    {
        const auto linear = [] (double v) { return v <= 0.04045 ? v / 12.92 : std::pow ((v + 0.055) / 1.055, 2.4); };
        return 0.2126 * linear (c.getFloatRed()) + 0.7152 * linear (c.getFloatGreen()) + 0.0722 * linear (c.getFloatBlue());
    };
    const double first = luminance (a), second = luminance (b);
    return (std::max (first, second) + 0.05) / (std::min (first, second) + 0.05);
}

namespace type
{
juce::Font text (float size)
{
    static const auto typeface = face (assets::B612Regular_otf, assets::B612Regular_otfSize);
    return sized (typeface, size);
}

juce::Font bold (float size)
{
    static const auto typeface = face (assets::B612Bold_otf, assets::B612Bold_otfSize);
    return sized (typeface, size);
}

juce::Font italic (float size)
{
    static const auto typeface = face (assets::B612Italic_otf, assets::B612Italic_otfSize);
    return sized (typeface, size);
}

juce::Font name (float size)
{
    static const auto typeface = face (assets::routedgothic_ttf, assets::routedgothic_ttfSize);
    return sized (typeface, size * 0.92f); // its letters stand larger in their em
}

juce::StringArray* cutOff = nullptr;

void draw (juce::Graphics& g, const juce::String& words, juce::Rectangle<int> area, juce::Justification where, bool mayShorten)
{
    if (cutOff != nullptr && ! mayShorten && width (g.getCurrentFont(), words) > static_cast<float> (area.getWidth()) + 0.5f)
        cutOff->add (words);
    g.drawText (words, area, where, mayShorten);
}

void draw (juce::Graphics& g, const juce::String& words, int x, int y, int w, int h, juce::Justification where, bool mayShorten)
{
    draw (g, words, juce::Rectangle<int> (x, y, w, h), where, mayShorten);
}

float width (const juce::Font& font, const juce::String& words) { return font.getStringWidthFloat (words); }
}
}
