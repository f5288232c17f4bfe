#include "session/OptionEditor.h"

#include <algorithm>

namespace coldiron
{
OptionEditor::OptionEditor (JobEditor& e, const ControlPanel& c) : editor (e), controls (c) {}

std::vector<OptionId> OptionEditor::ids() const
{
    std::vector<OptionId> result;
    for (const Option& option : editor.job()->options)
        if (const OptionId id = optionOf (option.letter); id != asRecorded)
            result.push_back (id);
    return result;
}

OptionId OptionEditor::add (const std::string& name)
{
    for (const OptionId id : optionIds)
        if (editor.job()->find (letterOf (id)) == nullptr)
            return editor.edit ("Add option " + letterOf (id),
                                [&] (JobTree& tree)
                                {
                                    tree["options"][letterOf (id)] = { { "name", name } };
                                    return std::string();
                                })
                       ? id
                       : asRecorded;
    return asRecorded;
}

OptionId OptionEditor::duplicate (OptionId from)
{
    if (editor.job()->find (letterOf (from)) == nullptr)
        return asRecorded;
    for (const OptionId id : optionIds)
        if (editor.job()->find (letterOf (id)) == nullptr)
            return editor.edit ("Duplicate " + letterOf (from),
                                [&] (JobTree& tree)
                                {
                                    JobTree copy = tree["options"].at (letterOf (from));
                                    tree["options"][letterOf (id)] = std::move (copy);
                                    return std::string();
                                })
                       ? id
                       : asRecorded;
    return asRecorded;
}

bool OptionEditor::rename (OptionId id, const std::string& name)
{
    return editor.edit ("Rename " + letterOf (id),
                        [&] (JobTree& tree)
                        {
                            tree.at ("options").at (letterOf (id))["name"] = name;
                            return std::string();
                        });
}

bool OptionEditor::remove (OptionId id)
{
    return editor.edit (
        "Remove " + letterOf (id), [&] (JobTree& tree)
        { return tree.at ("options").erase (letterOf (id)) == 1 ? std::string() : "there is no option " + letterOf (id); });
}

bool OptionEditor::move (OptionId id, int place)
{
    return editor.edit ("Move " + letterOf (id),
                        [&] (JobTree& tree)
                        {
                            std::vector<std::pair<std::string, JobTree>> list;
                            for (const auto& [letter, option] : tree.at ("options").items())
                                list.emplace_back (letter, option);
                            const auto from =
                                std::find_if (list.begin(), list.end(), [&] (const auto& o) { return o.first == letterOf (id); });
                            if (from == list.end())
                                return "there is no option " + letterOf (id);
                            auto moved = *from;
                            list.erase (from);
                            list.insert (list.begin() + std::clamp (place, 0, static_cast<int> (list.size())), moved);
                            JobTree options = JobTree::object();
                            for (auto& [letter, option] : list)
                                options[letter] = option;
                            tree["options"] = options;
                            return std::string();
                        });
}

bool OptionEditor::setRewires (OptionId id, const std::vector<RewireChoice>& choices)
{
    const auto presets = editor.presets();
    const auto folder = editor.folder();
    const JobTree old = editor.committedTree();
    return editor.edit (
        "Rewire " + letterOf (id),
        [&] (JobTree& tree)
        {
            JobTree& option = tree.at ("options").at (letterOf (id));
            const JobTree before = option.contains ("rewires") ? option["rewires"] : JobTree::array();
            JobTree list = JobTree::array();
            size_t inLine = 0;
            for (const RewireChoice& choice : choices)
            {
                if (choice.preset != "(in line)")
                {
                    list.push_back (asTree (choice));
                    continue;
                }
                // One written in line stays as it was written: the next of them in the order there was.
                while (inLine < before.size() && asChoice (before[inLine]).preset != "(in line)")
                    ++inLine;
                if (inLine < before.size())
                    list.push_back (before[inLine++]);
            }
            option["rewires"] = list;
            option.erase ("setting"); // positions of what is gone are no longer names
            if (old.contains ("options") && old["options"].contains (letterOf (id))
                && old["options"][letterOf (id)].contains ("setting"))
            {
                // Those that the rewired harness still has are kept; which they are shows once it is read.
                Diagnostics ignored;
                if (auto tried = readJobText (jobTreeText (tree), folder, presets, ignored))
                    if (const Option* rewired = tried->find (letterOf (id)))
                        for (const Control& control : coldiron::controls (rewired->harness))
                        {
                            const Setting now = controls.setting (id);
                            if (control.positions.empty() && now.knobs.count (control.name) != 0
                                && now.knob (control.name) != control.rest)
                                option["setting"][control.name] = now.knob (control.name);
                            else if (const auto lever = now.levers.find (control.name);
                                     lever != now.levers.end()
                                     && std::find (control.positions.begin(), control.positions.end(), lever->second)
                                            != control.positions.end())
                                option["setting"][control.name] = lever->second;
                        }
            }
            return std::string();
        });
}

std::vector<RewireChoice> OptionEditor::rewires (OptionId id) const
{
    std::vector<RewireChoice> result;
    const JobTree tree = editor.committedTree();
    const JobTree::json_pointer at ("/options/" + letterOf (id) + "/rewires");
    if (id != asRecorded && tree.is_object() && tree.contains (at))
        for (const JobTree& rewire : tree.at (at))
            result.push_back (asChoice (rewire));
    return result;
}

Diagnostics OptionEditor::whyNot (OptionId id, const RewireChoice& choice) const
{
    Diagnostics diagnostics;
    const auto presets = editor.presets();
    const auto now = editor.job();
    const Option* option = now->find (letterOf (id));
    const Harness harness = option ? option->harness : now->guitar.harness;
    try
    {
        if (auto use = fillRewire (choice.preset, choice.arguments, harness, presets, diagnostics))
            applyRewires (harness, { *use }, {}, diagnostics);
    }
    catch (const std::exception& fault)
    {
        diagnostics.push_back ({ {}, 0, fault.what() });
    }
    return diagnostics;
}
}
