// Every edit of the job goes through its text and is read again.
#include "session/JobEditor.h"

#include "session/EmbeddedPresets.h"
#include "session/KeptState.h"

namespace coldiron
{
JobEditor::JobEditor (SharedState& s, PresetFolders folders, Publish p)
    : shared (s), standardPresets (std::move (folders)), publish (std::move (p)), document (standardPresets)
{
}

std::shared_ptr<const Job> JobEditor::job() const
{
    const std::scoped_lock lock (mutex);
    return document.job();
}

JobTree JobEditor::treeNow() const
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

JobTree JobEditor::tree() const
{
    const std::scoped_lock lock (mutex);
    return treeNow();
}

JobTree JobEditor::committedTree() const
{
    const std::scoped_lock lock (mutex);
    return document.tree();
}

std::string JobEditor::text() const
{
    const std::scoped_lock lock (mutex);
    return document.textOf (treeNow());
}

std::filesystem::path JobEditor::file() const
{
    const std::scoped_lock lock (mutex);
    return document.file();
}

std::filesystem::path JobEditor::folder() const
{
    const std::scoped_lock lock (mutex);
    return document.folder();
}

bool JobEditor::isChanged() const
{
    const std::scoped_lock lock (mutex);
    return document.isChanged() || treeNow() != document.tree();
}

Diagnostics JobEditor::diagnostics() const
{
    const std::scoped_lock lock (mutex);
    return document.diagnostics();
}

PresetFolders JobEditor::presets() const
{
    const std::scoped_lock lock (mutex);
    return document.presets();
}

/** With the document locked: what follows from a change that was made, or that there is something to say. */
bool JobEditor::published (bool done, Change change)
{
    if (done)
        publish (document.job(), change);
    else
        shared.announceJob();
    return done;
}

bool JobEditor::open (const std::filesystem::path& path)
{
    const std::scoped_lock lock (mutex);
    return published (document.open (path), Change::opened);
}

bool JobEditor::save (const std::filesystem::path& path)
{
    const std::scoped_lock lock (mutex);
    const bool saved = document.save (path, treeNow());
    shared.announceJob();
    return saved;
}

bool JobEditor::replace (const std::string& text, const std::filesystem::path& file, const std::filesystem::path& folder)
{
    const std::scoped_lock lock (mutex);
    return published (document.replace (text, file, folder, standardPresets), Change::opened);
}

bool JobEditor::setText (const std::string& text)
{
    JobTree tree = parseJobTree (text);
    if (tree.is_object())
        return edit ("Edit the job",
                     [&] (JobTree& now)
                     {
                         now = tree;
                         return std::string();
                     });
    return replace (text, file(), folder()); // not JSON: the reader says where
}

bool JobEditor::newJob (const std::string& guitar)
{
    JobTree tree = { { "coldiron", "job 1" }, { "title", "New job" }, { "guitar", guitar } };
    tree["options"]["A"]["name"] = "As it is";
    return replace (jobTreeText (tree), {}, {});
}

bool JobEditor::edit (const std::string& name, const TreeEdit& change)
{
    const std::scoped_lock lock (mutex);
    return published (document.edit (treeNow(), name, change), Change::edited);
}

bool JobEditor::edit (const std::string& pointer, const std::string& json, const std::string& whatFor)
{
    JobTree value = json.empty() ? JobTree() : JobTree::parse (json, nullptr, false, true);
    return edit (whatFor.empty() ? "Edit" : whatFor,
                 [&] (JobTree& tree) -> std::string
                 {
                     if (value.is_discarded())
                         return "\"" + json + "\" is no JSON";
                     return setAt (tree, pointer, value, json.empty());
                 });
}

void JobEditor::commitSettings (const JobTree& before, const std::string& name)
{
    const std::scoped_lock lock (mutex);
    const JobTree now = treeNow();
    // What is heard and drawn comes from the live settings already: the snapshot may stay, only the text moves on.
    if (now != before
        && document.edit (before, name,
                          [&] (JobTree& tree)
                          {
                              tree = now;
                              return std::string();
                          }))
        shared.announceJob();
}

void JobEditor::refuse (const std::string& why)
{
    const std::scoped_lock lock (mutex);
    document.refuse (why);
    shared.announceJob();
}

void JobEditor::republish()
{
    const std::scoped_lock lock (mutex);
    publish (document.job(), Change::takesOnly);
}

bool JobEditor::undo()
{
    const std::scoped_lock lock (mutex);
    const bool done = document.undo (treeNow());
    if (done)
        publish (document.job(), Change::edited);
    return done;
}

bool JobEditor::redo()
{
    const std::scoped_lock lock (mutex);
    const bool done = document.redo (treeNow());
    if (done)
        publish (document.job(), Change::edited);
    return done;
}

std::string JobEditor::undoName() const
{
    const std::scoped_lock lock (mutex);
    return document.undoName();
}

std::string JobEditor::redoName() const
{
    const std::scoped_lock lock (mutex);
    return document.redoName();
}

void JobEditor::keep (JobTree& state, const std::function<void()>& rest) const
{
    const std::scoped_lock lock (mutex);
    const JobTree now = treeNow();
    state["job"] = document.textOf (now);
    state["file"] = document.file().string();
    state["folder"] = document.folder().string();
    state["changed"] = document.isChanged() || now != document.tree();
    state["presets"] = JobTree (presetsNamedBy (document.tree(), document.presets()));
    rest();
}

bool JobEditor::restore (const JobTree& state, const Publish& publishAll)
{
    const auto carried = std::make_shared<const CarriedPresets> (presetsKeptIn (state));
    const std::scoped_lock lock (mutex);
    if (! document.replace (kept::textIn (state, "job"), kept::textIn (state, "file"), kept::textIn (state, "folder"),
                            standardPresets.behind (carried)))
    {
        shared.announceJob();
        return false; // the last good one goes on
    }
    if (kept::flagIn (state, "changed"))
        document.markChanged(); // what its file lacks, it lacks still
    publishAll (document.job(), Change::opened);
    return true;
}
}
