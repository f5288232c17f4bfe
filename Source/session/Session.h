#pragma once

#include "session/BlindRun.h"
#include "session/Designer.h"
#include "session/HostLink.h"
#include "session/JobDocument.h"
#include "session/Reporter.h"
#include "session/TakeLoader.h"
#include "session/TakePlayer.h"

#include <mutex>

namespace coldiron
{
/** The plugin without its host: the bench, the threads behind it and the sound. Knows no JUCE.

    The document belongs to a mutex (hosts restore states on odd threads); the audio thread touches atomics, the
    engine and the player alone. */
class Session : public Bench
{
public:
    explicit Session (PresetFolders = PresetFolders::standard());

    /** An application of its own and no plugin: what is usual there after the jack, and headroom kept. */
    void setStandsAlone();

    double tailSeconds() const; ///< of what sounds on after the input has stopped

    /** nullptr: none. Message thread. */
    void setHost (HostLink* h) { host = h; }

    /** Raised after every change of what a host or the sound depends on. */
    ChangeSignal& changes() { return shared.changes; }

    /** @name What the host moved: [any thread, wait-free] */
    ///@{
    void hostMoved (ParameterKind, int place, double value);
    double hostValue (ParameterKind, int place) const; ///< what the parameter should show
    ///@}

    ControlMap controlMap() const { return shared.snapshot()->map; }

    /** Not on the audio thread; nothing plays meanwhile. Returns when the first design is in the engine. */
    void prepare (double sampleRate);

    /** [audio-thread] In place, one or two channels. @param waits  rendering faster than real time: what is heard waits
        for the take, its loudness, the levels and the design it depends on, so that a render is the same on every run
        and machine. What the host moves is then taken up every `renderStep` frames, whatever the blocks; after
        the longest wait it goes on without, and diagnostics() says so */
    void process (float* const* channels, int numChannels, int frames, bool waits);

    static constexpr int renderStep = 1024;
    void setLongestWait (double seconds)
    {
        longestWait = seconds;
    } ///< of a render; a minute unless set. Nothing may play meanwhile

    bool waitUntilIdle (double seconds) { return designer.waitUntilIdle (seconds); } ///< until the sound is what the bench shows
    bool waitUntilReported (double seconds);                                         ///< takes, curves and figures too
    double designSeconds() const { return designer.lastSeconds(); }

    /** The state as JSON: the whole job with the presets it names, take, loop, levels. */
    std::string state() const;

    /** @return false and nothing changed when it is not one; diagnostics() says why. */
    bool restore (const std::string& state);

    // Bench
    Revisions revisions() const override;
    std::shared_ptr<const Job> job() const override;
    std::string jobText() const override;
    std::filesystem::path jobFile() const override;
    bool isChanged() const override;
    Diagnostics diagnostics() const override;
    const PresetFolders& presets() const override { return document.presets(); }
    bool openJob (const std::filesystem::path&) override;
    bool saveJob (const std::filesystem::path&) override;
    bool setJobText (const std::string&) override;
    bool newJob (const std::string& guitarPreset) override;
    bool edit (const std::string& pointer, const std::string& json, const std::string& whatFor) override;
    bool undo() override;
    bool redo() override;
    std::string undoName() const override;
    std::string redoName() const override;

    std::vector<OptionId> ids() const override;
    OptionId addOption (const std::string&) override;
    OptionId duplicateOption (OptionId) override;
    bool renameOption (OptionId, const std::string&) override;
    bool removeOption (OptionId) override;
    bool moveOption (OptionId, int place) override;
    bool setRewires (OptionId, const std::vector<RewireChoice>&) override;
    std::vector<RewireChoice> rewires (OptionId) const override;
    Diagnostics whyNot (OptionId, const RewireChoice&) const override;

    OptionId heard() const override { return shared.isBlind() ? asRecorded : shared.heard.load(); }
    void hear (OptionId) override;
    bool bypassed() const override { return bypass.load(); }
    void setBypassed (bool) override;
    bool levelMatched() const override { return shared.matched.load() || shared.isBlind(); }
    void setLevelMatched (bool) override;
    double humDb() const override { return shared.humDb.load(); }
    void setHumDb (double) override;
    double mainsHz() const override { return shared.mainsHz.load(); }
    void setMainsHz (double) override;
    double facingDegrees() const override { return shared.facingDegrees.load(); }
    void setFacingDegrees (double) override;
    double buzz() const override { return shared.buzz.load(); }
    void setBuzz (double) override;
    double hissGainDb() const override { return shared.hissGainDb.load(); }
    void setHissGainDb (double) override;
    double trimDb() const override { return trim.load(); }
    void setTrimDb (double) override;
    OutputChainChoice outputChain() const override { return shared.snapshot()->after; }
    bool setOutputChain (const OutputChainChoice&) override;
    std::string outputChainFault() const override { return shared.after()->fault; }
    bool headroomKept() const override { return shared.headroomKept.load(); }
    void setHeadroomKept (bool) override;
    double headroomDb() const override { return shared.headroomDb.load(); }
    RenderPlan renderPlan (bool levelsMatched) const override;
    Source source() const override { return fromTake.load() ? Source::take : Source::host; }
    void setSource (Source) override;

