// The bench steps between two harnesses, so that undoing is a difference like any other.

#include "guitar/Step.h"

#include <algorithm>

namespace coldiron
{
namespace
{
std::set<SolderPoint> partners (const Harness& harness, const SolderPoint& lead)
{
    const auto names = harness.leadsInJoint (harness.landings().at (lead).joint);
    return { names.begin(), names.end() };
}

bool sameLanding (const Harness& a, const SolderPoint& leadA, const Harness& b, const SolderPoint& leadB)
{
    const auto &la = a.landings().at (leadA), &lb = b.landings().at (leadB);
    if (la.lug != lb.lug || (la.joint >= 0) != (lb.joint >= 0))
        return false;
    return la.joint < 0 || partners (a, leadA) == partners (b, leadB);
}

/** Whether a lead lands alike in both; a two-legged part whose legs changed places counts as unmoved. */
bool staysPut (const Harness& a, const Harness& b, const SolderPoint& lead)
{
    if (b.landings().count (lead) == 0)
        return false;
    if (sameLanding (a, lead, b, lead))
        return true;
    if (a.partOf (lead).as<PickupPart>() != nullptr)
        return false;
    const SolderPoint one (lead.part(), "1"), two (lead.part(), "2");
    return sameLanding (a, one, b, two) && sameLanding (a, two, b, one);
}

class Differ
{
public:
    Differ (const Harness& from, const Harness& to) : now (from), goal (to) {}

    std::vector<Step> run()
    {
        unsolder();
        remove();
        replace();
        fit();
        solder();
        if (! now.sameAs (goal))
            throw HarnessError ("the difference of these two harnesses cannot be written as bench steps");
        return std::move (steps);
    }

private:
    Harness now;
    const Harness& goal;
    std::vector<Step> steps;

    void take (Step step)
    {
        now = applyStep (now, step);
        steps.push_back (std::move (step));
    }

    void takePair (Step::Kind kind, const SolderPoint& a, const SolderPoint& b)
    {
        Step step;
        step.kind = kind;
        step.points = { a, b };
        take (std::move (step));
    }

    bool leaves (const SolderPoint& point) const
    {
        return point != SolderPoint::strings() && goal.find (point.part()) == nullptr;
    }

    void unsolder()
    {
        const auto wires = now.wires();
        for (const auto& [a, b] : wires)
            if (goal.wires().count ({ a, b }) == 0 && ! leaves (a) && ! leaves (b))
                takePair (Step::Kind::unsolder, a, b);

        const Harness start = now;
        for (const auto& [lead, landing] : start.landings())
        {
            if (leaves (lead) || landing.isFree() || staysPut (start, goal, lead))
                continue;
            const auto& current = now.landings().at (lead);
            if (! current.lug.empty())
            {
                if (! leaves (current.lug))
                    takePair (Step::Kind::unsolder, lead, current.lug);
            }
            else if (current.joint >= 0)
                for (const auto& partner : now.leadsInJoint (current.joint))
                    if (partner != lead && ! now.landings().at (lead).isFree())
                        takePair (Step::Kind::unsolder, lead, partner);
        }
    }

    void remove()
    {
        const auto parts = now.parts();
        for (const auto& part : parts)
            if (goal.find (part.name) == nullptr)
            {
                Step step;
                step.kind = Step::Kind::remove;
                step.part = part.name;
                take (std::move (step));
            }
    }

    void replace()
    {
        const auto parts = now.parts();
        for (const auto& part : parts)
            if (const auto* wanted = goal.find (part.name); wanted != nullptr && ! (*wanted == part))
            {
                Step step;
                step.kind = Step::Kind::replace;
                step.part = part.name;
                step.as = *wanted;
                take (std::move (step));
            }
    }

    void fit()
    {
        for (const auto& part : goal.parts())
            if (now.find (part.name) == nullptr)
            {
                Step step;
                step.kind = Step::Kind::fit;
                step.part = part.name;
                step.as = part;
                take (std::move (step));
            }
    }

    void solder()
    {
        // Leads before wires: a lead that lands makes no wire, and nothing is soldered twice.
        for (const auto& [lead, landing] : goal.landings())
        {
            if (staysPut (now, goal, lead) || landing.isFree())
                continue;
            if (! landing.lug.empty())
                takePair (Step::Kind::solder, lead, landing.lug);
            else
            {
                Step step;
                step.kind = Step::Kind::solder;
                const auto leads = goal.leadsInJoint (landing.joint);
                step.points.assign (leads.begin(), leads.end());
                take (std::move (step));
            }
        }
        for (const auto& [a, b] : goal.wires())
            if (! now.hasWire (a, b))
                takePair (Step::Kind::solder, a, b);
    }
};
}

std::vector<Step> difference (const Harness& from, const Harness& to) { return Differ (from, to).run(); }
}
