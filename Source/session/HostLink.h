#pragma once

namespace coldiron
{
/** The parameters a host sees, without their places. */
enum class ParameterKind { option, bypass, matched, hum, trim, knob, lever };

/** How the session moves a parameter of the host. Message thread. Each call ends in the matching Session::hostMoved. */
class HostLink
{
public:
    virtual ~HostLink() = default;
    virtual void move (ParameterKind, int place, double value) = 0;
    virtual void begin (ParameterKind, int place) = 0;
    virtual void end (ParameterKind, int place) = 0;
};
}
