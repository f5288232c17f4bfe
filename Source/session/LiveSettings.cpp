#include "session/LiveSettings.h"

#include "session/JobTree.h"

#include <algorithm>

namespace coldiron
{
LiveSettings::LiveSettings()
{
    for (auto& row : knobs)
        for (auto& value : row)
            value = 10.0f;
    for (auto& row : levers)
        for (auto& value : row)
            value = 0;
    for (auto& value : generations)
        value = 0;
}

void LiveSettings::load (OptionId id, const Setting& setting, const Harness& harness, const ControlMap& map)
{
    const Setting full = fullSetting (harness, setting);
    for (const auto& [name, value] : full.knobs)
        if (const PanelControl* control = map.find (name); control != nullptr && control->place >= 0)
            knobs[at (id)][static_cast<size_t> (control->place)] = static_cast<float> (value);
    for (const auto& [name, position] : full.levers)
        if (const PanelControl* control = map.find (name); control != nullptr && control->place >= 0)
        {
            const auto& names = control->positions;
            const auto found = std::find (names.begin(), names.end(), position);
            levers[at (id)][static_cast<size_t> (control->place)] =
                found == names.end() ? 0 : static_cast<int> (found - names.begin());
        }
    generations[at (id)].fetch_add (1, std::memory_order_release);
}

void LiveSettings::load (const Job& job, const ControlMap& map)
{
    const CircuitConfig recorded = job.recordedConfig (job.takes.empty() ? -1 : 0);
    for (const OptionId id : versionIds)
    {
        const Option* option = job.find (letterOf (id));
        load (id, option ? option->setting : recorded.setting, option ? option->harness : recorded.harness, map);
    }
}

Setting LiveSettings::setting (OptionId id, const Setting& base, const Harness& harness, const ControlMap& map) const
{
    Setting result = fullSetting (harness, base);
    for (auto& [name, value] : result.knobs)
        if (const PanelControl* control = map.find (name); control != nullptr && control->place >= 0)
            value = std::clamp (knob (id, control->place), 0.0f, 10.0f);
    for (const Control& lever : controls (harness))
    {
        const PanelControl* control = map.find (lever.name);
        if (lever.positions.empty() || control == nullptr || control->place < 0)
            continue;
        const int last = static_cast<int> (lever.positions.size()) - 1;
        result.levers[lever.name] = lever.positions[static_cast<size_t> (std::clamp (this->lever (id, control->place), 0, last))];
    }
    return result;
}

bool LiveSettings::setKnob (OptionId id, int place, float value)
{
    if (place < 0 || place >= numKnobs || knobs[at (id)][static_cast<size_t> (place)].exchange (value) == value)
        return false;
    generations[at (id)].fetch_add (1, std::memory_order_release);
    return true;
}

bool LiveSettings::setLever (OptionId id, int place, int position)
{
    if (place < 0 || place >= numLevers || levers[at (id)][static_cast<size_t> (place)].exchange (position) == position)
        return false;
    generations[at (id)].fetch_add (1, std::memory_order_release);
    return true;
}
}
