#include "editor/MainEditor.h"

#include "editor/KeptSettings.h"
#include "editor/MainWindow.h"
#include "session/Session.h"

namespace coldiron
{
namespace
{
int scaled (int length, float scale) { return juce::roundToInt (static_cast<float> (length) * scale); }
}

MainEditor::MainEditor (juce::AudioProcessor& processorToUse, Session& session)
    : AudioProcessorEditor (processorToUse), remembered (std::make_unique<juce::PropertiesFile> (keptOptions ("window")))
{
    const bool standsAlone = processorToUse.wrapperType == juce::AudioProcessor::wrapperType_Standalone;
    window = std::make_unique<MainWindow> (session, ! standsAlone);
    scale = juce::jlimit (0.8f, 2.0f, static_cast<float> (remembered->getDoubleValue ("scale", 1.0)));
    window->setDark (remembered->getBoolValue ("dark", false));
    window->holder.onDark = [this] (bool dark) { remembered->setValue ("dark", dark); };
    window->holder.scaleNow = [this] { return scale; };
    window->holder.onScale = [this] (float wanted) { setUserScale (wanted); };
    addAndMakeVisible (*window);
    const int width = remembered->getIntValue ("width", 1200), height = remembered->getIntValue ("height", 800);
    setResizable (true, true);
    limit();
    setSize (scaled (juce::jlimit (leastWidth, mostWidth, width), scale),
             scaled (juce::jlimit (leastHeight, mostHeight, height), scale));
    window->jobMenu().recentJobs = [this] { return juce::StringArray::fromLines (remembered->getValue ("recent")); };
    window->jobFiles().onJobFile = [this] (const juce::String& path) { rememberJob (path); };
    if (standsAlone) // a host keeps the job in its own file
        window->keepUnsavedIn (keptFolder().getChildFile ("unsaved").getFullPathName().toStdString());
    ready = true;
    window->firstMinutes().onEnd = [this] { remembered->setValue ("greeted", true); };
    if (! remembered->getBoolValue ("greeted", false))
        window->firstMinutes().start();
}

MainEditor::~MainEditor() = default;

void MainEditor::setSoundDevice (std::function<void (juce::Component&)> show)
{
    window->holder.onSoundDevice = [this, show = std::move (show)] { show (*window); };
}

void MainEditor::tell (const juce::String& words) { window->tell (words); }
void MainEditor::takeKeyboard() { window->takeKeyboard(); }
void MainEditor::open (const juce::String& file) { window->filesDropped ({ file }, 0, 0); }

void MainEditor::resized()
{
    window->setTransform (juce::AffineTransform::scale (scale));
    window->setBounds (0, 0, juce::roundToInt (static_cast<float> (getWidth()) / scale),
                       juce::roundToInt (static_cast<float> (getHeight()) / scale));
    if (ready)
    {
        remembered->setValue ("width", window->getWidth());
        remembered->setValue ("height", window->getHeight());
    }
}

void MainEditor::rememberJob (const juce::String& path)
{
    auto paths = juce::StringArray::fromLines (remembered->getValue ("recent"));
    paths.removeEmptyStrings();
    paths.removeString (path);
    paths.insert (0, path);
    paths.removeRange (10, paths.size());
    remembered->setValue ("recent", paths.joinIntoString ("\n"));
}

void MainEditor::limit()
{
    setResizeLimits (scaled (leastWidth, scale), scaled (leastHeight, scale), scaled (mostWidth, scale),
                     scaled (mostHeight, scale));
}

void MainEditor::setUserScale (float wanted)
{
    const int width = window->getWidth(), height = window->getHeight();
    scale = wanted;
    remembered->setValue ("scale", static_cast<double> (scale));
    limit();
    setSize (scaled (width, scale), scaled (height, scale));
    resized();
}
}
