#include "editor/Layout.h"

#include <algorithm>

namespace coldiron
{
MainLayout layout (juce::Rectangle<int> bounds, int numOptions, bool firstSteps)
{
    MainLayout result;
    const int width = bounds.getWidth(), height = bounds.getHeight();
    result.fold = width < 1100 || height < 720 ? Fold::folded : width >= 1560 && height >= 960 ? Fold::wide : Fold::standard;
    const bool folded = result.fold == Fold::folded, wide = result.fold == Fold::wide;
    const int gutter = folded ? 10 : 16, margin = 16;
    result.guitarFolded = folded;
    result.stepsInDecide = wide;

    auto area = bounds;
    result.header = area.removeFromTop (folded ? 44 : 56);
    area.removeFromBottom (margin);
    area.removeFromLeft (margin);
    area.removeFromRight (margin);
    if (firstSteps)
    {
        result.firstLine = area.removeFromBottom (40);
        area.removeFromBottom (folded ? 6 : 10);
    }
    result.overlay = area;

    if (folded)
        result.guitar = area.withWidth (264);
    else
    {
        result.guitar = area.removeFromLeft (wide ? 340 : 232);
        area.removeFromLeft (gutter);
    }

    result.take = area.removeFromTop (folded ? 76 : wide ? 120 : 96);
    area.removeFromTop (folded ? 16 : 24); // the threads
    result.lowTags = folded;
    result.options = area.removeFromTop (folded ? 112 : wide ? 196 : 184);
    area.removeFromTop (folded ? 10 : gutter);
    result.listen = area.removeFromTop (folded ? 48 : 56);
    area.removeFromTop (folded ? 10 : gutter);
    result.decide = area.removeFromRight (folded ? 320 : wide ? 380 : 324);
    area.removeFromRight (gutter);
    result.look = area;

    // Tags: as recorded, the options, and one to make a new option while letters are left.
    const int count = 1 + numOptions + (numOptions < 8 ? 1 : 0);
    const int gap = count > 7 ? 6 : 10;
    const int most = wide ? 260 : 180;
    const int each = std::min (most, (result.options.getWidth() - gap * (count - 1)) / count);
    auto row = result.options;
    for (int i = 0; i < count; ++i)
    {
        result.tags.push_back (row.removeFromLeft (each));
        row.removeFromLeft (gap);
    }
    result.compactTags = each < 130;
    return result;
}
}
