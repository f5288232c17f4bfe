#include "editor/MainEditor.h"

#include "editor/KeptSettings.h"
#include "editor/MainWindow.h"

namespace coldiron
{
namespace
{
/** What the window remembers from one time to the next. */
class Remembered
{
public:
    Remembered() : file (std::make_unique<juce::PropertiesFile> (keptOptions ("window"))) {}

    juce::PropertiesFile& get() { return *file; }

private:
    std::unique_ptr<juce::PropertiesFile> file;
};

/** The plugin's editor: the window at the person's own scale, its size remembered. */
class MainEditor : public juce::AudioProcessorEditor, public StandaloneContext
{
public:
    MainEditor (juce::AudioProcessor& processorToUse, Bench& bench)
        : AudioProcessorEditor (processorToUse),
          window (bench, processorToUse.wrapperType != juce::AudioProcessor::wrapperType_Standalone)
    {
        auto& kept = remembered.get();
        scale = juce::jlimit (0.8f, 2.0f, static_cast<float> (kept.getDoubleValue ("scale", 1.0)));
        window.setDark (kept.getBoolValue ("dark", false));
        window.onDark = [this] (bool dark) { remembered.get().setValue ("dark", dark); };
        window.scaleNow = [this] { return scale; };
        window.onScale = [this] (float wanted) { setUserScale (wanted); };
        addAndMakeVisible (window);
        const int width = kept.getIntValue ("width", 1200), height = kept.getIntValue ("height", 800);
        setResizable (true, true);
        limit();
        setSize (juce::roundToInt (static_cast<float> (juce::jlimit (leastWidth, mostWidth, width)) * scale),
                 juce::roundToInt (static_cast<float> (juce::jlimit (leastHeight, mostHeight, height)) * scale));
        window.recentJobs = [this] { return juce::StringArray::fromLines (remembered.get().getValue ("recent")); };
        window.onJobFile = [this] (const juce::String& path) { rememberJob (path); };
        if (processorToUse.wrapperType == juce::AudioProcessor::wrapperType_Standalone) // a host keeps the job in its own file
            window.keepUnsavedIn (keptFolder().getChildFile ("unsaved").getFullPathName().toStdString());
        ready = true;
        window.onFirstStepsEnd = [this] { remembered.get().setValue ("greeted", true); };
        if (! kept.getBoolValue ("greeted", false))
            window.startFirstSteps();
    }

    void resized() override
    {
        window.setTransform (juce::AffineTransform::scale (scale));
        window.setBounds (0, 0, juce::roundToInt (static_cast<float> (getWidth()) / scale),
                          juce::roundToInt (static_cast<float> (getHeight()) / scale));
        if (ready)
        {
            remembered.get().setValue ("width", window.getWidth());
            remembered.get().setValue ("height", window.getHeight());
        }
    }

    void paint (juce::Graphics&) override {}

    void setSoundDevice (std::function<void (juce::Component&)> show) override
    {
        window.onSoundDevice = [this, show = std::move (show)] { show (window); };
    }
    void tell (const juce::String& words) override { window.tell (words); }
    void takeKeyboard() override { window.takeKeyboard(); }
    void open (const juce::String& file) override { window.filesDropped ({ file }, 0, 0); }

private:
    Remembered remembered;
    MainWindow window;
    float scale = 1.0f;
    bool ready = false;

    void rememberJob (const juce::String& path)
    {
        auto paths = juce::StringArray::fromLines (remembered.get().getValue ("recent"));
        paths.removeEmptyStrings();
        paths.removeString (path);
        paths.insert (0, path);
        paths.removeRange (10, paths.size());
        remembered.get().setValue ("recent", paths.joinIntoString ("\n"));
    }

    void limit()
    {
        setResizeLimits (juce::roundToInt (leastWidth * scale), juce::roundToInt (leastHeight * scale),
                         juce::roundToInt (mostWidth * scale), juce::roundToInt (mostHeight * scale));
    }

    void setUserScale (float wanted)
    {
        const int width = window.getWidth(), height = window.getHeight();
        scale = wanted;
        remembered.get().setValue ("scale", static_cast<double> (scale));
        limit();
        setSize (juce::roundToInt (static_cast<float> (width) * scale), juce::roundToInt (static_cast<float> (height) * scale));
        resized();
    }
};
}

std::unique_ptr<juce::AudioProcessorEditor> createBenchEditor (juce::AudioProcessor& processor, Bench& bench)
{
    return std::make_unique<MainEditor> (processor, bench);
}
}
