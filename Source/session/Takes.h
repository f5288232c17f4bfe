#pragma once

#include "session/JobEditor.h"
#include "session/TakeLoader.h"
#include "session/TakePicture.h"

#include <mutex>

namespace coldiron
{
class TakePlayer;

/** The takes of the job: which is read, which plays, which version is derived from which.

    Each option is derived from the take nearest to it, and that one plays while it is heard; the place in the phrase is kept
    where the takes are alike in length (2 %). A take selected by hand holds for all options. */
class Takes
{
public:
    Takes (SharedState&, JobEditor&, TakePlayer&);

    int playing() const;                             ///< index of the one that plays; -1 none
    int takeFor (OptionId) const;                    ///< index of the one that a version is derived from; -1 none
    int selected() const;                            ///< index of the one as recorded is; -1 none
    void select (int);                               ///< for all versions, until follow()
    bool follows() const { return ! byHand.load(); } ///< each option from its own or nearest take
    void follow();

    bool add (const std::filesystem::path&);                           ///< checked, added to the job, selected
    bool setSetting (int take, const Setting&);                        ///< where the controls stood in the recording
    bool setStringsPlayed (int take, const std::vector<std::string>&); ///< empty: all
    std::shared_ptr<const TakePicture> picture() const;                ///< of the one in the player; null: no take

    /** @name For the session */
    ///@{
    void begin();            ///< with another job
    void gather (Snapshot&); ///< of its job's takes: which for which version, asks for what is not read yet
    void followHeard();      ///< what is heard is another one: its take goes into the player. Not in real time
    bool waitUntilRead (double seconds) { return loader.waitUntilIdle (seconds); } ///< and in use
    void keep (JobTree& state) const;
    void restore (const JobTree& state);
    ///@}

private:
    SharedState& shared;
    JobEditor& editor;
    TakePlayer& player;
    std::atomic<bool> byHand { false }; ///< a take was selected for all versions
    mutable std::mutex mutex;           ///< of what follows
    int index = -1;
    std::map<std::filesystem::path, LoadedTake> read; ///< those of the job that were needed so far
    LoadedTake loaded;                                ///< the one in the player
    TakeLoader loader;                                ///< last: it ends before what it fills

    void takeLoaded (LoadedTake);
};
}
