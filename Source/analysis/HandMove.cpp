#include "analysis/HandMove.h"

#include "job/Readers.h"

namespace coldiron
{
namespace
{
Step stepOf (Step::Kind kind, const std::string& a, const std::string& b)
{
    Step step;
    step.kind = kind;
    step.points = { a, b };
    return step;
}
}

std::vector<Step> HandMove::steps() const
{
    std::vector<Step> list;
    if (from == to)
        return list;
    if (! from.empty())
        list.push_back (stepOf (Step::Kind::unsolder, held, from));
    if (! to.empty())
        list.push_back (stepOf (Step::Kind::solder, held, to));
    return list;
}

std::vector<HandJoint> jointsAt (const Harness& harness, const std::string& point)
{
    std::vector<HandJoint> joints;
    if (harness.isLead (point))
    {
        const auto& landing = harness.landings().at (point);
        if (leadInside (harness, point))
            return joints;
        if (! landing.lug.empty())
            joints.push_back ({ point, landing.lug });
        else if (landing.joint >= 0)
            for (const auto& partner : harness.leadsInJoint (landing.joint))
                if (partner != point)
                {
                    joints.push_back ({ point, partner });
                    break; // off one is off all
                }
        return joints;
    }
    for (const auto& lead : harness.leadsOn (point))
        joints.push_back ({ lead, point });
    for (const auto& lug : harness.lugsWiredTo (point))
        joints.push_back ({ lug, point });
    return joints;
}

HandRefusal refusalOf (const HarnessError& error)
{
    const auto* byHand = dynamic_cast<const HandMoveError*> (&error);
    return byHand != nullptr ? byHand->refusal : HandRefusal { HandRefusal::Reason::wiring, error.what() };
}

Harness applyStep (const Harness& harness, const HandMove& move)
{
    for (const auto& point : { move.held, move.from, move.to })
        if (const auto lead = leadInside (harness, SolderPoint (point)))
            throw HandMoveError ({ HandRefusal::Reason::inside, lead->text() });
    if (move.held == move.to)
        throw HandMoveError ({ HandRefusal::Reason::toItself, {} });
    Harness result = harness;
    for (const auto& step : move.steps())
        result = applyStep (result, step);
    if (const auto why = whyUnsound (result); ! why.empty())
        throw HandMoveError ({ HandRefusal::Reason::wiring, why });
    return result;
}
}
