// What a host keeps for us: the whole job, the presets it names, the take, the levels.
#include "session/EmbeddedPresets.h"
#include "session/Session.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
constexpr const char* kind = "state 1";
constexpr size_t largestState = 64u << 20;

double numberIn (const JobTree& tree, const char* key, double low, double high, double otherwise)
{
    const auto found = tree.find (key);
    if (found == tree.end() || ! found->is_number())
        return otherwise;
    const double value = found->get<double>();
    return std::isfinite (value) ? std::clamp (value, low, high) : otherwise;
}

std::string textIn (const JobTree& tree, const char* key)
{
    const auto found = tree.find (key);
    return found != tree.end() && found->is_string() ? found->get<std::string>() : std::string();
}

bool flagIn (const JobTree& tree, const char* key)
{
    const auto found = tree.find (key);
    return found != tree.end() && found->is_boolean() && found->get<bool>();
}
}

std::string Session::state() const
{
    const std::scoped_lock lock (mutex);
    JobTree state;
    state["coldiron"] = kind;
    state["job"] = document.textOf (treeNow());
    state["file"] = document.file().string();
    state["folder"] = document.folder().string();
    state["changed"] = document.isChanged() || treeNow() != document.tree();
    state["presets"] = JobTree (presetsNamedBy (document.tree(), document.presets()));
    state["heard"] = numberOf (shared.heard.load());
    state["bypassed"] = bypass.load();
    state["matched"] = shared.matched.load();
    state["hum_db"] = shared.humDb.load();
    state["mains_hz"] = shared.mainsHz.load();
    state["facing_deg"] = shared.facingDegrees.load();
    state["buzz"] = shared.buzz.load();
    state["hiss_db"] = shared.hissGainDb.load();
    state["headroom"] = shared.headroomKept.load();
    state["trim_db"] = trim.load();
    state["source"] = fromTake.load() ? "take" : "host";
    state["take"] = takeIndex;
    state["take_by_hand"] = byHand.load();
    state["only_string"] = only;
    state["heard_true"] = JobTree::array();
    for (const OptionId id : optionIds)
        if (heardAtTrueLevel (id))
            state["heard_true"].push_back (numberOf (id));
    state["loops"] = player.isLooping();
    const auto ends = player.loop();
    state["loop"] = { ends.first, ends.second };

    // Settings again, by place and in full: the job's text rounds, and automation moves places that no option uses.
    for (const OptionId id : versionIds)
    {
        JobTree knobs = JobTree::array(), levers = JobTree::array();
        for (int place = 0; place < numKnobs; ++place)
            knobs.push_back (shared.live.knob (id, place));
        for (int place = 0; place < numLevers; ++place)
            levers.push_back (shared.live.lever (id, place));
        state["knobs"].push_back (knobs);
        state["levers"].push_back (levers);
    }
    return state.dump (-1, ' ', false, JobTree::error_handler_t::replace);
}

bool Session::restore (const std::string& text)
{
    const std::scoped_lock lock (mutex);
    const auto refuse = [&] (const std::string& why)
    {
        document.refuse ("the state kept by the host cannot be used: " + why);
        announce();
        return false;
    };

    if (text.size() > largestState || isTooDeep (text))
        return refuse ("too large or too deep");
    const JobTree state = JobTree::parse (text, nullptr, false);
    if (! state.is_object() || textIn (state, "coldiron") != kind || textIn (state, "job").empty())
        return refuse (std::string ("no \"") + kind + "\"");

    if (! document.replace (textIn (state, "job"), textIn (state, "file"), textIn (state, "folder"),
                            standardPresets.behind (std::make_shared<const CarriedPresets> (presetsKeptIn (state)))))
    {
        announce();
        return false; // the last good one goes on
    }
    if (flagIn (state, "changed"))
        document.markChanged(); // what its file lacks, it lacks still

    shared.heard = optionAt (static_cast<int> (numberIn (state, "heard", 0.0, lastOption, 0.0)));
    bypass = flagIn (state, "bypassed");
    shared.matched = flagIn (state, "matched");
    shared.humDb = numberIn (state, "hum_db", -80.0, 0.0, -80.0);
    shared.mainsHz = numberIn (state, "mains_hz", 50.0, 60.0, 50.0) > 55.0 ? 60.0 : 50.0;
    shared.facingDegrees = numberIn (state, "facing_deg", 0.0, 90.0, 0.0);
    shared.buzz = numberIn (state, "buzz", 0.0, 1.0, 0.0);
    shared.hissGainDb = numberIn (state, "hiss_db", -1.0, 80.0, -1.0);
    shared.headroomKept = state.contains ("headroom") ? flagIn (state, "headroom") : standsAlone;
    trim = numberIn (state, "trim_db", -24.0, 24.0, 0.0);
    takeIndex = static_cast<int> (numberIn (state, "take", -1.0, 1e6, 0.0));
    byHand = flagIn (state, "take_by_hand");
    only = static_cast<int> (numberIn (state, "only_string", -1.0, 100.0, -1.0));
    blindRun.reset();
    player.setPlaying (false);
    fromTake = textIn (state, "source") == "take";
    player.setLooping (! state.contains ("loops") || flagIn (state, "loops"));
    documentChanged (true);
    rememberHeard();
    if (const auto heard = state.find ("heard_true"); heard != state.end() && heard->is_array())
        for (const auto& id : *heard)
            if (id.is_number_integer() && id.get<int64_t>() >= 1 && id.get<int64_t>() <= lastOption)
                shared.heardSeconds[static_cast<size_t> (id.get<int>())] = 1.0;

    if (const auto loop = state.find ("loop");
        loop != state.end() && loop->is_array() && loop->size() == 2 && (*loop)[0].is_number() && (*loop)[1].is_number())
        player.setLoop ((*loop)[0].get<double>(), (*loop)[1].get<double>());
    for (const OptionId id : versionIds)
    {
        const auto place = indexOf (id);
        const auto rowOf = [&] (const char* key) -> JobTree
        {
            const auto rows = state.find (key);
            return rows != state.end() && rows->is_array() && rows->size() > place && (*rows)[place].is_array()
                       ? (*rows)[place]
                       : JobTree::array();
        };
        const JobTree knobs = rowOf ("knobs"), levers = rowOf ("levers");
        for (size_t i = 0; i < std::min<size_t> (numKnobs, knobs.size()); ++i)
            if (knobs[i].is_number() && knobs[i].get<double>() >= 0.0 && knobs[i].get<double>() <= 10.0)
                shared.live.setKnob (id, static_cast<int> (i), knobs[i].get<float>());
        for (size_t i = 0; i < std::min<size_t> (numLevers, levers.size()); ++i)
            if (levers[i].is_number_integer() && levers[i].get<int64_t>() >= 0 && levers[i].get<int64_t>() < 12)
                shared.live.setLever (id, static_cast<int> (i), levers[i].get<int>());
    }
    shared.settingsRevision.fetch_add (1);
    shared.heardRevision.fetch_add (1);
    shared.transportRevision.fetch_add (1);
    announce();
    return true;
}
}
