// How wide a drawing is laid out, so that it fills its page.

#include "paper/DrawingSlots.h"

#include <algorithm>

namespace coldiron
{
namespace
{
constexpr int mostSpread = 170; ///< more between columns would only make the wires long
}

std::pair<int, int> sizeOf (const std::vector<PlacedPart>& placed, bool withLegend)
{
    int width = 0, height = 0;
    for (const auto& part : placed)
    {
        const auto e = extentsOf (part);
        width = std::max (width, part.x + e.right + 50);
        height = std::max (height, part.y + e.bottom + 60);
    }
    return { std::max ((width + 9) / 10 * 10, withLegend ? 860 : 0), (height + 9) / 10 * 10 + 50 };
}

std::vector<PlacedPart> placeParts (const Harness& before, const Harness& after, const Changes& changes, double aspect)
{
    PlanStyle close;
    auto best = placeAll (before, after, changes, close);
    if (aspect <= 0.0)
        return best;
    const auto scale = [aspect] (const std::vector<PlacedPart>& placed)
    {
        const auto [w, h] = sizeOf (placed, true);
        return std::min (aspect / w, 1.0 / h);
    };
    PlanStyle chosen = close;
    for (const auto& other : { PlanStyle { true, false }, PlanStyle { false, true }, PlanStyle { true, true } })
    {
        PlanStyle tried = other;
        if (auto plan = placeAll (before, after, changes, tried); scale (plan) > scale (best) * 1.02)
        {
            best = std::move (plan);
            chosen = tried;
        }
    }
    const auto [w, h] = sizeOf (best, true);
    const int room = static_cast<int> (aspect * h) - w;
    if (room < 20 || chosen.gaps == 0)
        return best;
    PlanStyle spread = chosen;
    spread.spread = std::min (mostSpread, room / chosen.gaps / 10 * 10);
    return placeAll (before, after, changes, spread);
}
}
