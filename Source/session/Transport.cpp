#include "session/Transport.h"

#include "session/KeptState.h"
#include "session/TakePlayer.h"

namespace coldiron
{
Transport::Transport (SharedState& s, JobEditor& e, TakePlayer& p) : shared (s), editor (e), player (p) {}

void Transport::setSource (Source s)
{
    const bool other = shared.fromTake.exchange (s == Source::take) != (s == Source::take);
    if (s == Source::host)
        player.setPlaying (false);
    if (other && editor.job()->takes.size() > 1)
        editor.republish(); // what comes in live went through the selected take's wiring, whatever is heard
    shared.heardRevision.fetch_add (1);
    shared.transportRevision.fetch_add (1);
}

bool Transport::isPlaying() const { return player.isPlaying(); }

void Transport::play()
{
    setSource (Source::take);
    player.setPlaying (true);
    shared.transportRevision.fetch_add (1);
}

void Transport::stop()
{
    player.setPlaying (false);
    shared.transportRevision.fetch_add (1);
}

double Transport::positionSeconds() const { return player.positionSeconds(); }
void Transport::seek (double seconds) { player.seek (seconds); }
bool Transport::isLooping() const { return player.isLooping(); }

void Transport::setLooping (bool l)
{
    player.setLooping (l);
    shared.transportRevision.fetch_add (1);
}

std::pair<double, double> Transport::loop() const { return player.loop(); }

void Transport::setLoop (double from, double to)
{
    player.setLoop (from, to);
    shared.transportRevision.fetch_add (1);
}

void Transport::keep (JobTree& state) const
{
    state["source"] = source() == Source::take ? "take" : "host";
    state["loops"] = isLooping();
    const auto ends = loop();
    state["loop"] = { ends.first, ends.second };
}

void Transport::restore (const JobTree& state)
{
    player.setPlaying (false);
    shared.fromTake = kept::textIn (state, "source") == "take";
    player.setLooping (! state.contains ("loops") || kept::flagIn (state, "loops"));
}

void Transport::restoreLoop (const JobTree& state)
{
    if (const auto ends = state.find ("loop");
        ends != state.end() && ends->is_array() && ends->size() == 2 && (*ends)[0].is_number() && (*ends)[1].is_number())
        player.setLoop ((*ends)[0].get<double>(), (*ends)[1].get<double>());
    shared.transportRevision.fetch_add (1);
}
}
