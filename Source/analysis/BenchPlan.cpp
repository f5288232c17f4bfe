#include "analysis/BenchPlan.h"

#include "analysis/Changes.h"
#include "guitar/Nets.h"

#include <algorithm>
#include <map>
#include <set>

namespace coldiron
{
namespace
{
std::string partNameOf (const std::string& point) { return splitPoint (point).first; }

class Planner
{
public:
    Planner (const Harness& b, const Harness& a) : before (b), after (a), changes (changesBetween (b, a))
    {
        findUnits();
        sortPairs();
    }

    BenchPlan plan()
    {
        unsolderSteps();
        takeOutSteps();
        prepareSteps();
        for (const auto& unit : newUnits)
            if (const auto names = mountedOf (unit); ! names.empty())
                result.steps.push_back ({ BenchStep::Kind::mount, 0, {}, names, {} });
        solderSteps();
        insulateSteps();
        return std::move (result);
    }

private:
    const Harness& before;
    const Harness& after;
    const Changes changes;
    BenchPlan result;

    std::set<std::string> gone, fresh;            ///< names of parts that leave, that come
    std::vector<std::string> goneUnits, newUnits; ///< in the order of the parts
    std::map<std::string, std::string> unitOf;    ///< of a fresh part: the pot a switch sits on, the pot its capacitor hangs on
    std::vector<SolderPair> opened, made;
    std::set<SolderPair> again;
    std::map<SolderPair, std::string> restingEnd, stubEnd;
    std::map<std::string, std::vector<JointEnd>> madeAt; ///< by joint
    std::set<std::string> doneOut;                       ///< joints made out of the guitar

    void findUnits()
    {
        const auto unitIn = [] (const Harness& harness, const Part& part)
        {
            const auto* lever = part.as<SwitchPart>();
            return lever != nullptr && ! lever->on.empty() && harness.find (lever->on) != nullptr ? lever->on : part.name;
        };
        std::set<std::string> changed = changes.replaced;
        changed.insert (changes.fitted.begin(), changes.fitted.end());
        for (const auto& part : after.parts())
            if (changed.count (part.name) > 0 && part.as<SwitchPart>() != nullptr)
                changed.insert (unitIn (after, part)); // a switch and its pot are one thing to buy and to mount
        for (const auto& part : before.parts())
            if (changes.removed.count (part.name) > 0 || changed.count (part.name) > 0
                || changed.count (unitIn (before, part)) > 0)
                gone.insert (part.name);
        for (const auto& part : after.parts())
            if (changed.count (part.name) > 0 || changed.count (unitIn (after, part)) > 0)
            {
                fresh.insert (part.name);
                unitOf[part.name] = unitIn (after, part);
                result.newParts.push_back (part);
            }
        // A new capacitor or resistor whose legs both land on one new part is soldered to it before that is mounted.
        for (const auto& part : after.parts())
        {
            if (fresh.count (part.name) == 0 || part.as<PickupPart>() != nullptr)
                continue;
            std::set<std::string> hosts;
            bool isWhole = false;
            for (const auto& point : part.points())
                if (part.isLead (point))
                {
                    const auto& lug = after.landings().at (part.name + "." + point).lug;
                    isWhole = ! lug.empty() && fresh.count (partNameOf (lug)) > 0;
                    hosts.insert (isWhole ? unitOf.at (partNameOf (lug)) : std::string());
                }
            if (hosts.size() == 1 && ! hosts.begin()->empty())
                unitOf[part.name] = *hosts.begin();
        }
        for (const auto& part : before.parts())
            if (gone.count (part.name) > 0)
                goneUnits.push_back (part.name);
        for (const auto& part : after.parts())
            if (const auto found = unitOf.find (part.name); found != unitOf.end() && found->second == part.name)
                newUnits.push_back (part.name);
    }

    bool touches (const std::set<std::string>& parts, const SolderPair& pair) const
    {
        return parts.count (partNameOf (pair.first)) > 0 || parts.count (partNameOf (pair.second)) > 0;
    }

    void sortPairs()
    {
        for (const auto& one : changes.opened)
        {
            opened.push_back (one.pair);
            if (! one.stubAt.empty())
                stubEnd[one.pair] = one.stubAt;
        }
        for (const auto& one : changes.made)
        {
            made.push_back (one.pair);
            if (! one.resting.empty())
                restingEnd[one.pair] = one.resting;
        }
        for (const auto& pair : changes.stays)
            if (touches (gone, pair) || touches (fresh, pair))
            {
                opened.push_back (pair);
                made.push_back (pair);
                again.insert (pair);
            }
        for (const auto& pair : made)
            for (const auto& end : endsToMake (pair))
            {
                const auto other = end == pair.first ? pair.second : pair.first;
                madeAt[jointAt (after, end)].push_back ({ pair, other, movedFrom (pair, end), again.count (pair) > 0, false });
            }
    }

