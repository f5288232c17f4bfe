#include "session/TakeEdits.h"

#include "session/Takes.h"

namespace coldiron
{
namespace fs = std::filesystem;

std::string pathInJob (const fs::path& file, const fs::path& folder)
{
    std::error_code ignored;
    const fs::path absolute = fs::absolute (file, ignored).lexically_normal();
    if (! folder.empty())
        if (const auto relative = absolute.lexically_relative (fs::absolute (folder, ignored).lexically_normal());
            ! relative.empty() && *relative.begin() != "..")
            return relative.string();
    return absolute.string();
}

std::string withAbsoluteTakes (const std::string& jobText, const fs::path& folder)
{
    JobTree tree = parseJobTree (jobText);
    if (! tree.is_object() || ! tree.contains ("takes") || ! tree["takes"].is_array() || folder.empty())
        return jobText;
    for (JobTree& take : tree["takes"])
        if (take.is_object() && take.contains ("file") && take["file"].is_string())
            if (const fs::path file = take["file"].get<std::string>(); file.is_relative())
                take["file"] = (folder / file).lexically_normal().string();
    return jobTreeText (tree);
}

std::vector<TakeLine> takeLines (const JobEditor& editor)
{
    std::vector<TakeLine> lines;
    const auto job = editor.job();
    const JobTree tree = parseJobTree (editor.text());
    for (size_t i = 0; i < job->takes.size(); ++i)
    {
        TakeLine line;
        line.file = job->takes[i].file;
        line.name = line.file.filename().string();
        if (tree.is_object() && tree.contains ("takes") && tree["takes"].is_array() && i < tree["takes"].size())
            if (const JobTree& entry = tree["takes"][i];
                entry.contains ("name") && entry["name"].is_string() && ! entry["name"].get<std::string>().empty())
                line.name = entry["name"].get<std::string>();
        std::error_code ignored;
        line.isMissing = ! fs::is_regular_file (line.file, ignored);
        lines.push_back (std::move (line));
    }
    return lines;
}

namespace
{
std::string takeAt (int take, const char* key) { return "/takes/" + std::to_string (take) + key; }

bool exists (const JobEditor& editor, int take) { return take >= 0 && take < static_cast<int> (editor.job()->takes.size()); }
}

bool renameTake (JobEditor& editor, int take, const std::string& name)
{
    return exists (editor, take)
           && editor.edit (takeAt (take, "/name"),
                           name.empty() ? std::string() : JobTree (name).dump (-1, ' ', false, JobTree::error_handler_t::replace),
                           "Rename the take");
}

bool removeTake (JobEditor& editor, Takes& takes, int take)
{
    JobTree tree = parseJobTree (editor.text());
    if (! exists (editor, take) || ! tree.is_object() || ! tree["takes"].is_array())
        return false;
    tree["takes"].erase (static_cast<size_t> (take));
    if (tree["takes"].empty())
        tree.erase ("takes");
    if (tree.contains ("options") && tree["options"].is_object())
        for (auto at = tree["options"].begin(); at != tree["options"].end(); ++at)
            if (JobTree& option = at.value(); option.contains ("take") && option["take"].is_number())
            {
                const int heardOn = option["take"].get<int>() - 1; // counted from 1
                if (heardOn == take || ! tree.contains ("takes"))
                    option.erase ("take");
                else if (heardOn > take)
                    option["take"] = heardOn;
            }
    const int chosen = takes.playing();
    if (! editor.edit ("", tree.dump (-1, ' ', false, JobTree::error_handler_t::replace), "Remove a take"))
        return false;
    if (chosen > take)
        takes.select (chosen - 1);
    return true;
}

bool relinkTake (JobEditor& editor, int take, const fs::path& file)
{
    if (! exists (editor, take))
        return false;
    const auto folder = editor.file().empty() ? fs::path() : editor.file().parent_path();
    return editor.edit (takeAt (take, "/file"), JobTree (pathInJob (file, folder)).dump(), "Find the take's file");
}
}
