#include "editor/JobFiles.h"

#include "editor/Words.h"
#include "session/Session.h"
#include "session/TakeEdits.h"
#include "session/TakeExport.h"
#include "session/TypedOhms.h"

namespace coldiron
{
namespace
{
constexpr const char* takePatterns = "*.wav;*.aif;*.aiff;*.flac";
constexpr int toOpen = juce::FileBrowserComponent::openMode | juce::FileBrowserComponent::canSelectFiles;
constexpr int toSave = juce::FileBrowserComponent::saveMode | juce::FileBrowserComponent::canSelectFiles
                       | juce::FileBrowserComponent::warnAboutOverwriting;
constexpr int toOpenFolder = juce::FileBrowserComponent::openMode | juce::FileBrowserComponent::canSelectDirectories;

juce::File documents() { return juce::File::getSpecialLocation (juce::File::userDocumentsDirectory); }
std::string pathOf (const juce::File& file) { return file.getFullPathName().toStdString(); }
}

JobFiles::JobFiles (UiContext& d, juce::Component& over) : ui (d), window (over) {}

JobFiles::~JobFiles() = default;

/** @param then  not called where nothing was chosen; the chooser lives until another one is wanted */
void JobFiles::ask (const juce::String& title, const juce::File& start, const juce::String& pattern, int flags,
                    std::function<void (juce::File)> then)
{
    chooser = std::make_unique<juce::FileChooser> (title, start, pattern);
    chooser->launchAsync (flags,
                          [then = std::move (then)] (const juce::FileChooser& c)
                          {
                              if (c.getResult() != juce::File())
                                  then (c.getResult());
                          });
}

void JobFiles::leaving (std::function<void()> then)
{
    if (! ui.session.jobEditor.isChanged())
        return then();
    const juce::Component::SafePointer<juce::Component> alive (&window);
    juce::AlertWindow::showOkCancelBox (juce::MessageBoxIconType::NoIcon, "Leave this job?",
                                        "Its changes are not saved and would be lost.", "Leave it", "Stay", &window,
                                        juce::ModalCallbackFunction::create (
                                            [alive, then] (int answer)
                                            {
                                                if (alive != nullptr && answer != 0)
                                                    then();
                                            }));
}

void JobFiles::openJob (const juce::String& path)
{
    leaving ([this, path] { ui.session.jobEditor.open (path.toStdString()); });
}

void JobFiles::openJob()
{
    ask ("Open a job", juce::File (words::from (ui.session.jobEditor.file().string())), "*.json", toOpen,
         [this] (const juce::File& file) { openJob (file.getFullPathName()); });
}

void JobFiles::saveJob()
{
    auto& editor = ui.session.jobEditor;
    const auto file = editor.file();
    if (file.empty())
        return saveJobAs();
    if (editor.save (file))
        ui.tell ("Saved " + words::from (file.filename().string()) + ".");
}

void JobFiles::saveJobAs()
{
    ask ("Save the job", {}, "*.json", toSave,
         [this] (const juce::File& file)
         {
             if (ui.session.jobEditor.save (pathOf (file.withFileExtension ("json"))))
                 ui.tell ("Saved " + file.getFileName() + ".");
         });
}

void JobFiles::openTake()
{
    ask ("Open a take", {}, takePatterns, toOpen, [this] (const juce::File& file) { addTake (file.getFullPathName()); });
}

void JobFiles::addTake (const juce::String& path)
{
    if (ui.session.takes.add (path.toStdString()))
        ui.tell (juce::File (path).getFileName()
                 + " is the take now. Note where every control stood, and tick the strings it plays: that is what helps an "
                   "estimate most.");
}

void JobFiles::findTake (int take)
{
    const auto job = ui.session.jobEditor.job();
    if (take < 0 || take >= static_cast<int> (job->takes.size()))
        return openTake();
    const auto name = words::from (job->takes[static_cast<size_t> (take)].file.filename().string());
    ask ("Where is " + name + " now?", {}, takePatterns, toOpen,
         [this, take] (const juce::File& file)
         {
             if (relinkTake (ui.session.jobEditor, take, pathOf (file)))
                 ui.tell (file.getFileName() + " is found. Its setting and strings are as they were.");
         });
}

void JobFiles::openPickupFile (const std::string& pickup)
{
    ask ("Readings or a fitted pickup for " + words::plain (pickup), {}, "*.csv;*.json", toOpen,
         [this, pickup] (const juce::File& file) { readPickupFile (pickup, file.getFullPathName()); });
}

void JobFiles::readPickupFile (const std::string& pickup, const juce::String& file)
{
    auto& editor = ui.session.jobEditor;
    const auto edit = pickupFileEdit (editor, pickup, file.toStdString());
    if (! edit.sound())
        return ui.tell (words::from (edit.refusal));
    if (! editor.edit (edit.pointer, edit.json, edit.name))
        return;
    const auto job = editor.job();
    const auto* part = job->guitar.harness.find (pickup);
    const auto known = part != nullptr ? part->as<PickupPart>()->pickup.known : Provenance::assumed;
    ui.tell ("The " + words::plain (pickup) + " pickup is "
             + (known == Provenance::measured   ? "measured"
                : known == Provenance::fromOhms ? "known from ohms"
                                                : "assumed still: the readings say too little")
             + ", from " + juce::File (file).getFileName() + ".");
}

void JobFiles::exportText (const juce::String& what, TextExport text)
{
    const auto start = documents().getChildFile (words::from (text.fileName));
    ask (what, start, {}, toSave,
         [this, text = std::move (text)] (const juce::File& target)
         {
             try
             {
                 ui.session.exports.write (pathOf (target), text);
                 ui.tell ("Saved " + target.getFileName() + ".");
             }
             catch (const std::exception& fault)
             {
                 ui.tell (words::from (fault.what()));
             }
         });
}

void JobFiles::exportTakes (bool matched)
{
    ask ("A folder for the sounds", documents(), {}, toOpenFolder,
         [this, matched] (const juce::File& folder) { ui.session.exports.startRendering (matched, pathOf (folder)); });
}

void JobFiles::tick()
{
    followExport();
    const auto file = ui.session.jobEditor.file();
    if (file == lastFile)
        return;
    lastFile = file;
    if (! file.empty() && onJobFile)
        onJobFile (words::from (file.string()));
}

void JobFiles::followExport()
{
    auto& exports = ui.session.exports;
    const auto* rendering = exports.rendering();
    if (rendering == nullptr)
        return;
    if (! rendering->isDone())
        return ui.tell ("Writing sounds: " + juce::String (juce::roundToInt (rendering->progress() * 100.0)) + " %", false);
    const auto fault = rendering->fault();
    const auto count = static_cast<int> (rendering->written().size());
    ui.tell (fault.empty() ? juce::String (count) + " sounds written: now.wav and one for each letter." : words::from (fault));
    exports.endRendering();
}
}
