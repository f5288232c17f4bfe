#pragma once

#include "analysis/HandCheck.h"
#include "paper/Drawing.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace coldiron
{
/** What the hand holds over a wiring drawing, by mouse or by keys, and what letting go would do. Nothing is changed here:
    wanted() is the harness to ask for. Message thread. */
class WiringHand
{
public:
    enum class Holding { nothing, joint, part, removal };

    /** The drawing and the wiring it shows. Something in the hand is put back when the wiring is another one. */
    void show (std::shared_ptr<const Drawing>, const CircuitConfig&);
    void hide(); ///< nothing can be taken hold of until the next show()
    bool isReady() const { return drawing != nullptr; }
    const Harness& harness() const { return shown.harness; }

    /** @name Finding, in drawing units */
    ///@{
    std::string pointNear (Shape::Spot, double reach) const;                  ///< empty: none
    const DrawnGrip* gripNear (Shape::Spot, double reach) const;              ///< null: none
    const Shape::Spot* spotOf (const std::string& point) const;               ///< null: not drawn
    std::string pointTowards (const std::string& from, int dx, int dy) const; ///< the next one that way; `from` where none
    std::string pointAfter (const std::string& from, int by) const;           ///< in the order of the parts, round and round
    std::string pointCalled (const std::string& words) const;                 ///< the first whose words hold all of these; empty
    ///@}

    /** @name Taking */
    ///@{
    bool take (const DrawnGrip&);
    bool takeAt (const std::string& point);                             ///< its first joint; again: the next one
    void drawOutOf (const std::string& point);                          ///< a new wire
    bool takePart (const std::string& point, const std::string& value); ///< "22n", "150k": one leg to the point
    bool takeAway (const std::string& point);                           ///< the part that the point is of
    void putBack();
    ///@}

    Holding holding() const { return what; }
    bool isHolding() const { return what != Holding::nothing; }
    const HandMove& move() const { return inHand; }
    void over (const std::string& point); ///< where the loose end would be soldered; empty: nowhere
    const std::vector<std::string>& targets() const { return lit; }
    const HandVerdict& verdict() const { return judged; }
    std::string verdictWords() const;      ///< or what is asked for while a wire or a part has one end only
    std::string words() const;             ///< what is in the hand: "Bridge tone, lug 1, off Bridge volume, lug 3"
    std::optional<Harness> wanted() const; ///< none where letting go does nothing or cannot be done

private:
    std::shared_ptr<const Drawing> drawing;
    mutable std::optional<HandCheck> checker; ///< made at the first thing taken: it costs some milliseconds
    CircuitConfig shown;
    Holding what = Holding::nothing;
    HandMove inHand;
    Part part;
    size_t joint = 0, joints = 0; ///< which of the joints at a point is held
    std::string takenAt;          ///< the point whose joints takeAt() goes through
    std::vector<std::string> lit;
    HandVerdict judged;
    std::string question; ///< in place of a verdict; empty: there is one

    const HandCheck& check() const;
    Harness tried() const; ///< @throws HarnessError
    void judge();
    void ask (std::string forTheOtherEnd);
    void begin (Holding, HandMove);
};
}
