#pragma once

#include "editor/UiContext.h"

#include <juce_gui_basics/juce_gui_basics.h>

#include <filesystem>

namespace coldiron
{
struct TextExport;

/** Opening, saving and exporting: asks for files, has the session do it and says what became of it. */
class JobFiles
{
public:
    /** @param window  what questions are asked over */
    JobFiles (UiContext&, juce::Component& window);
    ~JobFiles();

    std::function<void (const juce::String&)> onJobFile; ///< a job was opened or saved there

    void openJob();
    void openJob (const juce::String& path);
    void saveJob(); ///< to its own file; asks where it has none
    void saveJobAs();
    void leaving (std::function<void()> then); ///< runs what leaves this job; asks first where it is not saved

    void openTake();
    void addTake (const juce::String& path);
    void findTake (int take); ///< asks where its file is now
    void openPickupFile (const std::string& pickup);
    void readPickupFile (const std::string& pickup, const juce::String& file);

    void exportText (const juce::String& what, TextExport); ///< asks where
    void exportTakes (bool matched);                        ///< asks for a folder
    void tick();                                            ///< says how far sounds are, a few times a second

private:
    UiContext& ui;
    juce::Component& window;
    std::unique_ptr<juce::FileChooser> chooser;
    std::filesystem::path lastFile; ///< of the job, when it was last told

    void ask (const juce::String& title, const juce::File& start, const juce::String& pattern, int flags,
              std::function<void (juce::File)> then);
    void followExport();
};
}
