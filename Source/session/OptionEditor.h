#pragma once

#include "session/ControlPanel.h"
#include "session/JobEditor.h"
#include "session/RewireChoice.h"

namespace coldiron
{
/** The options of the job: made, named, ordered and rewired. Edits are as in JobEditor. */
class OptionEditor
{
public:
    OptionEditor (JobEditor&, const ControlPanel&);

    std::vector<OptionId> ids() const;      ///< of the options there are, in the file's order
    OptionId add (const std::string& name); ///< the first free letter; asRecorded when all eight are taken
    OptionId duplicate (OptionId);
    bool rename (OptionId, const std::string&);
    bool remove (OptionId);
    bool move (OptionId, int place); ///< place in the file, from 0; the letter stays
    bool setRewires (OptionId, const std::vector<RewireChoice>&);
    std::vector<RewireChoice> rewires (OptionId) const; ///< in-line rewires are named "(in line)"

    /** Why a rewire cannot be added to an option as it is; empty when it can. */
    Diagnostics whyNot (OptionId, const RewireChoice&) const;

private:
    JobEditor& editor;
    const ControlPanel& controls;
};
}
