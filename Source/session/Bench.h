#pragma once

#include "engine/HeardLevel.h"
#include "job/Job.h"
#include "metering/TakeFaults.h"
#include "response/CoilChoice.h"
#include "response/Figures.h"
#include "session/BlindView.h"

#include <cstdint>
#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace coldiron
{
struct RenderPlan;

/** Which version of the sound: 0 is as recorded (`Now`), 1 to 8 are the options A to H. The number is the letter's,
    not the place in the file: a job that has A and C uses 1 and 3. */
using Tag = int;
inline constexpr Tag asRecorded = 0;
inline constexpr Tag maxTag = 8;

std::string letterOf (Tag);            ///< "A" to "H"; empty for as recorded
Tag tagOf (const std::string& letter); ///< asRecorded for what is no letter of an option

/** A knob or lever that a parameter of the plugin stands for. The places are the same for all options of a job: the
    guitar's own controls first, then those that rewires fit, in the order of the options. */
struct PanelControl
{
    std::string name;
    std::vector<std::string> positions; ///< empty for a knob
    int place = 0;                      ///< from 0, among the knobs or among the levers; -1: more than there are parameters
    bool isKnob() const { return positions.empty(); }
};

/** What is drawn of one option. All vectors are as long as hz. */
struct Curve
{
    std::vector<double> hz;            ///< rising, 20 Hz to 20 kHz
    std::vector<double> changeDb;      ///< what is applied to the take; -300 where silent
    std::vector<double> circuitDb;     ///< the whole circuit: V at the input per volt of coil EMF, all coils alike
    std::vector<double> lowDb, highDb; ///< the band around changeDb; empty until computed (it takes longer)
};

/** One curve of a knob's sweep. */
struct SweepCurve
{
    double knob = 0.0;
    std::vector<double> hz, changeDb, circuitDb;
};

/** All that is known of one option at its present setting. Immutable. */
struct Report
{
    Tag tag = asRecorded;
    Setting setting;
    bool silent = false;
    bool complete = false; ///< false: only the curve without band, the rest follows
    Curve curve;
    Figures figures;                      ///< once complete; sureness is there at once
    double matchDb = 0.0;                 ///< what level matching adds
    std::optional<HeardLevel> heard;      ///< behind the jack, once complete and with a take
    double humPeak = 0.0, buzzPeak = 0.0; ///< most the hum of 0 dB can reach behind the jack, buzz at 0 and at 1 [linear]
    std::vector<CoilHum> coilHums;        ///< once complete
    std::vector<OtherCoil> otherCoils;    ///< to keep instead, where two kept coils hum together
    double hissPeak = 0.0;                ///< likewise of the hiss under 0 dB: five times its rms
    std::optional<double> peakDb;         ///< of the take through this option, dBFS at true level; none without a take
    TakeChoice choice;                    ///< from which take, and why; empty words with one take or none
    double filterErrorDb = 0.0;           ///< the filter against its target, worst of 20 Hz to 20 kHz
};

/** The take as the lane draws it. Immutable. */
struct TakePicture
{
    std::string name;  ///< of the file
    std::string fault; ///< not empty: why it cannot be played
    double seconds = 0.0;
    double sampleRate = 0.0;
    int channels = 0;
    std::vector<float> low, high; ///< least and largest sample of each of up to 4000 equal stretches
    double loudnessLufs = -300.0;
    std::vector<TakeFault> remarks; ///< what a better recording would not have, the worst first
    double noiseDb = -300.0;        ///< of its pauses against the playing; -300 where that cannot be told
};

/** A rewire and what fills its asks, as written in a job. */
struct RewireChoice
{
    std::string preset;
    std::map<std::string, std::string> arguments;
};

enum class Source { host, take }; ///< the host's track or the live input; or the take's file, looping

/** Counters that rise when something changed. Poll them (30 times a second is plenty) and compare with the last. */
struct Revisions
{
    uint32_t job = 0;       ///< the document: options, rewires, guitar, takes, faults, undo; read everything again
    uint32_t heard = 0;     ///< which tag is heard, bypass, level, hum, trim, source
    uint32_t settings = 0;  ///< a knob or lever of any option
    uint32_t reports = 0;   ///< a curve or figure of any option, a sweep
    uint32_t transport = 0; ///< take loaded, playing, loop (not the running position)
    bool operator== (const Revisions&) const = default;
};

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
    virtual std::vector<Tag> tags() const = 0;           ///< of the options there are, in the file's order
    virtual Tag addOption (const std::string& name) = 0; ///< the first free letter; asRecorded when all eight are taken
    virtual Tag duplicateOption (Tag) = 0;
    virtual bool renameOption (Tag, const std::string&) = 0;
    virtual bool removeOption (Tag) = 0;
    virtual bool moveOption (Tag, int place) = 0; ///< place in the file, from 0; the letter stays
    virtual bool setRewires (Tag, const std::vector<RewireChoice>&) = 0;
    virtual std::vector<RewireChoice> rewires (Tag) const = 0; ///< in-line rewires are named "(in line)"

    /** Why a rewire cannot be added to an option as it is; empty when it can. */
    virtual Diagnostics whyNot (Tag, const RewireChoice&) const = 0;
    ///@}

    /** @name What is heard */
    ///@{
    virtual Tag heard() const = 0; ///< [any thread]
    virtual void hear (Tag) = 0;   ///< one that does not exist plays as recorded
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
    virtual std::string whyNoBlind (const std::vector<Tag>&) const = 0; ///< empty: these can be judged now
    virtual bool startRanking (const std::vector<Tag>&, std::optional<uint64_t> seed = {}) = 0; ///< two to nine versions
    virtual bool startAbx (Tag, Tag, int trials, std::optional<uint64_t> seed = {}) = 0;        ///< 5 to 100 trials
    virtual BlindView blind() const = 0;
    virtual void hearBlind (int number) = 0; ///< from 1
    virtual void rankBlind (int number, RankMove) = 0;
    virtual void answerBlind (int number) = 0; ///< abx: X is 1 or 2; on to the next trial

    /** Ends the test and puts what it found into the job: one step of undo. None while it is not complete.
        @param date  "2026-11-25", or empty */
    virtual std::optional<BlindOutcome> reveal (const std::string& date = {}) = 0;
    virtual void stopBlind() = 0; ///< ends it without a result

    virtual bool heardAtTrueLevel (Tag) const = 0; ///< for a second at least, as it is wired now
    virtual void hearAtTrueLevel (Tag) = 0;        ///< level true, no bypass, and the take plays if there is one
    virtual bool agree (Tag) = 0;                  ///< refused unless heard at true level; the job notes what was
    virtual bool takeAgreementBack() = 0;

    virtual int onlyString() const = 0; ///< index of the string alone that changes are asked for; -1 all
    virtual void setOnlyString (int) = 0;
    ///@}

    /** @name Settings */
    ///@{
    virtual std::vector<PanelControl> controls (Tag) const = 0;            ///< those the option's harness has
    virtual Setting setting (Tag) const = 0;                               ///< as it stands now, everything named
    virtual void setKnob (Tag, const std::string& name, double value) = 0; ///< heard within 20 ms; no undo step
    virtual void setLever (Tag, const std::string& name, const std::string& position) = 0;
    virtual void beginGesture (Tag, const std::string& name) = 0; ///< around a drag, for the host's automation
    virtual void endGesture (Tag, const std::string& name) = 0;   ///< writes the setting into the job: one step of undo
    ///@}

    /** @name Responses and figures, computed in the background */
    ///@{
    virtual std::shared_ptr<const Report> report (Tag) const = 0; ///< null until first computed; maybe of the setting before
    virtual bool isWorking (Tag) const = 0;                       ///< a newer report is on its way

    /** Asks for the knob at 8, 6, 4, 2, 0; an empty name ends it. */
    virtual void wantSweep (Tag, const std::string& knob) = 0;
    virtual std::vector<SweepCurve> sweep() const = 0; ///< of the last one wanted; empty until computed
    ///@}

    /** @name The take */
    ///@{
    /** Each option is derived from the take nearest to it, and that one plays while it is heard; the place in the phrase
        is kept where the takes are alike in length (2 %). A take selected by hand holds for all options. */
    virtual int take() const = 0;         ///< index of the one that plays; -1 none
    virtual int takeFor (Tag) const = 0;  ///< index of the one that a version is derived from; -1 none
    virtual void selectTake (int) = 0;    ///< for all versions, until followTakes()
    virtual bool takesFollow() const = 0; ///< each option from its own or nearest take
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
