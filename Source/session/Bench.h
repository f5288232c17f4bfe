#pragma once

#include "job/Job.h"
#include "session/BlindView.h"
#include "session/PanelControl.h"
#include "session/Report.h"
#include "session/Revisions.h"
#include "session/RewireChoice.h"
#include "session/TakePicture.h"

#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace coldiron
{
struct RenderPlan;

enum class Source { host, take }; ///< the host's track or the live input; or the take's file, looping

/** Everything a window needs of the plugin. Owned by the processor, outlives every editor.

    Unless marked [any thread], call it on the message thread. Nothing here blocks for longer than reading a file.
    Edits of the job return true when the job could be read again afterwards; else nothing changed and `diagnostics()`
    says why. Each is one step of undo. */
class Bench
{
public:
    virtual ~Bench() = default;

    virtual Revisions revisions() const = 0; ///< [any thread]

    /** @name The job */
    ///@{
    virtual std::shared_ptr<const Job> job() const = 0; ///< never null; settings are those of the last commit
    virtual std::string jobText() const = 0;            ///< with all settings as they stand now
    virtual std::filesystem::path jobFile() const = 0;  ///< empty when never saved
    virtual bool isChanged() const = 0;                 ///< since it was opened or saved
    virtual Diagnostics diagnostics() const = 0;        ///< of the last attempt to open or edit; empty after success
    virtual const PresetFolders& presets() const = 0;

    virtual bool openJob (const std::filesystem::path&) = 0;
    virtual bool saveJob (const std::filesystem::path&) = 0; ///< written beside and renamed
    virtual bool setJobText (const std::string& text) = 0;
    virtual bool newJob (const std::string& guitarPreset) = 0;

    /** Replaces what stands at a JSON pointer ("/options/A/name", "/guitar") by JSON text; empty text removes it.
        Missing objects on the way are made. The way to every field that has no call of its own. */
    virtual bool edit (const std::string& pointer, const std::string& json, const std::string& whatFor = {}) = 0;

    virtual bool undo() = 0;
    virtual bool redo() = 0;
    virtual std::string undoName() const = 0; ///< empty: nothing to undo
    virtual std::string redoName() const = 0;
    ///@}

    /** @name Options */
    ///@{
    virtual std::vector<OptionId> ids() const = 0;            ///< of the options there are, in the file's order
    virtual OptionId addOption (const std::string& name) = 0; ///< the first free letter; asRecorded when all eight are taken
    virtual OptionId duplicateOption (OptionId) = 0;
    virtual bool renameOption (OptionId, const std::string&) = 0;
    virtual bool removeOption (OptionId) = 0;
    virtual bool moveOption (OptionId, int place) = 0; ///< place in the file, from 0; the letter stays
    virtual bool setRewires (OptionId, const std::vector<RewireChoice>&) = 0;
    virtual std::vector<RewireChoice> rewires (OptionId) const = 0; ///< in-line rewires are named "(in line)"

    /** Why a rewire cannot be added to an option as it is; empty when it can. */
    virtual Diagnostics whyNot (OptionId, const RewireChoice&) const = 0;
    ///@}

    /** @name What is heard */
    ///@{
    virtual OptionId heard() const = 0; ///< [any thread]
    virtual void hear (OptionId) = 0;   ///< one that does not exist plays as recorded
    virtual bool bypassed() const = 0;
    virtual void setBypassed (bool) = 0;
    virtual bool levelMatched() const = 0;
    virtual void setLevelMatched (bool) = 0;
    virtual double humDb() const = 0;   ///< of one coil against the take's loudness; -80 and below is off
    virtual void setHumDb (double) = 0; ///< -80 to 0
    virtual double mainsHz() const = 0;
    virtual void setMainsHz (double) = 0;       ///< 50 or 60
    virtual double facingDegrees() const = 0;   ///< of the coils' axis from the field: 0 faces it, 90 is across it
    virtual void setFacingDegrees (double) = 0; ///< 0 to 90
    virtual double buzz() const = 0;            ///< current pulses of rectifiers and dimmers on top of the hum
    virtual void setBuzz (double) = 0;          ///< 0 to 1
    virtual double hissGainDb() const = 0;      ///< by how much an amplifier lifts the hiss over the playing; below 0 is off
    virtual void setHissGainDb (double) = 0;    ///< -1 to 80
    virtual double trimDb() const = 0;
    virtual void setTrimDb (double) = 0; ///< -24 to 24
    /** @name After the jack: kept in the job, the same for every option and for as recorded */
    ///@{
    virtual OutputChainChoice outputChain() const = 0; ///< as chosen
    virtual bool setOutputChain (
        const OutputChainChoice&) = 0;                ///< one step of undo; a file is kept relative to the job where it can be
    virtual std::string outputChainFault() const = 0; ///< why the choice is not heard and the one before it is; empty: it is
    ///@}

    /** @name Headroom: one gain for all options and as recorded, from their true peaks on the take with hum and hiss */
    ///@{
    virtual bool headroomKept() const = 0;
    virtual void setHeadroomKept (bool) = 0;
    virtual double headroomDb() const = 0; ///< at most 0: what it is, or would be; heard on the take alone
    ///@}

    /** What is written where all versions are exported as sound: as they stand now. Empty: the job has no take. */
    virtual RenderPlan renderPlan (bool levelsMatched) const = 0;

    virtual Source source() const = 0;
    virtual void setSource (Source) = 0;
    ///@}

    /** @name Judging */
    ///@{
    /** While a blind test runs heard() is as recorded, whatever plays, and levels are matched: nothing a window reads
        here tells what is behind a number. A job that is opened, or loses one of the versions, ends it. */
    virtual std::string whyNoBlind (const std::vector<OptionId>&) const = 0; ///< empty: these can be judged now
    virtual bool startRanking (const std::vector<OptionId>&, std::optional<uint64_t> seed = {}) = 0; ///< two to nine versions
    virtual bool startAbx (OptionId, OptionId, int trials, std::optional<uint64_t> seed = {}) = 0;   ///< 5 to 100 trials
    virtual BlindView blind() const = 0;
    virtual void hearBlind (int number) = 0; ///< from 1
    virtual void rankBlind (int number, RankMove) = 0;
    virtual void answerBlind (int number) = 0; ///< abx: X is 1 or 2; on to the next trial

    /** Ends the test and puts what it found into the job: one step of undo. None while it is not complete.
        @param date  "2026-11-25", or empty */
    virtual std::optional<BlindOutcome> reveal (const std::string& date = {}) = 0;
    virtual void stopBlind() = 0; ///< ends it without a result

    virtual bool heardAtTrueLevel (OptionId) const = 0; ///< for a second at least, as it is wired now
    virtual void hearAtTrueLevel (OptionId) = 0;        ///< level true, no bypass, and the take plays if there is one
    virtual bool agree (OptionId) = 0;                  ///< refused unless heard at true level; the job notes what was
    virtual bool takeAgreementBack() = 0;

    virtual int onlyString() const = 0; ///< index of the string alone that changes are asked for; -1 all
    virtual void setOnlyString (int) = 0;
    ///@}

    /** @name Settings */
    ///@{
    virtual std::vector<PanelControl> controls (OptionId) const = 0;            ///< those the option's harness has
    virtual Setting setting (OptionId) const = 0;                               ///< as it stands now, everything named
    virtual void setKnob (OptionId, const std::string& name, double value) = 0; ///< heard within 20 ms; no undo step
    virtual void setLever (OptionId, const std::string& name, const std::string& position) = 0;
    virtual void beginGesture (OptionId, const std::string& name) = 0; ///< around a drag, for the host's automation
    virtual void endGesture (OptionId, const std::string& name) = 0;   ///< writes the setting into the job: one step of undo
    ///@}

    /** @name Responses and figures, computed in the background */
    ///@{
    virtual std::shared_ptr<const Report> report (OptionId) const = 0; ///< null until first computed; maybe of the setting before
    virtual bool isWorking (OptionId) const = 0;                       ///< a newer report is on its way

    /** Asks for the knob at 8, 6, 4, 2, 0; an empty name ends it. */
    virtual void wantSweep (OptionId, const std::string& knob) = 0;
    virtual std::vector<SweepCurve> sweep() const = 0; ///< of the last one wanted; empty until computed
    ///@}

    /** @name The take */
    ///@{
    /** Each option is derived from the take nearest to it, and that one plays while it is heard; the place in the phrase
        is kept where the takes are alike in length (2 %). A take selected by hand holds for all options. */
    virtual int take() const = 0;             ///< index of the one that plays; -1 none
    virtual int takeFor (OptionId) const = 0; ///< index of the one that a version is derived from; -1 none
    virtual void selectTake (int) = 0;        ///< for all versions, until followTakes()
    virtual bool takesFollow() const = 0;     ///< each option from its own or nearest take
    virtual void followTakes() = 0;
    virtual bool addTake (const std::filesystem::path&) = 0;    ///< file drop: checked, added to the job, selected
    virtual bool setTakeSetting (int take, const Setting&) = 0; ///< where the controls stood in the recording
    virtual bool setStringsPlayed (int take, const std::vector<std::string>&) = 0; ///< empty: all
    virtual std::shared_ptr<const TakePicture> takePicture() const = 0;            ///< null: no take
    virtual bool isPlaying() const = 0;                                            ///< [any thread]
    virtual void play() = 0;                                                       ///< also turns the source to the take
    virtual void stop() = 0;
    virtual double positionSeconds() const = 0; ///< [any thread]
    virtual void seek (double seconds) = 0;
    virtual bool isLooping() const = 0;
    virtual void setLooping (bool) = 0;
    virtual std::pair<double, double> loop() const = 0;              ///< [s]
    virtual void setLoop (double fromSeconds, double toSeconds) = 0; ///< at least 0.05 s; from = to: the whole take
    ///@}

    /** @name Meters [any thread] */
    ///@{
    virtual double takeInputPeak() = 0; ///< largest absolute sample since the last call, linear
    virtual double takeOutputPeak() = 0;
    virtual double sampleRate() const = 0; ///< 0 before the host has said
    ///@}
};
}
