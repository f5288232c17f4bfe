#pragma once

#include <juce_audio_processors/juce_audio_processors.h>

#include <functional>
#include <memory>

namespace coldiron
{
class MainWindow;
class Session;

/** The plugin's editor: the window on a session at the person's own scale, its size remembered. The session must outlive it.
    Message thread. */
class MainEditor : public juce::AudioProcessorEditor
{
public:
    MainEditor (juce::AudioProcessor&, Session&);
    ~MainEditor() override;

    /** @name For the app; a host never asks */
    ///@{
    void setSoundDevice (std::function<void (juce::Component& over)> show); ///< for the View menu
    void tell (const juce::String&);                                        ///< one line at the foot, for a while
    void takeKeyboard();                                                    ///< letters and space go to the window
    void open (const juce::String& file);                                   ///< a job or a take, as if it were dropped
    ///@}

    void resized() override;
    void paint (juce::Graphics&) override {}

private:
    std::unique_ptr<juce::PropertiesFile> remembered; ///< from one time to the next
    std::unique_ptr<MainWindow> window;
    float scale = 1.0f;
    bool ready = false;

    void rememberJob (const juce::String& path);
    void limit();
    void setUserScale (float wanted);
};
}
