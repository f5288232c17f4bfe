#pragma once

#include "analysis/HandMove.h"
#include "response/Figures.h"

#include <optional>
#include <set>
#include <string>
#include <vector>

namespace coldiron
{
/** Where a switch stands. */
struct SwitchPosition
{
    std::string lever, position;
    bool isOneOfTwo = false; ///< of a switch with two positions: they mean little without its name

    bool operator== (const SwitchPosition&) const = default;
};

/** Where switches stand, one position of each; none on a guitar without switches. */
using SwitchPositions = std::vector<SwitchPosition>;

/** At which positions of the switches something is so. */
struct SwitchSettings
{
    enum class Kind {
        none,
        some, ///< at those listed
        all   ///< whatever the switches do; nothing is listed
    };
    Kind kind = Kind::none;
    bool hasSwitches = false;               ///< all: there are switches to say it of
    std::vector<SwitchPositions> positions; ///< a position that is so whatever the other switches do stands alone
};

/** Metal that a hand may touch. */
struct TouchedMetal
{
    enum class Kind { strings, potCase, pickupShield };
    Kind kind = Kind::strings;
    std::string part; ///< whose; empty for the strings
};

/** What a move by hand would come to. */
struct HandVerdict
{
    enum class Kind {
        refused, ///< cannot be done
        nothing, ///< can be done, and no two points more or fewer are joined
        bad,     ///< silent, shorted, ground missing, a control that does nothing
        heard    ///< changes the sound, or a position of a switch that is not the one heard
    };
    enum class Nothing { backWhereItWas, joinedAlready, sameJoints };
    enum class Sound {
        none,        ///< nothing to say: silent before and after, or said by `silent` and `shorted`
        silentAsSet, ///< silent at the setting that is heard, without being named above
        heardAgain,  ///< silent before at that setting
        changed      ///< see levelDb and what follows
    };

    Kind kind = Kind::heard;
    std::optional<HandRefusal> refusal; ///< refused: why
    Nothing nothing = Nothing::sameJoints;

    SwitchSettings shorted, silent;        ///< that were not so before
    std::vector<TouchedMetal> live;        ///< on the signal now
    std::vector<TouchedMetal> floating;    ///< on no ground now
    std::vector<std::string> uselessKnobs; ///< turn and change nothing now

    Sound sound = Sound::none;
    std::optional<double> levelDb;      ///< of the heard setting, against before the move
    std::optional<double> peakBeforeHz; ///< before the move; none where the response only falls
    std::optional<double> peakHz;       ///< after the move; likewise
    std::optional<double> humPlayingDb; ///< HumFigures::playingDb after the move, where its kind has changed

    bool canBeDone() const { return kind != Kind::refused; }
};

/** Tries moves on a harness before the iron is hot and says what comes of each. Construction and each check cost some
    milliseconds. Immutable; any thread. */
class HandCheck
{
public:
    /** @param now  the wiring as it stands, at the setting that is heard */
    explicit HandCheck (const CircuitConfig& now);

    HandVerdict check (const HandMove&) const;
    HandVerdict check (const Harness& wanted) const;

    /** Points where the thing in the hand may be soldered with a change in what is joined, in the order of the parts. */
    std::vector<std::string> targets (const HandMove& inHand) const;

    const Harness& harness() const { return now.harness; }

private:
    struct Position
    {
        SwitchPositions switches;
        Path path = Path::open;
    };

    const CircuitConfig now;
    const std::vector<Setting> settings; ///< every combination of the switches, at the heard knobs; at most 256
    std::vector<Position> before;        ///< one a setting
    std::set<std::string> deadPots;      ///< turn and change nothing
    std::set<std::string> grounded;      ///< cases, shields, strings that are on ground
    Figures figures;

    static std::vector<Setting> combinations (const Harness&, const Setting& knobs);
    static std::vector<Position> positions (const Harness&, const std::vector<Setting>&, const Load&);
    void findMetal (const Harness& wanted, HandVerdict&) const;
    void hear (const Harness& wanted, const std::vector<Setting>&, HandVerdict&) const;
    static bool doesNothing (const CircuitConfig&, const std::string& knob, const std::vector<Setting>&);
};
}
