#include "session/Automation.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
Automation::Automation (SharedState& s) : shared (s) {}

void Automation::setHost (HostLink link) { host = std::move (link); }

/** Whoever shows the parameter is told to look again, also where nothing moved. */
void Automation::hostMoved (ParameterKind kind, int place, double value)
{
    const bool isSetting = kind == ParameterKind::knob || kind == ParameterKind::lever, isNumber = std::isfinite (value);
    const bool isNew = isNumber && moved (kind, place, value);
    (isSetting ? shared.settingsRevision : shared.heardRevision).fetch_add (1);
    if (isNew || ! isNumber)
        shared.changes.raise();
}

/** @returns whether it stands elsewhere now */
bool Automation::moved (ParameterKind kind, int place, double value)
{
    const auto put = [] (auto& at, auto now) { return at.exchange (now) != now; };
    switch (kind)
    {
    case ParameterKind::option:
        return put (shared.heard, optionAt (static_cast<int> (std::lround (std::clamp<double> (value, 0.0, lastOption)))));
    case ParameterKind::bypass: return put (shared.bypassed, value >= 0.5);
    case ParameterKind::matched: return put (shared.matched, value >= 0.5);
    case ParameterKind::hum: return put (shared.humDb, std::clamp (value, -80.0, 0.0));
    case ParameterKind::trim: return put (shared.trimDb, std::clamp (value, -24.0, 24.0));
    case ParameterKind::knob:
        return shared.live.setKnob (shared.heard.load(), place, static_cast<float> (std::clamp (value, 0.0, 10.0)));
    case ParameterKind::lever:
        return shared.live.setLever (shared.heard.load(), place, static_cast<int> (std::lround (std::clamp (value, 0.0, 100.0))));
    }
    return false;
}

double Automation::hostValue (ParameterKind kind, int place) const
{
    switch (kind)
    {
    case ParameterKind::option: return numberOf (shared.heard.load());
    case ParameterKind::bypass: return shared.bypassed.load() ? 1.0 : 0.0;
    case ParameterKind::matched: return shared.matched.load() ? 1.0 : 0.0;
    case ParameterKind::hum: return shared.humDb.load();
    case ParameterKind::trim: return shared.trimDb.load();
    case ParameterKind::knob: return shared.live.knob (shared.heard.load(), place);
    case ParameterKind::lever: return shared.live.lever (shared.heard.load(), place);
    }
    return 0.0;
}

void Automation::move (ParameterKind kind, int place, double value)
{
    if (host.move)
        host.move (kind, place, value);
    else
        hostMoved (kind, place, value);
}

void Automation::beginGesture (ParameterKind kind, int place)
{
    if (host.begin)
        host.begin (kind, place);
}

void Automation::endGesture (ParameterKind kind, int place)
{
    if (host.end)
        host.end (kind, place);
}
}
