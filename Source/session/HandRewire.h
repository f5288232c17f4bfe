#pragma once

#include "session/OptionId.h"

#include <string>

namespace coldiron
{
class JobEditor;

/** The name of the rewire, written in line, that holds what was done by hand. */
inline constexpr const char* byHand = "By hand";

/** What became of a wiring that was asked for. */
struct HandResult
{
    bool done = false;
    OptionId option = asRecorded; ///< the option that has the wiring now
    bool isNew = false;           ///< an option of its own was made, because the one shown must stay as it is
    std::string words;            ///< why not, or what was made; may be empty
};

/** Whether an option's wiring may be changed in place: as recorded and the one agreed on may not. */
bool mayBeRewired (const JobEditor&, OptionId);

/** Makes the wiring of an option the one wanted, as one rewire "By hand" in line, the last of the option's rewires: its
    steps are the difference to what the other rewires leave, so that doing and undoing by hand leaves no rewire behind.
    As recorded and an agreed option stay: a new option is made first. One step of undo. Message thread.
    @param wanted  made from the option's own harness by steps that job files can say */
HandResult rewireByHand (JobEditor&, OptionId shown, const Harness& wanted);
}
