#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace coldiron
{
class JobEditor;
class Takes;

/** A take as a list shows it. */
struct TakeLine
{
    std::string name;           ///< given, else that of the file
    std::filesystem::path file; ///< absolute
    bool isMissing = false;     ///< there is no such file now
};

std::vector<TakeLine> takeLines (const JobEditor&);

/** Edits of the list of takes, each one step of undo. @return false and nothing changed where it cannot be done */
bool renameTake (JobEditor&, int take, const std::string& name); ///< empty: the file's name again

/** Options heard on it go to the first take that is left; those on later ones follow theirs. */
bool removeTake (JobEditor&, Takes&, int take);

/** Where a take was moved to: kept relative to the job where it lies beside or below it. Setting and strings stay. */
bool relinkTake (JobEditor&, int take, const std::filesystem::path& file);

/** A job's text with its takes named in full: for a place that has no folder. */
std::string withAbsoluteTakes (const std::string& jobText, const std::filesystem::path& folder);

/** A path as a job writes it: relative to the folder where it lies in it, else absolute. */
std::string pathInJob (const std::filesystem::path& file, const std::filesystem::path& folder);
}
