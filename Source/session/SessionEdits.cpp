// The job: every edit goes through its text and is read again.
#include "session/Session.h"

#include <algorithm>

namespace coldiron
{
std::shared_ptr<const Job> Session::job() const
{
    const std::scoped_lock lock (mutex);
    return document.job();
}

JobTree Session::treeNow() const
{
    JobTree tree = document.tree();
    const auto snapshot = shared.snapshot();
    if (! tree.is_object() || ! tree.contains ("options") || ! tree["options"].is_object())
        return tree;
    for (const Option& option : document.job()->options)
    {
        const OptionId id = optionOf (option.letter);
        if (id == asRecorded || ! tree["options"].contains (option.letter))
            continue;
        const auto& takes = document.job()->takes;
        const Setting base = takes.empty() ? Setting() : takes[static_cast<size_t> (option.settingTake)].setting;
        writeSetting (tree["options"][option.letter], shared.live.setting (id, option.setting, option.harness, snapshot->map),
                      base, option.harness);
    }
    return tree;
}

std::string Session::jobText() const
{
    const std::scoped_lock lock (mutex);
    return document.textOf (treeNow());
}

std::filesystem::path Session::jobFile() const
{
    const std::scoped_lock lock (mutex);
    return document.file();
}

bool Session::isChanged() const
{
    const std::scoped_lock lock (mutex);
    return document.isChanged() || treeNow() != document.tree();
}

Diagnostics Session::diagnostics() const
{
    const std::scoped_lock lock (mutex);
    Diagnostics diagnostics = document.diagnostics();
    if (lateFor.load() != 0)
        diagnostics.push_back (
            { {}, 0, "a render went on before the take and its levels were ready, and is not to be trusted; render it again" });
    for (const Diagnostic& fault : shared.faults())
        diagnostics.push_back (fault);
    return diagnostics;
}

bool Session::openJob (const std::filesystem::path& path)
{
    const std::scoped_lock lock (mutex);
    if (! document.open (path))
    {
        announce();
        return false;
    }
    std::error_code ignored;
    std::erase_if (takesRead, [&] (const auto& entry)
                   { return ! std::filesystem::exists (entry.first, ignored); }); // gone since it was read
    takeIndex = 0;
    byHand = false;
    blindRun.reset();
    documentChanged (true);
    rememberHeard();
    return true;
}

bool Session::saveJob (const std::filesystem::path& path)
{
    const std::scoped_lock lock (mutex);
    const bool saved = document.save (path, treeNow());
    announce();
    return saved;
}

bool Session::replaceJob (const std::string& text, const std::filesystem::path& file, const std::filesystem::path& folder)
{
    const std::scoped_lock lock (mutex);
    if (! document.replace (text, file, folder, standardPresets))
    {
        announce();
        return false;
    }
    takeIndex = 0;
    byHand = false;
    blindRun.reset();
    documentChanged (true);
    rememberHeard();
    return true;
}

bool Session::setJobText (const std::string& text)
{
    JobTree tree = parseJobTree (text);
    if (tree.is_object())
        return editTree ("Edit the job",
                         [&] (JobTree& now)
                         {
                             now = tree;
                             return std::string();
                         });
    return replaceJob (text, document.file(), document.folder()); // not JSON: the reader says where
}

bool Session::newJob (const std::string& guitar)
{
    JobTree tree = { { "coldiron", "job 1" }, { "title", "New job" }, { "guitar", guitar } };
    tree["options"]["A"]["name"] = "As it is";
    return replaceJob (jobTreeText (tree), {}, {});
}

bool Session::editTree (const std::string& name, const std::function<std::string (JobTree&)>& change)
{
    const std::scoped_lock lock (mutex);
    if (document.edit (treeNow(), name, change))
    {
        documentChanged (true);
        return true;
    }
    announce();
    return false;
}

bool Session::edit (const std::string& pointer, const std::string& json, const std::string& whatFor)
{
    JobTree value = json.empty() ? JobTree() : JobTree::parse (json, nullptr, false, true);
    return editTree (whatFor.empty() ? "Edit" : whatFor,
                     [&] (JobTree& tree) -> std::string
                     {
                         if (value.is_discarded())
                             return "\"" + json + "\" is no JSON";
                         return setAt (tree, pointer, value, json.empty());
                     });
}

bool Session::undo()
{
    const std::scoped_lock lock (mutex);
    const bool done = document.undo (treeNow());
    if (done)
        documentChanged (true);
    return done;
}

bool Session::redo()
{
    const std::scoped_lock lock (mutex);
    const bool done = document.redo (treeNow());
    if (done)
        documentChanged (true);
    return done;
}

std::string Session::undoName() const
{
    const std::scoped_lock lock (mutex);
    return document.undoName();
}

std::string Session::redoName() const
{
    const std::scoped_lock lock (mutex);
    return document.redoName();
}

std::vector<OptionId> Session::ids() const
{
    std::vector<OptionId> result;
    for (const Option& option : job()->options)
        if (const OptionId id = optionOf (option.letter); id != asRecorded)
            result.push_back (id);
    return result;
}

OptionId Session::addOption (const std::string& name)
{
    for (const OptionId id : optionIds)
        if (job()->find (letterOf (id)) == nullptr)
            return editTree ("Add option " + letterOf (id),
                             [&] (JobTree& tree)
                             {
                                 tree["options"][letterOf (id)] = { { "name", name } };
                                 return std::string();
                             })
                       ? id
                       : asRecorded;
    return asRecorded;
}

OptionId Session::duplicateOption (OptionId from)
{
    if (job()->find (letterOf (from)) == nullptr)
        return asRecorded;
    for (const OptionId id : optionIds)
        if (job()->find (letterOf (id)) == nullptr)
            return editTree ("Duplicate " + letterOf (from),
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

bool Session::renameOption (OptionId id, const std::string& name)
{
    return editTree ("Rename " + letterOf (id),
                     [&] (JobTree& tree)
                     {
                         tree.at ("options").at (letterOf (id))["name"] = name;
                         return std::string();
                     });
}

bool Session::removeOption (OptionId id)
{
    return editTree (
        "Remove " + letterOf (id), [&] (JobTree& tree)
        { return tree.at ("options").erase (letterOf (id)) == 1 ? std::string() : "there is no option " + letterOf (id); });
}

bool Session::moveOption (OptionId id, int place)
{
    return editTree ("Move " + letterOf (id),
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

bool Session::setRewires (OptionId id, const std::vector<RewireChoice>& choices)
{
    return editTree ("Rewire " + letterOf (id),
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
                         const JobTree old = document.tree();
                         if (old.contains ("options") && old["options"].contains (letterOf (id))
                             && old["options"][letterOf (id)].contains ("setting"))
                         {
                             // Those that the rewired harness still has are kept; which they are shows once it is read.
                             Diagnostics ignored;
                             if (auto tried = readJobText (jobTreeText (tree), document.folder(), document.presets(), ignored))
                                 if (const Option* rewired = tried->find (letterOf (id)))
                                     for (const Control& control : coldiron::controls (rewired->harness))
                                     {
                                         const Setting now = setting (id);
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

std::vector<RewireChoice> Session::rewires (OptionId id) const
{
    const std::scoped_lock lock (mutex);
    std::vector<RewireChoice> result;
    const JobTree& tree = document.tree();
    const JobTree::json_pointer at ("/options/" + letterOf (id) + "/rewires");
    if (id != asRecorded && tree.is_object() && tree.contains (at))
        for (const JobTree& rewire : tree.at (at))
            result.push_back (asChoice (rewire));
    return result;
}

Diagnostics Session::whyNot (OptionId id, const RewireChoice& choice) const
{
    Diagnostics diagnostics;
    const auto now = job();
    const Option* option = now->find (letterOf (id));
    const Harness harness = option ? option->harness : now->guitar.harness;
    try
    {
        if (auto use = fillRewire (choice.preset, choice.arguments, harness, document.presets(), diagnostics))
            applyRewires (harness, { *use }, {}, diagnostics);
    }
    catch (const std::exception& fault)
    {
        diagnostics.push_back ({ {}, 0, fault.what() });
    }
    return diagnostics;
}

bool Session::addTake (const std::filesystem::path& file)
{
    const std::scoped_lock lock (mutex);
    try
    {
        takeInfo (file);
    }
    catch (const std::exception& fault)
    {
        document.refuse (fault.what());
        announce();
        return false;
    }
    std::error_code ignored;
    const std::filesystem::path absolute = std::filesystem::absolute (file, ignored);
    const int before = takeIndex;
    takeIndex = static_cast<int> (document.job()->takes.size());
    byHand = byHand.load() || takeIndex > 0; // the new one is to be heard, whatever it is nearest to
    const bool added = editTree ("Add a take",
                                 [&] (JobTree& tree)
                                 {
                                     std::filesystem::path shown = absolute;
                                     if (! document.folder().empty())
                                         if (auto relative = std::filesystem::relative (absolute, document.folder());
                                             ! relative.empty() && *relative.begin() != "..")
                                             shown = relative;
                                     if (! tree.contains ("takes") || ! tree["takes"].is_array())
                                         tree["takes"] = JobTree::array();
                                     tree["takes"].push_back ({ { "file", shown.string() } });
                                     return std::string();
                                 });
    if (! added)
        takeIndex = before;
    return added;
}

bool Session::setTakeSetting (int take, const Setting& setting)
{
    return editTree ("Setting of the take",
                     [&] (JobTree& tree)
                     {
                         JobTree value = JobTree::object();
                         for (const auto& [name, knob] : setting.knobs)
                             value[name] = knob;
                         for (const auto& [name, lever] : setting.levers)
                             value[name] = lever;
                         tree.at ("takes").at (static_cast<size_t> (take))["setting"] = value;
                         return std::string();
                     });
}

bool Session::setStringsPlayed (int take, const std::vector<std::string>& strings)
{
    return editTree ("Strings played",
                     [&] (JobTree& tree)
                     {
                         JobTree& entry = tree.at ("takes").at (static_cast<size_t> (take));
                         if (strings.empty())
                             entry.erase ("strings");
                         else
                             entry["strings"] = strings;
                         return std::string();
                     });
}
}
