#pragma once

#include "session/Autosave.h"
#include "session/Revisions.h"

namespace coldiron
{
class Session;

/** Nothing is lost: keeps what of a session's job is unsaved as it changes, and takes up what an earlier run left. Message
    thread. */
class UnsavedWork
{
public:
    UnsavedWork (Session&, std::filesystem::path folder);
    ~UnsavedWork(); ///< the last change is kept, or nothing where all is saved

    /** Writes what changed since it was last written, or takes away what is saved now. */
    void keep();

    /** What earlier runs left in the folder, newest first, but for what is open in this session as it is. */
    std::vector<Recovery> left() const;

    /** Opens it as it was left. Its own file is opened first, so that a save goes there and nowhere else; what was unsaved
        comes on top as one step of undo. @return false and nothing forgotten where it cannot be read */
    bool takeUp (const Recovery&);

    Autosave& autosave() { return file; }

    /** Why unsaved work cannot be kept, once for each reason; empty: nothing new to tell. */
    std::string newFault();

private:
    Session& session;
    const std::filesystem::path folder;
    Autosave file;
    Revisions kept; ///< when it was last written
    bool wasChanged = false;
    std::string toldFault; ///< of the autosave
};
}
