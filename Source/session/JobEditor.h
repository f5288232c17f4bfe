#pragma once

#include "session/JobDocument.h"
#include "session/SharedState.h"

#include <functional>
#include <mutex>

namespace coldiron
{
/** The job as a person edits it: opened, saved, changed, undone.

    The document belongs to one mutex (hosts restore states on odd threads), which is also held while what follows from a
    change is published. It is the outermost one of a session: no part calls in here while it holds its own.
    Edits return true when the job could be read again afterwards; else nothing changed and diagnostics() says why. Each is
    one step of undo. */
class JobEditor
{
public:
    enum class Change {
        takesOnly, ///< the job as it was, other takes or strings behind it
        edited,    ///< the controls go where the job says
        opened     ///< another job
    };
    using Publish = std::function<void (const std::shared_ptr<const Job>&, Change)>;
    using TreeEdit = std::function<std::string (JobTree&)>; ///< a text returned refuses the edit

    /** @param publish  what follows from a change, called with the document locked */
    JobEditor (SharedState&, PresetFolders, Publish publish);

    std::shared_ptr<const Job> job() const; ///< never null; settings are those of the last commit
    JobTree tree() const;                   ///< with all settings as they stand now
    JobTree committedTree() const;          ///< with those of the last commit
    std::string text() const;               ///< likewise
    std::filesystem::path file() const;     ///< empty when never saved
    std::filesystem::path folder() const;   ///< that paths in the job are relative to; may be empty
    bool isChanged() const;                 ///< since it was opened or saved
    Diagnostics diagnostics() const;        ///< of the last attempt to open or edit; empty after success
    PresetFolders presets() const;          ///< that the job is read with

    bool open (const std::filesystem::path&);
    bool save (const std::filesystem::path&); ///< written beside and renamed
    bool setText (const std::string&);
    bool newJob (const std::string& guitarPreset);

    /** Replaces what stands at a JSON pointer ("/options/A/name", "/guitar") by JSON text; empty text removes it.
        Missing objects on the way are made. */
    bool edit (const std::string& pointer, const std::string& json, const std::string& whatFor = {});
    bool edit (const std::string& name, const TreeEdit&);

    /** One step of undo from `before` to the settings as they stand, if they differ; nothing is computed anew. */
    void commitSettings (const JobTree& before, const std::string& name);

    void refuse (const std::string& why); ///< nothing changed, and diagnostics() says so
    void republish();                     ///< other takes, or another string alone

    bool undo();
    bool redo();
    std::string undoName() const; ///< empty: nothing to undo
    std::string redoName() const;

    /** @name For a host's state */
    ///@{
    /** @param rest  what else is kept, while the job cannot change */
    void keep (JobTree& state, const std::function<void()>& rest) const;

    /** @param publish  instead of the usual one, once the job is read
        @return false and nothing changed when it cannot be read; diagnostics() says why */
    bool restore (const JobTree& state, const Publish& publish);
    ///@}

private:
    SharedState& shared;
    const PresetFolders standardPresets;
    const Publish publish;
    mutable std::mutex mutex;
    JobDocument document;

    JobTree treeNow() const; ///< locked
    bool replace (const std::string& text, const std::filesystem::path& file, const std::filesystem::path& folder);
    bool published (bool done, Change);
};
}