    std::string whyNoBlind (const std::vector<OptionId>&) const override;
    bool startRanking (const std::vector<OptionId>&, std::optional<uint64_t> seed = {}) override;
    bool startAbx (OptionId, OptionId, int trials, std::optional<uint64_t> seed = {}) override;
    BlindView blind() const override;
    void hearBlind (int number) override;
    void rankBlind (int number, RankMove) override;
    void answerBlind (int number) override;
    std::optional<BlindOutcome> reveal (const std::string& date = {}) override;
    void stopBlind() override;
    bool heardAtTrueLevel (OptionId) const override;
    void hearAtTrueLevel (OptionId) override;
    bool agree (OptionId) override;
    bool takeAgreementBack() override;
    int onlyString() const override { return shared.snapshot()->only; }
    void setOnlyString (int) override;

    std::vector<PanelControl> controls (OptionId) const override;
    Setting setting (OptionId) const override;
    void setKnob (OptionId, const std::string&, double) override;
    void setLever (OptionId, const std::string&, const std::string&) override;
    void beginGesture (OptionId, const std::string&) override;
    void endGesture (OptionId, const std::string&) override;

    std::shared_ptr<const Report> report (OptionId id) const override { return shared.report (id); }
    bool isWorking (OptionId id) const override { return reporter.isWorking (id); }
    void wantSweep (OptionId id, const std::string& knob) override { reporter.wantSweep (id, knob); }
    std::vector<SweepCurve> sweep() const override { return reporter.sweep(); }

    int take() const override;
    int takeFor (OptionId id) const override { return shared.snapshot()->takeFor (id); }
    void selectTake (int) override;
    bool takesFollow() const override { return ! byHand.load(); }
    void followTakes() override;

    /** After the host has moved the option: the take of what is heard goes into the player. Message thread. */
    void followHeard();
    bool addTake (const std::filesystem::path&) override;
    bool setTakeSetting (int take, const Setting&) override;
    bool setStringsPlayed (int take, const std::vector<std::string>&) override;
    std::shared_ptr<const TakePicture> takePicture() const override;
    bool isPlaying() const override { return player.isPlaying(); }
    void play() override;
    void stop() override;
    double positionSeconds() const override { return player.positionSeconds(); }
    void seek (double s) override { player.seek (s); }
    bool isLooping() const override { return player.isLooping(); }
    void setLooping (bool) override;
    std::pair<double, double> loop() const override { return player.loop(); }
    void setLoop (double, double) override;

    double takeInputPeak() override { return inputPeak.exchange (0.0f); }
    double takeOutputPeak() override { return outputPeak.exchange (0.0f); }
    double sampleRate() const override { return shared.sampleRate.load(); }

private:
    mutable std::recursive_mutex mutex; ///< of the document, the take chosen and loaded
    JobDocument document;
    PresetFolders standardPresets;
    int takeIndex = -1;
    std::map<std::filesystem::path, LoadedTake> takesRead; ///< those of the job that were needed so far
    LoadedTake loaded;                                     ///< the one in the player
    std::atomic<bool> byHand { false };                    ///< a take was selected for all versions
    int only = -1;
    std::optional<BlindRun> blindRun;
    std::optional<JobTree> gestureBefore;
    HostLink* host = nullptr;

    SharedState shared;
    TakePlayer player;
    std::atomic<bool> bypass { false }, fromTake { false };
    std::atomic<double> trim { 0.0 };
    std::atomic<float> inputPeak { 0.0f }, outputPeak { 0.0f };
    bool standsAlone = false;
    double sourceMix = 0.0; ///< audio thread: 0 the host, 1 the take
    int64_t framesSeen = 0; ///< audio thread: since it was prepared
    bool waited = false;    ///< audio thread: the block before was of a render
    double longestWait = 60.0;
    std::atomic<uint32_t> lateFor { 0 }; ///< the snapshot that a render could not wait for; 0: none

    Designer designer;
    Reporter reporter;
    TakeLoader loader;

    void processPart (float* const* channels, int numChannels, int frames, bool waits); ///< [audio-thread]
    enum class Told { sound, everything };
    bool await (Told, double seconds);
    bool moved (ParameterKind, int place, double value);
    void setEngineLevels(); ///< [audio-thread], or while nothing plays
    void documentChanged (bool settingsToo);
    void takeLoaded (LoadedTake);
    void gatherTakes (Snapshot&);
    void countHeard (const float* const* channels, int numChannels, int frames, bool takeOn); ///< [audio-thread]
    void forgetRewired (const Job& before);
    void rememberHeard();
    bool startBlind (const std::vector<OptionId>&, const std::function<BlindRun()>&);
    bool blindStillHolds() const;
    void blindMoved();
    void announce();
    JobTree treeNow() const;
    bool editTree (const std::string& name, const std::function<std::string (JobTree&)>&);
    bool replaceJob (const std::string& text, const std::filesystem::path& file, const std::filesystem::path& folder);
    void move (ParameterKind, int place, double value);
};
}
