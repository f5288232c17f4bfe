#include "session/ControlMap.h"

#include <algorithm>

namespace coldiron
{
ControlMap::ControlMap (const Job& job)
{
    add (job.guitar.harness);
    for (const TakeEntry& take : job.takes)
        add (take.harness);
    for (const Option& option : job.options)
        add (option.harness);
}

void ControlMap::add (const Harness& harness)
{
    for (const Control& control : controls (harness))
    {
        const bool isKnob = control.positions.empty();
        auto& list = isKnob ? knobList : leverList;
        const auto known = std::find_if (list.begin(), list.end(), [&] (const auto& c) { return c.name == control.name; });
        if (known != list.end())
        {
            if (control.positions.size() > known->positions.size())
                known->positions = control.positions; // the same name with another switch on it
            continue;
        }
        const int place = static_cast<int> (list.size());
        list.push_back ({ control.name, control.positions, place < (isKnob ? numKnobs : numLevers) ? place : -1 });
    }
}

const PanelControl* ControlMap::find (const std::string& name) const
{
    for (const auto* list : { &knobList, &leverList })
        for (const PanelControl& control : *list)
            if (control.name == name)
                return &control;
    return nullptr;
}

const PanelControl* ControlMap::knobAt (int place) const
{
    return place >= 0 && place < static_cast<int> (knobList.size()) ? &knobList[static_cast<size_t> (place)] : nullptr;
}

const PanelControl* ControlMap::leverAt (int place) const
{
    return place >= 0 && place < static_cast<int> (leverList.size()) ? &leverList[static_cast<size_t> (place)] : nullptr;
}
}
