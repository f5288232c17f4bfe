// Several takes of one instrument: which is read, which plays, which version is derived from which.
#include "session/Session.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
constexpr double alikeLength = 0.02; ///< takes this near in length keep the place in the phrase

double secondsOf (const LoadedTake& take) { return take.picture ? take.picture->seconds : 0.0; }
}

/** Says which version is derived from which take, asks for those that are needed and gives what is read already. */
void Session::gatherTakes (Snapshot& next)
{
    const auto& takes = next.job->takes;
    takeIndex = takes.empty() ? -1 : std::clamp (takeIndex, 0, static_cast<int> (takes.size()) - 1);
    next.take = takeIndex;
    next.follows = takesFollow() && fromTake.load() && takes.size() > 1;
    next.derivedFrom.fill (takeIndex);
    std::vector<int> needed;
    if (takeIndex >= 0)
        needed.push_back (takeIndex);
    if (next.follows)
        for (const Option& option : next.job->options)
            if (const OptionId id = optionOf (option.letter); id != asRecorded)
            {
                // One that cannot be played is no use: the selected one then stands in.
                const auto read = takesRead.find (takes[static_cast<size_t> (option.take)].file);
                if (read != takesRead.end() && read->second.audio == nullptr)
                    continue;
                next.derivedFrom[indexOf (id)] = option.take;
                if (std::find (needed.begin(), needed.end(), option.take) == needed.end())
                    needed.push_back (option.take);
            }

    std::set<std::filesystem::path> files;
    for (const TakeEntry& take : takes)
        files.insert (take.file);
    std::erase_if (takesRead, [&] (const auto& entry) { return files.count (entry.first) == 0; });
    loader.forgetAllBut (files);
    for (int index : needed)
    {
        const auto& file = takes[static_cast<size_t> (index)].file;
        const auto read = takesRead.find (file);
        if (read == takesRead.end())
        {
            loader.want (file);
            continue;
        }
        TakeMaterial material { read->second.audio, read->second.spectrum, read->second.noise };
        if (read->second.picture != nullptr && read->second.picture->loudnessLufs > -70.0)
            material.lufs = read->second.picture->loudnessLufs;
        next.material.emplace (index, std::move (material));
    }
}

/** Puts the take of what is heard into the player, as soon as it is read. */
void Session::followHeard()
{
    const std::scoped_lock lock (mutex);
    const auto snapshot = shared.snapshot();
    const int wanted = snapshot->takeFor (shared.playing());
    const auto& takes = snapshot->job->takes;
    const std::filesystem::path file = wanted < 0 || wanted >= static_cast<int> (takes.size())
                                           ? std::filesystem::path()
                                           : takes[static_cast<size_t> (wanted)].file;
    if (file == loaded.file)
        return;
    const auto read = takesRead.find (file);
    if (read == takesRead.end())
    {
        if (takesRead.count (loaded.file) != 0 && ! file.empty())
            return; // the one before plays on until this one is read
        loaded = {};
        loaded.file = file;
        player.load (nullptr);
    }
    else
    {
        const double before = secondsOf (loaded), after = secondsOf (read->second);
        const bool alike = before > 0.0 && std::abs (after - before) <= alikeLength * before;
        loaded = read->second;
        if (! alike)
            player.setLoop (0.0, 0.0);
        player.load (loaded.audio, alike ? player.positionSeconds() : 0.0);
    }
    shared.transportRevision.fetch_add (1);
}

void Session::takeLoaded (LoadedTake take)
{
    const std::scoped_lock lock (mutex);
    const bool waitsForIt = take.file == loaded.file;
    takesRead[take.file] = take;
    if (waitsForIt)
    {
        loaded = std::move (take);
        player.load (loaded.audio);
        shared.transportRevision.fetch_add (1);
    }
    documentChanged (false);
}

int Session::take() const { return shared.snapshot()->takeFor (shared.playing()); }

void Session::selectTake (int index)
{
    const std::scoped_lock lock (mutex);
    takeIndex = index;
    byHand = true;
    documentChanged (false);
}

void Session::followTakes()
{
    const std::scoped_lock lock (mutex);
    byHand = false;
    documentChanged (false);
}

std::shared_ptr<const TakePicture> Session::takePicture() const
{
    const std::scoped_lock lock (mutex);
    return loaded.picture;
}

void Session::setSource (Source s)
{
    const std::scoped_lock lock (mutex);
    const bool other = fromTake.exchange (s == Source::take) != (s == Source::take);
    if (s == Source::host)
        player.setPlaying (false);
    if (other && document.job()->takes.size() > 1)
        documentChanged (false); // what comes in live went through the selected take's wiring, whatever is heard
    shared.heardRevision.fetch_add (1);
    shared.transportRevision.fetch_add (1);
}
}
