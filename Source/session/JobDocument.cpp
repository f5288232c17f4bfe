#include "session/JobDocument.h"

#include "files/WriteFile.h"
#include "job/KeptFiles.h"
#include "session/TakeEdits.h"

#include <fstream>
#include <sstream>

namespace coldiron
{
namespace fs = std::filesystem;

namespace
{
/** Heard when nothing was opened yet. */
constexpr const char* firstJob = R"({
  "coldiron": "job 1",
  "title": "New job",
  "guitar": "two-humbuckers-four-knobs",
  "options": { "A": { "name": "As it is" } }
})";

/** Takes are named relative to the job: saved in another folder, the names change and the files stay the same. */
void moveTo (JobTree& tree, const fs::path& from, const fs::path& to)
{
    if (! tree.is_object() || ! tree.contains ("takes") || ! tree["takes"].is_array())
        return;
    for (JobTree& take : tree["takes"])
        if (take.is_object() && take.contains ("file") && take["file"].is_string())
            if (const fs::path file = take["file"].get<std::string>(); ! file.empty())
                take["file"] = pathInJob (file.is_absolute() || from.empty() ? file : from / file, to);
}

std::shared_ptr<const Job> readOrNull (const std::string& text, const fs::path& folder, const PresetFolders& presets,
                                       Diagnostics& diagnostics)
{
    try
    {
        if (auto job = readJobText (text, folder, presets, diagnostics))
            return std::make_shared<const Job> (std::move (*job));
    }
    catch (const std::exception& fault)
    {
        diagnostics.push_back ({ {}, 0, fault.what() });
    }
    return nullptr;
}
}

JobDocument::JobDocument (PresetFolders folders) : presetFolders (std::move (folders))
{
    if (! replace (firstJob, {}, {}, presetFolders))
    {
        current = std::make_shared<const Job>(); // no presets installed: an empty job, and the faults say why
        state = JobTree::object();
    }
}

std::string JobDocument::textOf (const JobTree& tree) const
{
    return ! written.empty() && tree == writtenTree ? written : jobTreeText (tree);
}

void JobDocument::refuse (const std::string& message) { lastFaults = { { jobFile.string(), 0, message } }; }

bool JobDocument::open (const fs::path& path)
{
    std::ifstream stream (path, std::ios::binary);
    std::ostringstream text;
    if (! stream || ! (text << stream.rdbuf()))
    {
        refuse (path.string() + " cannot be read");
        return false;
    }
    std::error_code ignored;
    return replace (text.str(), path, fs::absolute (path, ignored).parent_path(), presetFolders);
}

bool JobDocument::save (const fs::path& path, const JobTree& withSettings)
{
    std::error_code fault;
    const fs::path folder = fs::absolute (path, fault).parent_path().lexically_normal();
    const bool moves = fs::absolute (jobFolder.empty() ? "." : jobFolder, fault).lexically_normal() != folder;
    JobTree saved = withSettings;
    if (moves)
        moveTo (saved, jobFolder, folder);
    if (const auto why = whyKept (path, keptFiles (*current)); ! why.empty())
    {
        refuse (path.string() + ": " + why);
        return false;
    }
    try
    {
        writeFile (path, textOf (saved));
    }
    catch (const WriteError& why)
    {
        refuse (why.what());
        return false;
    }
    if (moves)
        for (auto* steps : { &past, &future })
            for (Step& step : *steps)
                moveTo (step.tree, jobFolder, folder);
    state = std::move (saved);
    jobFile = path;
    jobFolder = folder;
    changed = false;
    lastFaults.clear();
    return true;
}

bool JobDocument::replace (const std::string& text, const fs::path& file, const fs::path& folder, PresetFolders presets)
{
    Diagnostics diagnostics;
    auto job = readOrNull (text, folder, presets, diagnostics);
    JobTree tree = job != nullptr ? parseJobTree (text) : JobTree();
    if (job == nullptr || ! tree.is_object())
    {
        lastFaults = std::move (diagnostics);
        if (lastFaults.empty())
            refuse ("the job cannot be read");
        return false;
    }
    current = std::move (job);
    state = std::move (tree);
    written = text;
    writtenTree = state;
    jobFile = file;
    jobFolder = folder;
    presetFolders = std::move (presets);
    past.clear();
    future.clear();
    changed = false;
    lastFaults.clear();
    return true;
}

bool JobDocument::read (const JobTree& tree)
{
    Diagnostics diagnostics;
    auto job = readOrNull (jobTreeText (tree), jobFolder, presetFolders, diagnostics);
    if (job == nullptr)
    {
        lastFaults = std::move (diagnostics);
        return false;
    }
    current = std::move (job);
    state = tree;
    changed = true;
    lastFaults.clear();
    return true;
}

bool JobDocument::edit (const JobTree& before, const std::string& name, const std::function<std::string (JobTree&)>& change)
{
    JobTree after = before;
    std::string refusal;
    try
    {
        refusal = change (after);
    }
    catch (const std::exception& fault)
    {
        refusal = fault.what();
    }
    if (! refusal.empty())
    {
        refuse (refusal);
        return false;
    }
    if (! read (after))
        return false;
    past.push_back ({ name, before });
    if (past.size() > mostSteps)
        past.erase (past.begin());
    future.clear();
    return true;
}

bool JobDocument::undo (const JobTree& now)
{
    if (past.empty() || ! read (past.back().tree))
        return false;
    future.push_back ({ past.back().name, now });
    past.pop_back();
    return true;
}

bool JobDocument::redo (const JobTree& now)
{
    if (future.empty() || ! read (future.back().tree))
        return false;
    past.push_back ({ future.back().name, now });
    future.pop_back();
    return true;
}
}
