#include "session/TakeEdits.h"

#include "session/JobTree.h"

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

std::vector<TakeLine> takeLines (const Bench& bench)
{
    std::vector<TakeLine> lines;
    const auto job = bench.job();
    const JobTree tree = parseJobTree (bench.jobText());
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

bool exists (const Bench& bench, int take) { return take >= 0 && take < static_cast<int> (bench.job()->takes.size()); }
}

bool renameTake (Bench& bench, int take, const std::string& name)
{
    return exists (bench, take)
           && bench.edit (takeAt (take, "/name"),
                          name.empty() ? std::string() : JobTree (name).dump (-1, ' ', false, JobTree::error_handler_t::replace),
                          "Rename the take");
}

bool removeTake (Bench& bench, int take)
{
    JobTree tree = parseJobTree (bench.jobText());
    if (! exists (bench, take) || ! tree.is_object() || ! tree["takes"].is_array())
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
    const int chosen = bench.take();
    if (! bench.edit ("", tree.dump (-1, ' ', false, JobTree::error_handler_t::replace), "Remove a take"))
        return false;
    if (chosen > take)
        bench.selectTake (chosen - 1);
    return true;
}

bool relinkTake (Bench& bench, int take, const fs::path& file)
{
    if (! exists (bench, take))
        return false;
    const auto folder = bench.jobFile().empty() ? fs::path() : bench.jobFile().parent_path();
    return bench.edit (takeAt (take, "/file"), JobTree (pathInJob (file, folder)).dump(), "Find the take's file");
}
}
