#pragma once

#include "session/Agreement.h"
#include "session/AudioPath.h"
#include "session/BlindTest.h"
#include "session/ControlPanel.h"
#include "session/Designer.h"
#include "session/Exports.h"
#include "session/Monitor.h"
#include "session/Noise.h"
#include "session/OptionEditor.h"
#include "session/OutputStage.h"
#include "session/Reporter.h"
#include "session/Takes.h"
#include "session/Transport.h"

namespace coldiron
{
/** The plugin without its host and its window: the owner of the parts, and what follows from a change of the job. Knows no
    JUCE. Outlives every window.

    Unless marked [any thread] or [audio-thread], parts are called on the message thread; nothing there blocks for longer
    than reading a file. Each part guards what it owns; what several of them and the threads behind them need is in
    SharedState. */
class Session
{
public:
    explicit Session (PresetFolders = PresetFolders::standard());
    Session (const Session&) = delete;
    Session& operator= (const Session&) = delete;

    Revisions revisions() const { return shared.revisions(); } ///< [any thread]
    ChangeSignal& changes() { return shared.changes; } ///< raised after every change of what a host or the sound depends on
    Diagnostics diagnostics() const; ///< of the last attempt to open or edit, of a late render, of what failed in the background

    /** The state as JSON: the whole job with the presets it names, take, loop, levels. [any thread] */
    std::string state() const;

    /** [any thread] @return false and nothing changed when it is not one; diagnostics() says why. */
    bool restore (const std::string& state);

    bool waitUntilIdle (double seconds) { return designer.waitUntilIdle (seconds); } ///< until the sound is that of what stands
    bool waitUntilReported (double seconds) { return await (Awaited::everything, seconds); } ///< takes, curves and figures too
    double designSeconds() const { return designer.lastSeconds(); }

private:
    SharedState shared;
    Designer designer;

public:
    Reporter reports;
    AudioPath audio;
    JobEditor jobEditor;
    Automation automation;
    Transport transport;
    Monitor monitor;
    Noise noise;
    OutputStage output;
    ControlPanel controls;
    OptionEditor options;
    BlindTest blindTest;
    Agreement agreement;
    Exports exports;
    Takes takes; ///< last: what it loads is published to the others

private:
    enum class Awaited { sound, everything };
    bool await (Awaited, double seconds);
    void publish (const std::shared_ptr<const Job>&, JobEditor::Change);
    void publishSnapshot (const std::shared_ptr<const Job>&, bool settingsToo);
};
}
