#pragma once

#include "session/JobEditor.h"

#include <utility>

namespace coldiron
{
class TakePlayer;

enum class Source { host, take }; ///< the host's track or the live input; or the take's file, looping

/** Playing the take. */
class Transport
{
public:
    Transport (SharedState&, JobEditor&, TakePlayer&);

    Source source() const { return shared.fromTake.load() ? Source::take : Source::host; }
    void setSource (Source);
    bool isPlaying() const; ///< [any thread]
    void play();            ///< also turns the source to the take
    void stop();
    double positionSeconds() const; ///< [any thread]
    void seek (double seconds);
    bool isLooping() const;
    void setLooping (bool);
    std::pair<double, double> loop() const;              ///< [s]
    void setLoop (double fromSeconds, double toSeconds); ///< at least 0.05 s; from = to: the whole take

    void keep (JobTree& state) const;
    void restore (const JobTree& state);     ///< stopped, before the job's takes are gathered
    void restoreLoop (const JobTree& state); ///< after the take of what is heard is in the player

private:
    SharedState& shared;
    JobEditor& editor;
    TakePlayer& player;
};
}
