// Nothing lost: unsaved work is kept as it changes, and offered again after a run that ended without saving.

#include "editor/JobWords.h"
#include "editor/MainWindow.h"

namespace coldiron
{
void MainWindow::keepUnsavedIn (const std::filesystem::path& folder)
{
    unsavedFolder = folder;
    autosave = std::make_unique<Autosave> (folder);
    lastFile = bench.jobFile();
    offerLeft();
}

/** Writes what changed since it was last written, or takes away what is saved now. */
void MainWindow::keepUnsaved()
{
    if (autosave == nullptr)
        return;
    ticksSinceKept = 0;
    const auto now = bench.revisions();
    const bool changed = bench.isChanged();
    if (changed == wasChanged && (! changed || (now.job == keptRevision && now.settings == keptSettings)))
        return;
    wasChanged = changed;
    keptRevision = now.job;
    keptSettings = now.settings;
    if (! changed)
        return autosave->drop();
    const auto file = bench.jobFile();
    autosave->keep ({ bench.jobText(), bench.job()->title, file, file.parent_path() });
}

void MainWindow::offerLeft()
{
    auto left = leftWork (unsavedFolder);
    const auto text = bench.jobText();
    std::erase_if (left,
                   [&text] (const Recovery& one)
                   {
                       const bool same = one.work.jobText == text; // a clean close kept it in the app's own state too
                       if (same)
                           forget (one);
                       return same;
                   });
    if (! left.empty())
        showRecover (std::move (left));
}

/** Its own file is opened first, so that Save goes there and nowhere else; what was unsaved comes on top as one step of undo. */
void MainWindow::takeUp (const Recovery& left)
{
    std::error_code ignored;
    const bool hasFile =
        ! left.work.file.empty() && std::filesystem::is_regular_file (left.work.file, ignored) && bench.openJob (left.work.file);
    if (! hasFile)
    {
        const auto guitars = bench.presets().list ("guitars");
        if (guitars.empty() || ! bench.newJob (guitars.front()))
            return;
    }
    if (! bench.setJobText (hasFile ? left.work.jobText : withAbsoluteTakes (left.work.jobText, left.work.folder)))
        return;
    forget (left);
    keepUnsaved();
    notice.say ("Open again, as it was left. Save it to keep it.");
}

void MainWindow::noteJobFile()
{
    const auto file = bench.jobFile();
    if (file == lastFile)
        return;
    lastFile = file;
    if (! file.empty() && onJobFile)
        onJobFile (words::from (file.string()));
}
}
