#pragma once

#include "editor/UiContext.h"

namespace coldiron
{
class JobFiles;
class Sheets;

/** The menu of the job: new, starter sets, open, recent, save, what can be exported, the take card. */
class JobMenu
{
public:
    JobMenu (UiContext&, JobFiles&, Sheets&);

    std::function<juce::StringArray()> recentJobs; ///< paths, newest first

    void show (juce::Component& button);

private:
    UiContext& ui;
    JobFiles& files;
    Sheets& sheets;

    juce::PopupMenu exportMenu() const;
    void choose (int item);
};
}
