#pragma once

#include "analysis/HandMove.h"
#include "response/Figures.h"

#include <optional>
#include <set>
#include <string>
#include <vector>

namespace coldiron
{
/** What a move by hand would come to. */
struct HandVerdict
{
    enum class Kind {
        refused, ///< cannot be done; words say why
        nothing, ///< can be done, and no two points more or fewer are joined
        bad,     ///< silent, shorted, ground missing, a control that does nothing
        heard    ///< changes the sound, or a position of a switch that is not the one heard
    };

    Kind kind = Kind::heard;
    std::string words;             ///< one line, plain, without a full stop
    std::optional<double> levelDb; ///< of the heard setting, against before the move
    std::optional<double> peakHz;  ///< after the move; none where the response only falls
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
        std::string name;
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
    static bool doesNothing (const CircuitConfig&, const std::string& knob, const std::vector<Setting>&);
};
}
