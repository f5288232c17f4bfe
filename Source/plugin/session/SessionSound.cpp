// What is heard, where the controls stand, the transport: the part of the bench that the document does not undo.
#include "plugin/session/Session.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
Revisions Session::revisions() const
{
    return { shop.jobRevision.load(), shop.heardRevision.load(), shop.settingsRevision.load(), shop.reportsRevision.load(),
             shop.transportRevision.load() };
}

/** What is no number moves nothing; whoever shows the parameter is told to look again. */
void Session::hostMoved (Lane lane, int place, double value)
{
    const bool isSetting = lane == Lane::knob || lane == Lane::lever;
    if (std::isfinite (value))
        moved (lane, place, value);
    (isSetting ? shop.settingsRevision : shop.heardRevision).fetch_add (1);
}

void Session::moved (Lane lane, int place, double value)
{
    switch (lane)
    {
        case Lane::option: shop.heard = static_cast<Tag> (std::lround (std::clamp<double> (value, asRecorded, maxTag))); break;
        case Lane::bypass: bypass = value >= 0.5; break;
        case Lane::matched: shop.matched = value >= 0.5; break;
        case Lane::hum: shop.humDb = std::clamp (value, -80.0, 0.0); break;
        case Lane::trim: trim = std::clamp (value, -24.0, 24.0); break;
        case Lane::knob: shop.live.setKnob (shop.heard.load(), place, static_cast<float> (std::clamp (value, 0.0, 10.0))); break;
        case Lane::lever: shop.live.setLever (shop.heard.load(), place, static_cast<int> (std::lround (std::clamp (value, 0.0, 100.0)))); break;
    }
}

double Session::hostValue (Lane lane, int place) const
{
    switch (lane)
    {
        case Lane::option: return shop.heard.load();
        case Lane::bypass: return bypass.load() ? 1.0 : 0.0;
        case Lane::matched: return shop.matched.load() ? 1.0 : 0.0;
        case Lane::hum: return shop.humDb.load();
        case Lane::trim: return trim.load();
        case Lane::knob: return shop.live.knob (shop.heard.load(), place);
        case Lane::lever: return shop.live.lever (shop.heard.load(), place);
    }
    return 0.0;
}

void Session::move (Lane lane, int place, double value)
{
    if (host != nullptr)
        host->move (lane, place, value);
    else
        hostMoved (lane, place, value);
    designer.nudge();
}

void Session::hear (Tag tag)
{
    if (shop.isBlind())
        return; // numbers alone are heard then
    move (Lane::option, 0, std::clamp (tag, asRecorded, maxTag));
    followHeard();
}

void Session::setBypassed (bool b) { move (Lane::bypass, 0, b ? 1.0 : 0.0); }
void Session::setLevelMatched (bool m) { if (! shop.isBlind()) move (Lane::matched, 0, m ? 1.0 : 0.0); }
void Session::setHumDb (double db) { move (Lane::hum, 0, db); }
void Session::setTrimDb (double db) { move (Lane::trim, 0, db); }

void Session::setMainsHz (double hz)
{
    if (! std::isfinite (hz))
        return;
    shop.mainsHz = hz > 55.0 ? 60.0 : 50.0;
    shop.heardRevision.fetch_add (1);
    designer.nudge();
}

void Session::setFacingDegrees (double degrees)
{
    if (! std::isfinite (degrees))
        return;
    shop.facingDegrees = std::clamp (degrees, 0.0, 90.0);
    shop.heardRevision.fetch_add (1);
    designer.nudge();
}

void Session::setBuzz (double share)
{
    if (! std::isfinite (share))
        return;
    shop.buzz = std::clamp (share, 0.0, 1.0);
    shop.heardRevision.fetch_add (1);
    designer.nudge();
}

void Session::setHissGainDb (double db)
{
    if (! std::isfinite (db))
        return;
    shop.hissGainDb = std::clamp (db, -1.0, 80.0);
    shop.heardRevision.fetch_add (1);
    designer.nudge();
}

