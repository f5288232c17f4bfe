#pragma once

#include "editor/PlayPosition.h"
#include "editor/TakeChips.h"
#include "session/TakePicture.h"

namespace coldiron
{
/** The take: the list of takes, play, waveform, loop brackets, playhead, the strings played; a take whose file is gone, and
    the caution while the guitar is heard live. */
class WaveformView : public Panel, public juce::SettableTooltipClient
{
public:
    explicit WaveformView (UiContext&);

    void sessionChanged (const Revisions& before, const Revisions& now) override;
    void tick(); ///< moves the playhead
    void togglePlay();
    void toggleLoop();
    void nextTake();
    void setLoopEndHere (bool second);
    void renameTake (int);

    void paint (juce::Graphics&) override;
    void resized() override;
    void mouseDown (const juce::MouseEvent&) override;
    void mouseDrag (const juce::MouseEvent&) override;
    void mouseDoubleClick (const juce::MouseEvent&) override;
    void mouseMove (const juce::MouseEvent&) override;

private:
    std::shared_ptr<const TakePicture> picture;
    juce::Rectangle<int> button, wave, heading;
    BareButton play;
    PlayPosition position;
    WordButton open;
    TakeChips chips;
    juce::TextEditor nameField;
    int naming = -1;        ///< the take being renamed
    juce::Path quiet, loud; ///< the waveform, outside and inside the loop
    int lastX = -1;
    enum class Grip { none, left, right, place } grip = Grip::none;

    struct StringTick
    {
        std::string name;
        juce::Rectangle<int> area;
        bool on = true;
    };
    std::vector<StringTick> ticks;
    std::vector<std::unique_ptr<BareButton>> tickButtons; ///< one each

    bool playable() const { return picture != nullptr && picture->fault.empty() && picture->seconds > 0.0; }
    std::pair<double, double> loopRange() const; ///< the whole take where no loop is set
    float xOf (double seconds) const;
    double secondsAt (float x) const;
    void buildWave();
    void findTicks();
    void placeTicks();
    void placeTickButton (size_t index);
    void flipString (size_t index);
    void paintWave (juce::Graphics&);
    void paintHead (juce::Graphics&);
    void paintEmpty (juce::Graphics&);
    void paintHeading (juce::Graphics&);
    void endNaming (bool keep);
    bool isMissing() const;
    bool isLive() const;
    juce::String takeName() const;
    Grip gripAt (juce::Point<float>) const;
    juce::String inWords() const override;
};
}
