// What is heard, where the controls stand, the transport: the part of the bench that the document does not undo.
#include "session/Session.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
Revisions Session::revisions() const
{
    return { shared.jobRevision.load(), shared.heardRevision.load(), shared.settingsRevision.load(),
             shared.reportsRevision.load(), shared.transportRevision.load() };
}

/** What is no number moves nothing; whoever shows the parameter is told to look again. */
void Session::hostMoved (ParameterKind kind, int place, double value)
{
    const bool isSetting = kind == ParameterKind::knob || kind == ParameterKind::lever, isNumber = std::isfinite (value);
    const bool isNew = isNumber && moved (kind, place, value);
    (isSetting ? shared.settingsRevision : shared.heardRevision).fetch_add (1);
    if (isNew || ! isNumber)
        shared.changes.raise();
}

/** @returns whether it stands elsewhere now */
bool Session::moved (ParameterKind kind, int place, double value)
{
    const auto put = [] (auto& at, auto now) { return at.exchange (now) != now; };
    switch (kind)
    {
    case ParameterKind::option:
        return put (shared.heard, optionAt (static_cast<int> (std::lround (std::clamp<double> (value, 0.0, lastOption)))));
    case ParameterKind::bypass: return put (bypass, value >= 0.5);
    case ParameterKind::matched: return put (shared.matched, value >= 0.5);
    case ParameterKind::hum: return put (shared.humDb, std::clamp (value, -80.0, 0.0));
    case ParameterKind::trim: return put (trim, std::clamp (value, -24.0, 24.0));
    case ParameterKind::knob:
        return shared.live.setKnob (shared.heard.load(), place, static_cast<float> (std::clamp (value, 0.0, 10.0)));
    case ParameterKind::lever:
        return shared.live.setLever (shared.heard.load(), place, static_cast<int> (std::lround (std::clamp (value, 0.0, 100.0))));
    }
    return false;
}

double Session::hostValue (ParameterKind kind, int place) const
{
    switch (kind)
    {
    case ParameterKind::option: return numberOf (shared.heard.load());
    case ParameterKind::bypass: return bypass.load() ? 1.0 : 0.0;
    case ParameterKind::matched: return shared.matched.load() ? 1.0 : 0.0;
    case ParameterKind::hum: return shared.humDb.load();
    case ParameterKind::trim: return trim.load();
    case ParameterKind::knob: return shared.live.knob (shared.heard.load(), place);
    case ParameterKind::lever: return shared.live.lever (shared.heard.load(), place);
    }
    return 0.0;
}

void Session::move (ParameterKind kind, int place, double value)
{
    if (host != nullptr)
        host->move (kind, place, value);
    else
        hostMoved (kind, place, value);
}

void Session::hear (OptionId id)
{
    if (shared.isBlind())
        return; // numbers alone are heard then
    move (ParameterKind::option, 0, numberOf (id));
    followHeard();
}

void Session::setBypassed (bool b) { move (ParameterKind::bypass, 0, b ? 1.0 : 0.0); }
void Session::setLevelMatched (bool m)
{
    if (! shared.isBlind())
        move (ParameterKind::matched, 0, m ? 1.0 : 0.0);
}
void Session::setHumDb (double db) { move (ParameterKind::hum, 0, db); }
void Session::setTrimDb (double db) { move (ParameterKind::trim, 0, db); }

void Session::setMainsHz (double hz)
{
    if (! std::isfinite (hz))
        return;
    shared.mainsHz = hz > 55.0 ? 60.0 : 50.0;
    shared.heardRevision.fetch_add (1);
    designer.wake();
}

void Session::setFacingDegrees (double degrees)
{
    if (! std::isfinite (degrees))
        return;
    shared.facingDegrees = std::clamp (degrees, 0.0, 90.0);
    shared.heardRevision.fetch_add (1);
    designer.wake();
}

void Session::setBuzz (double share)
{
    if (! std::isfinite (share))
        return;
    shared.buzz = std::clamp (share, 0.0, 1.0);
    shared.heardRevision.fetch_add (1);
    designer.wake();
}

void Session::setHissGainDb (double db)
{
    if (! std::isfinite (db))
        return;
    shared.hissGainDb = std::clamp (db, -1.0, 80.0);
    shared.heardRevision.fetch_add (1);
    designer.wake();
}

