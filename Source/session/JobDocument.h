#pragma once

#include "session/JobTree.h"

#include <functional>

namespace coldiron
{
/** The job in memory: its text as a tree, and what readJobText() made of it. One truth: every edit changes the tree,
    and the tree is read again. An edit that cannot be read changes nothing. Not thread-safe. */
class JobDocument
{
public:
    explicit JobDocument (PresetFolders);

    const std::shared_ptr<const Job>& job() const { return current; }
    const JobTree& tree() const { return state; }
    std::string textOf (const JobTree&) const; ///< as it was written, comments and all, while it is unchanged
    const Diagnostics& diagnostics() const { return lastFaults; }
    const PresetFolders& presets() const { return presetFolders; }
    const std::filesystem::path& file() const { return jobFile; }
    const std::filesystem::path& folder() const { return jobFolder; }
    bool isChanged() const { return changed; }
    void markChanged() { changed = true; } ///< against its file, from an earlier run

    bool open (const std::filesystem::path&);
    bool save (const std::filesystem::path&, const JobTree& withSettings);

    /** A whole new document; undo begins anew. @param presets  where its presets are looked for from now on */
    bool replace (const std::string& text, const std::filesystem::path& file, const std::filesystem::path& folder,
                  PresetFolders presets);

    /** @param before    the tree to go back to: with the settings as they stand
        @param change    edits the tree; a text returned refuses the edit */
    bool edit (const JobTree& before, const std::string& name, const std::function<std::string (JobTree&)>& change);

    bool undo (const JobTree& now);
    bool redo (const JobTree& now);
    std::string undoName() const { return past.empty() ? std::string() : past.back().name; }
    std::string redoName() const { return future.empty() ? std::string() : future.back().name; }

    void refuse (const std::string& message);

private:
    struct Step
    {
        std::string name;
        JobTree tree;
    };
    static constexpr size_t mostSteps = 200;

    PresetFolders presetFolders;
    std::filesystem::path jobFile, jobFolder;
    std::shared_ptr<const Job> current;
    JobTree state;
    std::string written; ///< as a person wrote it, comments and all: given back whenever the tree is the same again
    JobTree writtenTree; ///< what that text says
    Diagnostics lastFaults;
    std::vector<Step> past, future;
    bool changed = false;

    bool read (const JobTree&);
};
}