std::vector<BenchControl> Session::controls (Tag tag) const
{
    const auto snapshot = shop.snapshot();
    const Option* option = snapshot->option (tag);
    std::vector<BenchControl> result;
    for (const Control& control : coldiron::controls (option ? option->harness : snapshot->recordedSide (asRecorded).harness))
    {
        const BenchControl* known = snapshot->map.find (control.name);
        result.push_back ({ control.name, control.positions, known ? known->place : -1 });
    }
    return result;
}

Setting Session::setting (Tag tag) const
{
    const auto snapshot = shop.snapshot();
    if (snapshot->option (tag) == nullptr)
    {
        const Side side = snapshot->recordedSide (asRecorded);
        return fullSetting (side.harness, side.setting);
    }
    return sideOf (*snapshot, shop.live, tag).setting;
}

void Session::setKnob (Tag tag, const std::string& name, double value)
{
    const auto snapshot = shop.snapshot();
    const BenchControl* control = snapshot->map.find (name);
    if (snapshot->option (tag) == nullptr || control == nullptr || ! control->isKnob() || ! std::isfinite (value))
        return;
    value = std::clamp (value, 0.0, 10.0);
    if (control->place < 0)
        edit ("/options/" + letterOf (tag) + "/setting/" + name, std::to_string (value), "Turn " + name);
    else if (tag == heard())
        move (Lane::knob, control->place, value);
    else
    {
        shop.live.setKnob (tag, control->place, static_cast<float> (value));
        shop.settingsRevision.fetch_add (1);
    }
    reporter.nudge();
}

void Session::setLever (Tag tag, const std::string& name, const std::string& position)
{
    const auto snapshot = shop.snapshot();
    const BenchControl* control = snapshot->map.find (name);
    if (snapshot->option (tag) == nullptr || control == nullptr || control->isKnob())
        return;
    const auto found = std::find (control->positions.begin(), control->positions.end(), position);
    if (found == control->positions.end())
        return;
    const int index = static_cast<int> (found - control->positions.begin());
    if (control->place < 0)
        edit ("/options/" + letterOf (tag) + "/setting/" + name, JobTree (position).dump(), "Throw " + name);
    else if (tag == heard())
        move (Lane::lever, control->place, index);
    else
    {
        shop.live.setLever (tag, control->place, index);
        shop.settingsRevision.fetch_add (1);
    }
    reporter.nudge();
}

void Session::beginGesture (Tag tag, const std::string& name)
{
    const auto snapshot = shop.snapshot();
    const BenchControl* control = snapshot->map.find (name);
    {
        const std::scoped_lock lock (mutex);
        gestureBefore = treeNow();
    }
    if (host != nullptr && control != nullptr && control->place >= 0 && tag == heard())
        host->begin (control->isKnob() ? Lane::knob : Lane::lever, control->place);
}

void Session::endGesture (Tag tag, const std::string& name)
{
    const auto snapshot = shop.snapshot();
    const BenchControl* control = snapshot->map.find (name);
    if (host != nullptr && control != nullptr && control->place >= 0 && tag == heard())
        host->end (control->isKnob() ? Lane::knob : Lane::lever, control->place);

    const std::scoped_lock lock (mutex);
    if (! gestureBefore)
        return;
    const JobTree before = std::move (*gestureBefore), now = treeNow();
    gestureBefore.reset();
    const bool turned = control == nullptr || control->isKnob();
    // What is heard and drawn comes from the live settings already: the snapshot may stay, only the text moves on.
    if (now != before && document.edit (before, (turned ? "Turn " : "Throw ") + name, [&] (JobTree& tree) { tree = now; return std::string(); }))
        announce();
}

void Session::play()
{
    setSource (Source::take);
    player.setPlaying (true);
    shop.transportRevision.fetch_add (1);
}

void Session::stop()
{
    player.setPlaying (false);
    shop.transportRevision.fetch_add (1);
}

void Session::setLooping (bool l)
{
    player.setLooping (l);
    shop.transportRevision.fetch_add (1);
}

void Session::setLoop (double from, double to)
{
    player.setLoop (from, to);
    shop.transportRevision.fetch_add (1);
}
}