    /** The joint a point is in: a lug, or for a lead in the air the first lead of its joint. */
    static std::string jointAt (const Harness& harness, const std::string& point)
    {
        const auto landing = harness.landings().find (point);
        if (landing == harness.landings().end())
            return point;
        if (! landing->second.lug.empty())
            return landing->second.lug;
        return landing->second.joint >= 0 ? harness.leadsInJoint (landing->second.joint).front().text() : point;
    }

    /** Where iron is needed for a pair: at a lead's lug or joint once, at both lugs of a wire, but not at an end that rests. */
    std::vector<std::string> endsToMake (const SolderPair& pair) const
    {
        const bool firstLead = after.isLead (pair.first), secondLead = after.isLead (pair.second);
        if (firstLead || secondLead)
            return { firstLead ? pair.second : pair.first };
        std::vector<std::string> ends;
        for (const auto& end : { pair.first, pair.second })
        {
            const auto rests = restingEnd.find (pair);
            const bool hangsOn = again.count (pair) > 0 && fresh.count (partNameOf (end)) == 0;
            if ((rests == restingEnd.end() || rests->second != end || gone.count (partNameOf (end)) > 0) && ! hangsOn)
                ends.push_back (end);
        }
        return ends;
    }

    std::vector<std::string> endsToOpen (const SolderPair& pair) const
    {
        const bool firstLead = before.isLead (pair.first), secondLead = before.isLead (pair.second);
        if (firstLead || secondLead)
            return { firstLead ? pair.second : pair.first };
        if (const auto stub = stubEnd.find (pair); stub != stubEnd.end())
            return { stub->second };
        std::vector<std::string> ends;
        for (const auto& end : { pair.first, pair.second })
            if (again.count (pair) == 0 || gone.count (partNameOf (end)) > 0)
                ends.push_back (end);
        return ends;
    }

    /** Where the end of a moved wire or lead came off. */
    std::string movedFrom (const SolderPair& pair, const std::string& end) const
    {
        if (again.count (pair) > 0)
            return {};
        const auto mover = end == pair.first ? pair.second : pair.first; // the lead, or the end that rests
        for (const auto& old : opened)
        {
            if (again.count (old) > 0 || (old.first != mover && old.second != mover))
                continue;
            const bool isLead = after.isLead (mover);
            const auto rests = restingEnd.find (pair);
            if (isLead || (rests != restingEnd.end() && rests->second == mover))
                return old.first == mover ? old.second : old.first;
        }
        return {};
    }

    static size_t placeOf (const Harness& harness, const std::string& point)
    {
        const auto points = harness.allPoints();
        return static_cast<size_t> (std::find (points.begin(), points.end(), point) - points.begin());
    }

    void unsolderSteps()
    {
        std::map<std::string, std::vector<JointEnd>> at;
        for (const auto& pair : opened)
            for (const auto& end : endsToOpen (pair))
                if (gone.count (partNameOf (jointAt (before, end))) == 0)
                    at[jointAt (before, end)].push_back (
                        { pair, end == pair.first ? pair.second : pair.first, {}, again.count (pair) > 0, false });
        for (const auto& joint : inOrder (before, at))
            result.steps.push_back ({ BenchStep::Kind::unsolder, ++result.toOpen, joint, {}, at.at (joint) });
    }

    void takeOutSteps()
    {
        for (const auto& unit : goneUnits)
        {
            BenchStep step { BenchStep::Kind::takeOut, 0, {}, { unit }, {} };
            std::set<std::string> joints;
            for (const auto& pair : opened)
                for (const auto& end : endsToOpen (pair))
                    if (const auto joint = jointAt (before, end); partNameOf (joint) == unit)
                    {
                        joints.insert (joint);
                        step.ends.push_back (
                            { pair, end == pair.first ? pair.second : pair.first, {}, again.count (pair) > 0, false });
                    }
            result.toOpen += static_cast<int> (joints.size());
            result.steps.push_back (step);
        }
    }

    bool isInside (const SolderPair& pair, const std::string& unit) const
    {
        const auto a = unitOf.find (partNameOf (pair.first)), b = unitOf.find (partNameOf (pair.second));
        return a != unitOf.end() && b != unitOf.end() && a->second == unit && b->second == unit;
    }

    void prepareSteps()
    {
        for (const auto& unit : newUnits)
        {
            BenchStep step { BenchStep::Kind::prepare, 0, {}, partsOf (unit), {} };
            std::vector<std::string> whole;
            for (const auto& joint : inOrder (after, madeAt))
            {
                auto& ends = madeAt.at (joint);
                const bool isHere =
                    std::any_of (ends.begin(), ends.end(), [&] (const JointEnd& end) { return isInside (end.pair, unit); });
                if (! isHere)
                    continue;
                const bool all =
                    std::all_of (ends.begin(), ends.end(), [&] (const JointEnd& end) { return isInside (end.pair, unit); });
                if (all && ! hasOld (joint))
                    whole.push_back (joint);
                else
                    for (auto& end : ends)
                        if (isInside (end.pair, unit))
                        {
                            end.isHooked = true;
                            if (std::none_of (step.ends.begin(), step.ends.end(),
                                              [&] (const JointEnd& e) { return e.pair == end.pair; }))
                                step.ends.push_back (end);
                        }
            }
            result.steps.push_back (step);
            for (const auto& joint : whole)
            {
                doneOut.insert (joint);
                result.steps.push_back ({ BenchStep::Kind::solder, ++result.toMake, joint, {}, madeAt.at (joint), true });
            }
        }
    }