std::vector<PanelControl> Session::controls (OptionId id) const
{
    const auto snapshot = shared.snapshot();
    const Option* option = snapshot->option (id);
    std::vector<PanelControl> result;
    for (const Control& control : coldiron::controls (option ? option->harness : snapshot->recordedConfig (asRecorded).harness))
    {
        const PanelControl* known = snapshot->map.find (control.name);
        result.push_back ({ control.name, control.positions, known ? known->place : -1 });
    }
    return result;
}

Setting Session::setting (OptionId id) const
{
    const auto snapshot = shared.snapshot();
    if (snapshot->option (id) == nullptr)
    {
        const CircuitConfig config = snapshot->recordedConfig (asRecorded);
        return fullSetting (config.harness, config.setting);
    }
    return configOf (*snapshot, shared.live, id).setting;
}

void Session::setKnob (OptionId id, const std::string& name, double value)
{
    const auto snapshot = shared.snapshot();
    const PanelControl* control = snapshot->map.find (name);
    if (snapshot->option (id) == nullptr || control == nullptr || ! control->isKnob() || ! std::isfinite (value))
        return;
    value = std::clamp (value, 0.0, 10.0);
    if (control->place < 0)
        edit ("/options/" + letterOf (id) + "/setting/" + name, std::to_string (value), "Turn " + name);
    else if (id == heard())
        move (ParameterKind::knob, control->place, value);
    else
    {
        shared.live.setKnob (id, control->place, static_cast<float> (value));
        shared.settingsRevision.fetch_add (1);
    }
    reporter.wake();
}

void Session::setLever (OptionId id, const std::string& name, const std::string& position)
{
    const auto snapshot = shared.snapshot();
    const PanelControl* control = snapshot->map.find (name);
    if (snapshot->option (id) == nullptr || control == nullptr || control->isKnob())
        return;
    const auto found = std::find (control->positions.begin(), control->positions.end(), position);
    if (found == control->positions.end())
        return;
    const int index = static_cast<int> (found - control->positions.begin());
    if (control->place < 0)
        edit ("/options/" + letterOf (id) + "/setting/" + name, JobTree (position).dump(), "Throw " + name);
    else if (id == heard())
        move (ParameterKind::lever, control->place, index);
    else
    {
        shared.live.setLever (id, control->place, index);
        shared.settingsRevision.fetch_add (1);
    }
    reporter.wake();
}

void Session::beginGesture (OptionId id, const std::string& name)
{
    const auto snapshot = shared.snapshot();
    const PanelControl* control = snapshot->map.find (name);
    {
        const std::scoped_lock lock (mutex);
        gestureBefore = treeNow();
    }
    if (host != nullptr && control != nullptr && control->place >= 0 && id == heard())
        host->begin (control->isKnob() ? ParameterKind::knob : ParameterKind::lever, control->place);
}

void Session::endGesture (OptionId id, const std::string& name)
{
    const auto snapshot = shared.snapshot();
    const PanelControl* control = snapshot->map.find (name);
    if (host != nullptr && control != nullptr && control->place >= 0 && id == heard())
        host->end (control->isKnob() ? ParameterKind::knob : ParameterKind::lever, control->place);

    const std::scoped_lock lock (mutex);
    if (! gestureBefore)
        return;
    const JobTree before = std::move (*gestureBefore), now = treeNow();
    gestureBefore.reset();
    const bool turned = control == nullptr || control->isKnob();
    // What is heard and drawn comes from the live settings already: the snapshot may stay, only the text moves on.
    if (now != before
        && document.edit (before, (turned ? "Turn " : "Throw ") + name,
                          [&] (JobTree& tree)
                          {
                              tree = now;
                              return std::string();
                          }))
        announce();
}

void Session::play()
{
    setSource (Source::take);
    player.setPlaying (true);
    shared.transportRevision.fetch_add (1);
}

void Session::stop()
{
    player.setPlaying (false);
    shared.transportRevision.fetch_add (1);
}

void Session::setLooping (bool l)
{
    player.setLooping (l);
    shared.transportRevision.fetch_add (1);
}

void Session::setLoop (double from, double to)
{
    player.setLoop (from, to);
    shared.transportRevision.fetch_add (1);
}
}
