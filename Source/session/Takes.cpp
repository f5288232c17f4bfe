#include "session/Takes.h"

#include "session/KeptState.h"
#include "session/TakePlayer.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
constexpr double alikeLength = 0.02; ///< takes this near in length keep the place in the phrase

double secondsOf (const LoadedTake& take) { return take.picture ? take.picture->seconds : 0.0; }
}

Takes::Takes (SharedState& s, JobEditor& e, TakePlayer& p)
    : shared (s), editor (e), player (p),
      loader ([this] (LoadedTake take) { takeLoaded (std::move (take)); },
              [this] (const std::string& words) { shared.tellFault ("take", "a take cannot be used: " + words); })
{
}

void Takes::begin()
{
    const std::scoped_lock lock (mutex);
    index = 0;
    byHand = false;
    std::error_code ignored;
    std::erase_if (read, [&] (const auto& entry)
                   { return ! std::filesystem::exists (entry.first, ignored); }); // gone since it was read
}

/** Says which version is derived from which take, asks for those that are needed and gives what is read already. */
void Takes::gather (Snapshot& next)
{
    const std::scoped_lock lock (mutex);
    const auto& takes = next.job->takes;
    index = takes.empty() ? -1 : std::clamp (index, 0, static_cast<int> (takes.size()) - 1);
    next.take = index;
    next.follows = follows() && shared.fromTake.load() && takes.size() > 1;
    next.derivedFrom.fill (index);
    std::vector<int> needed;
    if (index >= 0)
        needed.push_back (index);
    if (next.follows)
        for (const Option& option : next.job->options)
            if (const OptionId id = optionOf (option.letter); id != asRecorded)
            {
                // One that cannot be played is no use: the selected one then stands in.
                const auto known = read.find (takes[static_cast<size_t> (option.take)].file);
                if (known != read.end() && known->second.audio == nullptr)
                    continue;
                next.derivedFrom[indexOf (id)] = option.take;
                if (std::find (needed.begin(), needed.end(), option.take) == needed.end())
                    needed.push_back (option.take);
            }

    std::set<std::filesystem::path> files;
    for (const TakeEntry& take : takes)
        files.insert (take.file);
    std::erase_if (read, [&] (const auto& entry) { return files.count (entry.first) == 0; });
    loader.forgetAllBut (files);
    for (int take : needed)
    {
        const auto& file = takes[static_cast<size_t> (take)].file;
        const auto known = read.find (file);
        if (known == read.end())
        {
            loader.want (file);
            continue;
        }
        TakeMaterial material { known->second.audio, known->second.spectrum, known->second.noise };
        if (known->second.picture != nullptr && known->second.picture->loudnessLufs > -70.0)
            material.lufs = known->second.picture->loudnessLufs;
        next.material.emplace (take, std::move (material));
    }
}

/** Puts the take of what is heard into the player, as soon as it is read. */
void Takes::followHeard()
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
    const auto known = read.find (file);
    if (known == read.end())
    {
        if (read.count (loaded.file) != 0 && ! file.empty())
            return; // the one before plays on until this one is read
        loaded = {};
        loaded.file = file;
        player.load (nullptr);
    }
    else
    {
        const double before = secondsOf (loaded), after = secondsOf (known->second);
        const bool alike = before > 0.0 && std::abs (after - before) <= alikeLength * before;
        loaded = known->second;
        if (! alike)
            player.setLoop (0.0, 0.0);
        player.load (loaded.audio, alike ? player.positionSeconds() : 0.0);
    }
    shared.transportRevision.fetch_add (1);
}

/** On the loader's thread. */
void Takes::takeLoaded (LoadedTake take)
{
    {
        const std::scoped_lock lock (mutex);
        const bool waitsForIt = take.file == loaded.file;
        read[take.file] = take;
        if (waitsForIt)
        {
            loaded = std::move (take);
            player.load (loaded.audio);
            shared.transportRevision.fetch_add (1);
        }
    }
    editor.republish();
}

int Takes::playing() const { return takeFor (shared.playing()); }

int Takes::takeFor (OptionId id) const { return shared.snapshot()->takeFor (id); }

int Takes::selected() const
{
    const std::scoped_lock lock (mutex);
    return index;
}

void Takes::select (int take)
{
    {
        const std::scoped_lock lock (mutex);
        index = take;
        byHand = true;
    }
    editor.republish();
}

void Takes::follow()
{
    byHand = false;
    editor.republish();
}

std::shared_ptr<const TakePicture> Takes::picture() const
{
    const std::scoped_lock lock (mutex);
    return loaded.picture;
}

bool Takes::add (const std::filesystem::path& file)
{
    try
    {
        takeInfo (file);
    }
    catch (const std::exception& fault)
    {
        editor.refuse (fault.what());
        return false;
    }
    std::error_code ignored;
    const std::filesystem::path absolute = std::filesystem::absolute (file, ignored), folder = editor.folder();
    int added = 0;
    const auto append = [&] (JobTree& tree)
    {
        std::filesystem::path shown = absolute;
        if (! folder.empty())
            if (auto relative = std::filesystem::relative (absolute, folder); ! relative.empty() && *relative.begin() != "..")
                shown = relative;
        if (! tree.contains ("takes") || ! tree["takes"].is_array())
            tree["takes"] = JobTree::array();
        added = static_cast<int> (tree["takes"].size());
        tree["takes"].push_back ({ { "file", shown.string() } });
        return std::string();
    };
    if (! editor.edit ("Add a take", append))
        return false;
    {
        const std::scoped_lock lock (mutex);
        index = added;
        byHand = byHand.load() || added > 0; // the new one is to be heard, whatever it is nearest to
    }
    editor.republish();
    return true;
}

bool Takes::setSetting (int take, const Setting& setting)
{
    return editor.edit ("Setting of the take",
                        [&] (JobTree& tree)
                        {
                            JobTree value = JobTree::object();
                            for (const auto& [name, knob] : setting.knobs)
                                value[name] = knob;
                            for (const auto& [name, lever] : setting.levers)
                                value[name] = lever;
                            tree.at ("takes").at (static_cast<size_t> (take))["setting"] = value;
                            return std::string();
                        });
}

bool Takes::setStringsPlayed (int take, const std::vector<std::string>& strings)
{
    return editor.edit ("Strings played",
                        [&] (JobTree& tree)
                        {
                            JobTree& entry = tree.at ("takes").at (static_cast<size_t> (take));
                            if (strings.empty())
                                entry.erase ("strings");
                            else
                                entry["strings"] = strings;
                            return std::string();
                        });
}

void Takes::keep (JobTree& state) const
{
    state["take"] = selected();
    state["take_by_hand"] = byHand.load();
}

void Takes::restore (const JobTree& state)
{
    const std::scoped_lock lock (mutex);
    index = static_cast<int> (kept::numberIn (state, "take", -1.0, 1e6, 0.0));
    byHand = kept::flagIn (state, "take_by_hand");
}
}
