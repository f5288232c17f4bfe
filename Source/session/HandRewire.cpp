#include "session/HandRewire.h"

#include "session/JobEditor.h"

#include <algorithm>

namespace coldiron
{
namespace
{
/** A part as a job file writes it; null for kinds that are not fitted by hand. */
JobTree partTree (const Part& part)
{
    JobTree tree;
    const auto withTolerance = [&tree] (double tolerance, double standard)
    {
        if (tolerance != standard)
            tree["tolerance"] = tolerance;
    };
    if (const auto* capacitor = part.as<CapacitorPart>())
    {
        tree["capacitor"] = capacitor->farads;
        withTolerance (capacitor->tolerance, CapacitorPart().tolerance);
    }
    else if (const auto* resistor = part.as<ResistorPart>())
    {
        tree["resistor"] = resistor->ohms;
        withTolerance (resistor->tolerance, ResistorPart().tolerance);
    }
    else
        return tree;
    if (! part.serves.empty())
        tree["serves"] = part.serves;
    return tree;
}

/** The steps as a job file writes them; null where one cannot be written. */
JobTree stepsTree (const std::vector<Step>& steps)
{
    JobTree list = JobTree::array();
    for (const auto& step : steps)
    {
        JobTree tree = JobTree::object();
        switch (step.kind)
        {
        case Step::Kind::unsolder: tree["unsolder"] = step.points; break;
        case Step::Kind::solder: tree["solder"] = step.points; break;
        case Step::Kind::remove: tree["remove"] = step.part; break;
        case Step::Kind::fit:
            tree["fit"] = step.part;
            tree["as"] = partTree (*step.as);
            if (tree["as"].is_null())
                return {};
            break;
        default: return {};
        }
        list.push_back (std::move (tree));
    }
    return list;
}

bool isByHand (const JobTree& rewire)
{
    const auto use = rewire.is_object() ? rewire.find ("use") : rewire.end();
    return use != rewire.end() && use->is_object() && use->value ("name", "") == byHand;
}

/** The option's rewires with what is done by hand at their end. Null: cannot be written. */
JobTree rewiresFor (const Job& job, const JobTree& optionTree, const Option& option, const Harness& wanted, const PresetFolders&)
{
    const JobTree written = optionTree.contains ("rewires") ? optionTree["rewires"] : JobTree::array();
    JobTree others = JobTree::array();
    std::vector<RewireUse> uses;
    for (size_t i = 0; i < written.size() && i < option.rewires.size(); ++i)
        if (! isByHand (written[i]))
        {
            others.push_back (written[i]);
            uses.push_back (option.rewires[i]);
        }

    const auto append = [] (JobTree list, const std::vector<Step>& steps) -> JobTree
    {
        const auto tree = stepsTree (steps);
        if (tree.is_null())
            return {};
        if (! steps.empty())
            list.push_back ({ { "use", { { "coldiron", "rewire 1" }, { "name", byHand }, { "steps", tree } } } });
        return list;
    };
    Diagnostics ignored;
    if (const auto base = applyRewires (option.guitar.harness, uses, job.file.string(), ignored))
        if (auto list = append (others, difference (*base, wanted)); ! list.is_null())
            return list;
    // A rewire that builds on what was done by hand: a second one follows it.
    return append (written, difference (option.harness, wanted));
}

/** Keeps of a setting what the harness still has. */
void trimSetting (JobTree& option, const Harness& harness)
{
    if (! option.contains ("setting") || ! option["setting"].is_object())
        return;
    JobTree kept = JobTree::object();
    for (const auto& [name, value] : option["setting"].items())
        for (const auto& control : controls (harness))
            if (control.name == name)
                kept[name] = value;
    option["setting"] = kept;
}

OptionId firstFree (const Job& job)
{
    for (const OptionId id : optionIds)
        if (job.find (letterOf (id)) == nullptr)
            return id;
    return asRecorded;
}
}

bool mayBeRewired (const JobEditor& editor, OptionId id)
{
    const auto tree = parseJobTree (editor.text());
    return id != asRecorded && editor.job()->find (letterOf (id)) != nullptr && tree.value ("agreed", "") != letterOf (id);
}

HandResult rewireByHand (JobEditor& editor, OptionId shown, const Harness& wanted)
{
    const auto job = editor.job();
    const auto tree = parseJobTree (editor.text());
    const auto* option = shown == asRecorded ? nullptr : job->find (letterOf (shown));
    HandResult result;
    result.isNew = ! mayBeRewired (editor, shown);
    result.option = result.isNew ? firstFree (*job) : shown;
    if (result.option == asRecorded)
    {
        result.words = "All eight letters are taken. Remove an option first.";
        return result;
    }

    Option none;
    none.guitar = job->guitar;
    none.harness = job->guitar.harness;
    JobTree optionTree = JobTree::object();
    if (option != nullptr)
        optionTree = tree.at ("options").at (letterOf (shown));
    if (result.isNew)
        optionTree["name"] = option == nullptr || option->name.empty() ? std::string (byHand) : option->name + ", by hand";
    const auto rewires = rewiresFor (*job, optionTree, option != nullptr ? *option : none, wanted, editor.presets());
    if (rewires.is_null())
    {
        result.words = "This cannot be written as bench steps.";
        return result;
    }
    optionTree["rewires"] = rewires;
    trimSetting (optionTree, wanted);
    result.done = editor.edit ("/options/" + letterOf (result.option), optionTree.dump(),
                               "Rewire " + letterOf (result.option) + " by hand");
    if (! result.done)
        result.words = editor.diagnostics().empty() ? "The job could not be read again." : editor.diagnostics().front().message;
    else if (result.isNew)
        result.words = (option == nullptr ? "Now stays as it came in" : letterOf (shown) + " is agreed and stays")
                       + ". This is option " + letterOf (result.option) + ".";
    return result;
}
}
