#pragma once

#include "engine/OutputChain.h"
#include "files/Json.h"
#include "guitar/Step.h"
#include "job/BlindResult.h"
#include "job/Presets.h"
#include "response/CircuitConfig.h"
#include "response/NearestTake.h"

#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace coldiron
{
/** A guitar as read: strings and harness. */
struct Guitar
{
    std::string name, preset;
    std::vector<GuitarString> strings; ///< lowest first
    Harness harness;
};

/** A solder point that must exist and be within reach: not a joint inside a pickup. */
struct RewireNeed
{
    PointName point;
    bool mustBeFree = false; ///< nothing may be soldered to it yet
    std::string otherwise;   ///< what to tell a person where it is not so
    int line = 0;            ///< in the rewire's file
};

/** A rewire where it is used: names filled in, steps concrete. */
struct RewireUse
{
    std::string preset, name, gives, costs;
    std::map<std::string, std::string> arguments; ///< defaults included
    std::vector<Step> steps;
    int line = 0;                             ///< where it is used
    std::string file;                         ///< the rewire's own, that the lines of its steps count in
    std::map<std::string, std::string> kinds; ///< of the asks that name something of the guitar
    std::vector<RewireNeed> needs;
};

struct TakeEntry
{
    std::filesystem::path file; ///< absolute
    int line = 0;               ///< of its name, in the job's file
    Setting setting;
    std::vector<std::string> strings; ///< played; empty: all
    std::vector<RewireUse> rewires;
    Harness harness; ///< after the rewires
};

struct Option
{
    std::string letter, name;
    std::vector<RewireUse> rewires;
    Setting setting;            ///< the take's, then the option's own
    int take = 0;               ///< index into takes: the one it is derived from, the nearest unless it names its own
    std::optional<int> ownTake; ///< index, where the option names one
    int settingTake = 0;        ///< index of the take whose setting it starts from: its own, else the first
    Load listening;
    Guitar guitar;   ///< the job's, unless the option is heard on another one
    Harness harness; ///< after the rewires
};

/** What was answered about hum before any option; nothing: not asked yet. */
struct HumAnswers
{
    /** What the hum does when the strings are touched; `changes`: it does, and which way was not said (an old job's `true`). */
    enum class Touch { same, falls, rises, changes };

    std::optional<Touch> touched;
    std::optional<bool> turned;     ///< it changes when the player turns
    std::optional<bool> everywhere; ///< it is there with every guitar

    bool operator== (const HumAnswers&) const = default;
};

struct Job
{
    std::filesystem::path file; ///< empty when not from a file
    std::string title;
    std::string wish; ///< of the client, in their words
    Guitar guitar;
    Load recording, listening;
    HumAnswers hum;
    std::optional<OutputChainChoice> outputChain; ///< none: whatever is usual where it is heard
    int outputChainLine = 0;                      ///< where the job says so
    std::vector<TakeEntry> takes;                 ///< may be empty (plain responses need none)
    std::vector<Option> options;                  ///< in the file's order
    std::string agreed;                           ///< letter; empty: not agreed yet
    std::vector<std::string> heard;               ///< letters of the options that were heard at true level
    int onlyString = -1;                          ///< >= 0: changes are asked for this string alone. Not from the file
    std::vector<BlindResult> blind;               ///< what blind tests found, the earliest first
    Diagnostics warnings;                         ///< silent or shorted at the setting asked for, and the like

    const Option* find (const std::string& letter) const;

    CircuitConfig recordedConfig (int take) const; ///< take -1: the guitar as it is, all at standard
    CircuitConfig optionConfig (const Option&) const;

    /** Asks for one string alone from now on; an empty name for all again. @returns whether the guitar has it */
    bool askOnly (const std::string& stringName);

    /** Which take the option is derived from and why, and how it could be surer. */
    TakeChoice takeChoice (const Option&) const;
};

/** Reads a job and everything it names. Every fault of every file is added; empty when any is fatal. */
std::optional<Job> readJob (const std::filesystem::path&, const PresetFolders&, Diagnostics&);
std::optional<Job> readJobText (const std::string& text, const std::filesystem::path& folder, const PresetFolders&, Diagnostics&);

std::optional<Guitar> readGuitar (const std::string& preset, const PresetFolders&, Diagnostics&);

/** The asks of a rewire, to offer what may be filled in. */
struct RewireInfo
{
    struct Ask
    {
        std::string name, kind, standard;
        bool hasStandard = false;
        std::string standardOf; ///< the standard is the value of this part of the guitar, "{pot}"; empty: `standard` itself
    };
    std::string preset, name, gives, costs, wish;
    std::vector<std::string> alsoCalled;
    std::vector<std::string> needs; ///< in words, for people
    std::vector<Ask> asks;
};

/** What an ask of that kind could be filled with on this guitar: names of pots, pickups, coils, switches, points,
    capacitors, resistors, parts; none for free values. */
std::vector<std::string> candidates (const std::string& kind, const Harness&);

std::optional<RewireInfo> readRewireInfo (const std::string& preset, const PresetFolders&, Diagnostics&);

/** What an ask is filled with when nothing is said: its standard, or the value of the part that it is taken from.
    @param arguments  the other asks as filled in
    @returns empty where that part is not there or has no such value */
std::string standardValue (const RewireInfo::Ask&, const std::map<std::string, std::string>& arguments, const Harness&);

/** Fills a rewire in for a harness: checks asks and needs. Faults say why not. */
std::optional<RewireUse> fillRewire (const std::string& preset, const std::map<std::string, std::string>& arguments,
                                     const Harness&, const PresetFolders&, Diagnostics&);

/** All of the rewires in turn. Where one is refused the fault says which step of which and why, and whether
    another order works. */
std::optional<Harness> applyRewires (const Harness&, const std::vector<RewireUse>&, const std::string& file, Diagnostics&);
}
