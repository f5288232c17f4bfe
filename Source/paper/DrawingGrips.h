#pragma once

#include "paper/DrawingPlan.h"

namespace coldiron
{
/** Where the joints of the drawing can be taken hold of. */
class DrawingGrips : public DrawingPlan
{
public:
    using DrawingPlan::DrawingPlan;

protected:
    void collectGrips()
    {
        std::map<SolderPair, const Run*> routed;
        for (const auto& run : runs)
            if (! run.isOpened)
                routed[run.pair] = &run;
        for (const auto& pair : solderPairs (after))
        {
            const auto& [a, b] = pair;
            const bool leadA = after.isLead (a), leadB = after.isLead (b);
            if (isTongue (after, pair))
            {
                const auto& lug = splitPoint (a).second == "case" ? b : a;
                drawing.grips.push_back ({ lug, lug == a ? b : a, tongueWay (lug) });
            }
            else if (const auto run = routed.find (pair); run != routed.end())
                gripsOfWay (run->second->way, a, b, leadA, leadB);
            else if (leadA != leadB)
            {
                // A lead on ground is taken hold of at its own sign, or at that of its lug.
                const auto &lead = leadA ? a : b, &lug = leadA ? b : a;
                drawing.grips.push_back ({ lead, lug, signWay (lead) });
            }
            else
            {
                drawing.grips.push_back ({ b, a, signWay (a) });
                drawing.grips.push_back ({ a, b, signWay (b) });
            }
        }
    }

private:
    Shape::Spot spotOf (const std::string& point) const
    {
        const auto& t = *terminals.at (point).terminal;
        return { static_cast<double> (t.x), static_cast<double> (t.y) };
    }

    /** From a point to the foot of its sign of ground. */
    std::vector<Shape::Spot> signWay (const std::string& point) const
    {
        const auto sign = signSpot (*terminals.at (point).terminal);
        return { spotOf (point), sign, { sign.x, sign.y + 20 } };
    }

    /** Along the bent lug, beginning at the rim of the case. */
    std::vector<Shape::Spot> tongueWay (const std::string& lug) const
    {
        const auto& spotted = terminals.at (lug);
        const double side = spotted.terminal->x < spotted.part->x ? -1.0 : 1.0;
        const auto at = spotOf (lug);
        return { { spotted.part->x + side * 56.0, spotted.part->y + 20.0 },
                 { at.x + side * 32, at.y - 36 },
                 { at.x + side * 24, at.y - 14 } };
    }

    void gripsOfWay (const std::vector<Shape::Spot>& way, const std::string& a, const std::string& b, bool leadA, bool leadB)
    {
        if (way.empty()) // drawn as two letters
        {
            drawing.grips.push_back (leadA ? DrawnGrip { a, b, { spotOf (b) } } : DrawnGrip { b, a, { spotOf (a) } });
            return;
        }
        const std::vector<Shape::Spot> backwards (way.rbegin(), way.rend());
        if (leadA != leadB)
        {
            drawing.grips.push_back (leadA ? DrawnGrip { a, b, backwards } : DrawnGrip { b, a, way });
            return;
        }
        const auto half = static_cast<std::ptrdiff_t> ((way.size() + 1) / 2);
        const std::vector<Shape::Spot> atA (way.begin(), way.begin() + half), atB (backwards.begin(), backwards.begin() + half);
        // In an air joint the lead near the hand is the one that comes off.
        drawing.grips.push_back (leadA ? DrawnGrip { a, b, atA } : DrawnGrip { b, a, atA });
        drawing.grips.push_back (leadA ? DrawnGrip { b, a, atB } : DrawnGrip { a, b, atB });
    }
};
}
