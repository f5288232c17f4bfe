#pragma once

#include "analysis/Changes.h"
#include "editor/Words.h"

#include <juce_core/juce_core.h>

namespace coldiron
{
class JobEditor;

/** What the window reads of a job beyond its circuit. */
namespace jobwords
{
juce::String client (const JobEditor&);                            ///< the client's wish in their words; empty
juce::String agreed (const JobEditor&);                            ///< the letter agreed on; empty
juce::String point (const Harness&, const std::string& fullPoint); ///< "neck north start", "bridge volume lug 2"
juce::String made (const Harness&, const Changes::Made&);          ///< "neck north start to neck volume lug 2"
}
}
