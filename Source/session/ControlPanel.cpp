#include "session/ControlPanel.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
ControlPanel::ControlPanel (SharedState& s, JobEditor& e, Automation& a) : shared (s), editor (e), automation (a) {}

/** Parameters are those of the option heard; in a blind test as recorded counts as heard, whatever plays. */
bool ControlPanel::isAutomated (OptionId id, const PanelControl* control) const
{
    return control != nullptr && control->place >= 0 && id == (shared.isBlind() ? asRecorded : shared.heard.load());
}

std::vector<PanelControl> ControlPanel::of (OptionId id) const
{
    const auto snapshot = shared.snapshot();
    const Option* option = snapshot->option (id);
    std::vector<PanelControl> result;
    for (const Control& control : coldiron::controls (option ? option->harness : snapshot->recordedConfig (asRecorded).harness))
    {
        const PanelControl* known = snapshot->map.find (control.name);
        result.push_back ({ control.name, control.positions, known ? known->place : -1 });
    }
    return result;
}

Setting ControlPanel::setting (OptionId id) const
{
    const auto snapshot = shared.snapshot();
    if (snapshot->option (id) == nullptr)
    {
        const CircuitConfig config = snapshot->recordedConfig (asRecorded);
        return fullSetting (config.harness, config.setting);
    }
    return configOf (*snapshot, shared.live, id).setting;
}

void ControlPanel::setKnob (OptionId id, const std::string& name, double value)
{
    const auto snapshot = shared.snapshot();
    const PanelControl* control = snapshot->map.find (name);
    if (snapshot->option (id) == nullptr || control == nullptr || ! control->isKnob() || ! std::isfinite (value))
        return;
    value = std::clamp (value, 0.0, 10.0);
    if (control->place < 0)
        editor.edit ("/options/" + letterOf (id) + "/setting/" + name, std::to_string (value), "Turn " + name);
    else if (isAutomated (id, control))
        automation.move (ParameterKind::knob, control->place, value);
    else
    {
        shared.live.setKnob (id, control->place, static_cast<float> (value));
        shared.settingsRevision.fetch_add (1);
    }
    shared.changes.raise();
}

void ControlPanel::setLever (OptionId id, const std::string& name, const std::string& position)
{
    const auto snapshot = shared.snapshot();
    const PanelControl* control = snapshot->map.find (name);
    if (snapshot->option (id) == nullptr || control == nullptr || control->isKnob())
        return;
    const auto found = std::find (control->positions.begin(), control->positions.end(), position);
    if (found == control->positions.end())
        return;
    const int index = static_cast<int> (found - control->positions.begin());
    if (control->place < 0)
        editor.edit ("/options/" + letterOf (id) + "/setting/" + name, JobTree (position).dump(), "Throw " + name);
    else if (isAutomated (id, control))
        automation.move (ParameterKind::lever, control->place, index);
    else
    {
        shared.live.setLever (id, control->place, index);
        shared.settingsRevision.fetch_add (1);
    }
    shared.changes.raise();
}

void ControlPanel::beginGesture (OptionId id, const std::string& name)
{
    const auto snapshot = shared.snapshot();
    const PanelControl* control = snapshot->map.find (name);
    gestureBefore = editor.tree();
    if (isAutomated (id, control))
        automation.beginGesture (control->isKnob() ? ParameterKind::knob : ParameterKind::lever, control->place);
}

void ControlPanel::endGesture (OptionId id, const std::string& name)
{
    const auto snapshot = shared.snapshot();
    const PanelControl* control = snapshot->map.find (name);
    if (isAutomated (id, control))
        automation.endGesture (control->isKnob() ? ParameterKind::knob : ParameterKind::lever, control->place);
    if (! gestureBefore)
        return;
    const bool turned = control == nullptr || control->isKnob();
    editor.commitSettings (*gestureBefore, (turned ? "Turn " : "Throw ") + name);
    gestureBefore.reset();
}

/** By place and in full: the job's text rounds, and automation moves places that no option uses. */
void ControlPanel::keep (JobTree& state) const
{
    for (const OptionId id : versionIds)
    {
        JobTree knobs = JobTree::array(), levers = JobTree::array();
        for (int place = 0; place < numKnobs; ++place)
            knobs.push_back (shared.live.knob (id, place));
        for (int place = 0; place < numLevers; ++place)
            levers.push_back (shared.live.lever (id, place));
        state["knobs"].push_back (knobs);
        state["levers"].push_back (levers);
    }
}

void ControlPanel::restore (const JobTree& state)
{
    for (const OptionId id : versionIds)
    {
        const auto rowOf = [&] (const char* key) -> JobTree
        {
            const auto rows = state.find (key);
            return rows != state.end() && rows->is_array() && rows->size() > indexOf (id) && (*rows)[indexOf (id)].is_array()
                       ? (*rows)[indexOf (id)]
                       : JobTree::array();
        };
        const JobTree knobs = rowOf ("knobs"), levers = rowOf ("levers");
        for (size_t i = 0; i < std::min<size_t> (numKnobs, knobs.size()); ++i)
            if (knobs[i].is_number() && knobs[i].get<double>() >= 0.0 && knobs[i].get<double>() <= 10.0)
                shared.live.setKnob (id, static_cast<int> (i), knobs[i].get<float>());
        for (size_t i = 0; i < std::min<size_t> (numLevers, levers.size()); ++i)
            if (levers[i].is_number_integer() && levers[i].get<int64_t>() >= 0 && levers[i].get<int64_t>() < 12)
                shared.live.setLever (id, static_cast<int> (i), levers[i].get<int>());
    }
    shared.settingsRevision.fetch_add (1);
}
}
