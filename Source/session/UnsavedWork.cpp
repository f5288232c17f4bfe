#include "session/UnsavedWork.h"

#include "session/Session.h"
#include "session/TakeEdits.h"

namespace coldiron
{
UnsavedWork::UnsavedWork (Session& s, std::filesystem::path f) : session (s), folder (std::move (f)), file (folder) {}

UnsavedWork::~UnsavedWork()
{
    if (session.jobEditor.isChanged())
        keep();
    else
        file.drop();
}

void UnsavedWork::keep()
{
    const auto& editor = session.jobEditor;
    const auto now = session.revisions();
    const bool changed = editor.isChanged();
    if (changed == wasChanged && (! changed || (now.job == kept.job && now.settings == kept.settings)))
        return;
    wasChanged = changed;
    kept = now;
    if (! changed)
        return file.drop();
    const auto path = editor.file();
    file.keep ({ editor.text(), editor.job()->title, path, path.parent_path() });
}

std::string UnsavedWork::newFault()
{
    auto fault = file.fault();
    if (fault == toldFault)
        return {};
    toldFault = fault;
    return fault;
}

std::vector<Recovery> UnsavedWork::left() const
{
    auto found = leftWork (folder);
    std::erase_if (found,
                   [text = session.jobEditor.text()] (const Recovery& one)
                   {
                       const bool same = one.work.jobText == text; // a clean close kept it in the app's own state too
                       if (same)
                           forget (one);
                       return same;
                   });
    return found;
}

bool UnsavedWork::takeUp (const Recovery& left)
{
    auto& editor = session.jobEditor;
    std::error_code ignored;
    const auto& work = left.work;
    const bool hasFile = ! work.file.empty() && std::filesystem::is_regular_file (work.file, ignored) && editor.open (work.file);
    if (! hasFile)
    {
        const auto guitars = editor.presets().list ("guitars");
        if (guitars.empty() || ! editor.newJob (guitars.front()))
            return false;
    }
    if (! editor.setText (hasFile ? work.jobText : withAbsoluteTakes (work.jobText, work.folder)))
        return false;
    forget (left);
    keep();
    return true;
}
}
