#pragma once

#include "session/SharedState.h"

#include <functional>

namespace coldiron
{
/** The parameters a host sees, without their places. */
enum class ParameterKind { option, bypass, matched, hum, trim, knob, lever };

/** How a session moves a parameter of its host. Message thread. Each move ends in Automation::hostMoved. */
struct HostLink
{
    std::function<void (ParameterKind, int place, double value)> move;
    std::function<void (ParameterKind, int place)> begin, end; ///< around a drag
};

/** The values that a host may automate, as it moves them and as the session moves them. Knobs and levers are those of the
    option heard. */
class Automation
{
public:
    explicit Automation (SharedState&);

    void setHost (HostLink); ///< {}: none. Message thread

    /** [any thread, wait-free] What is no number moves nothing. */
    void hostMoved (ParameterKind, int place, double value);
    double hostValue (ParameterKind, int place) const; ///< [any thread] what the parameter should show

    /** Message thread: by way of the host where there is one. */
    void move (ParameterKind, int place, double value);
    void beginGesture (ParameterKind, int place);
    void endGesture (ParameterKind, int place);

private:
    SharedState& shared;
    HostLink host;

    bool moved (ParameterKind, int place, double value);
};
}