    /** Something that stayed hangs on that joint: not on a new part's. */
    bool hasOld (const std::string& joint) const { return fresh.count (partNameOf (joint)) == 0; }

    void solderSteps()
    {
        const Nets nets (after);
        const auto ground = after.point ("ground");
        std::vector<std::pair<int, std::string>> order;
        for (const auto& joint : inOrder (after, madeAt))
        {
            if (doneOut.count (joint) > 0)
                continue;
            const auto& ends = madeAt.at (joint);
            const bool isPickup = std::any_of (ends.begin(), ends.end(),
                                               [&] (const JointEnd& end)
                                               {
                                                   const auto* part = after.find (partNameOf (end.other));
                                                   return part != nullptr && part->as<PickupPart>() != nullptr;
                                               });
            order.emplace_back (nets.joined (joint, ground) ? 0 : isPickup ? 1 : 2, joint);
        }
        std::stable_sort (order.begin(), order.end(), [] (const auto& a, const auto& b) { return a.first < b.first; });
        for (const auto& [group, joint] : order)
            result.steps.push_back ({ BenchStep::Kind::solder, ++result.toMake, joint, {}, madeAt.at (joint) });
    }

    void insulateSteps()
    {
        for (const auto& point : after.allPoints())
        {
            const auto now = after.landings().find (point), was = before.landings().find (point);
            if (now != after.landings().end() && now->second.isFree() && was != before.landings().end() && ! was->second.isFree())
                result.steps.push_back ({ BenchStep::Kind::insulate, 0, point, {}, {} });
        }
    }

    std::vector<std::string> partsOf (const std::string& unit) const
    {
        std::vector<std::string> names { unit };
        for (const auto& part : after.parts())
            if (const auto found = unitOf.find (part.name); found != unitOf.end() && found->second == unit && part.name != unit)
                names.push_back (part.name);
        return names;
    }

    /** Parts with legs alone hang on their joints and are not mounted. */
    std::vector<std::string> mountedOf (const std::string& unit) const
    {
        std::vector<std::string> names;
        for (const auto& name : partsOf (unit))
            if (const auto* part = after.find (name);
                part->as<PickupPart>() != nullptr || ! part->isLead (part->points().front()))
                names.push_back (name);
        return names;
    }

    template <typename Map>
    static std::vector<std::string> inOrder (const Harness& harness, const Map& joints)
    {
        std::vector<std::string> names;
        for (const auto& [joint, ends] : joints)
            names.push_back (joint);
        std::stable_sort (names.begin(), names.end(),
                          [&] (const auto& a, const auto& b) { return placeOf (harness, a) < placeOf (harness, b); });
        return names;
    }
};

void openPair (Harness& harness, const SolderPair& pair)
{
    const auto pairs = solderPairs (harness);
    if (std::find (pairs.begin(), pairs.end(), pair) != pairs.end())
        harness.unsolder (pair.first, pair.second);
}
}

BenchPlan planBench (const Harness& before, const Harness& after) { return Planner (before, after).plan(); }

Harness carriedOut (const Harness& before, const BenchPlan& plan)
{
    Harness harness = before;
    std::set<SolderPair> joined;
    const auto fit = [&] (const std::string& name)
    {
        const auto part =
            std::find_if (plan.newParts.begin(), plan.newParts.end(), [&] (const Part& p) { return p.name == name; });
        if (part == plan.newParts.end())
            throw HarnessError (name + " is not among the parts of the plan");
        harness.addPart (*part);
    };
    for (const auto& step : plan.steps)
    {
        switch (step.kind)
        {
        case BenchStep::Kind::unsolder:
            for (const auto& end : step.ends)
                openPair (harness, end.pair);
            break;
        case BenchStep::Kind::takeOut:
            for (const auto& end : step.ends)
                openPair (harness, end.pair);
            for (const auto& name : step.parts)
                harness.removePart (name);
            break;
        case BenchStep::Kind::prepare:
            for (const auto& name : step.parts)
                fit (name);
            break;
        case BenchStep::Kind::solder:
            for (const auto& end : step.ends)
                if (joined.insert (end.pair).second)
                    harness.solder ({ end.pair.first, end.pair.second });
            break;
        case BenchStep::Kind::mount:
        case BenchStep::Kind::insulate: break; // nothing is joined by them
        }
    }
    return harness;
}
}
