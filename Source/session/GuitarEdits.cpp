#include "session/GuitarEdits.h"

#include "job/Readers.h"
#include "job/Readings.h"
#include "session/JobEditor.h"

namespace coldiron
{
namespace
{
const PickupPart* pickupOf (const Job& job, const std::string& part)
{
    const auto* found = job.guitar.harness.find (part);
    return found != nullptr ? found->as<PickupPart>() : nullptr;
}

std::string pickupPath (const std::string& part) { return "/parts/" + part + "/pickup"; }

/** What the job itself says of that pickup; null where only the guitar's preset does. */
JobTree ownWords (const std::string& jobText, const std::string& part)
{
    const JobTree tree = parseJobTree (jobText);
    const JobTree::json_pointer at ("/guitar" + pickupPath (part));
    return tree.is_object() && tree.contains ("guitar") && tree["guitar"].is_object() && tree.contains (at) ? tree.at (at)
                                                                                                            : JobTree();
}

/** A preset by its name; nullopt where it cannot be read. */
std::optional<Resolved> presetOf (const JobEditor& editor, const std::string& kind, const std::string& preset)
{
    Diagnostics ignored;
    const auto presets = editor.presets();
    Library library (presets, ignored);
    return library.resolve (kind, preset);
}

/** Whether the guitar's preset describes the pickup by an object, which an override merges with. */
bool presetHasObject (const JobEditor& editor, const std::string& part)
{
    const auto job = editor.job();
    if (job->guitar.preset.empty())
        return false;
    const auto guitar = presetOf (editor, "guitar", job->guitar.preset);
    const Json* at = guitar ? guitar->json.find ("parts") : nullptr;
    at = at != nullptr ? at->find (part) : nullptr;
    at = at != nullptr ? at->find ("pickup") : nullptr;
    return at != nullptr && at->kind == Json::Kind::object;
}

/** What belongs to the place and not to the pickup's kind. */
void keepPlace (JobTree& pickup, const PickupPart& now)
{
    if (now.pickup.slantMm != 0.0 && ! pickup.contains ("slant_mm"))
        pickup["slant_mm"] = now.pickup.slantMm;
}
}

JobEdit refused (const std::string& words)
{
    JobEdit edit;
    edit.refusal = words;
    return edit;
}

JobEdit guitarEdit (const std::string& jobText, const std::vector<std::pair<std::string, JobTree>>& changes,
                    const std::string& name)
{
    JobEdit edit { "/guitar", {}, name, {}, {} };
    const JobTree tree = parseJobTree (jobText);
    if (! tree.is_object() || ! tree.contains ("guitar"))
    {
        edit.refusal = "the job names no guitar";
        return edit;
    }
    JobTree guitar = tree["guitar"];
    if (guitar.is_string())
        guitar = JobTree { { "like", guitar } };
    for (const auto& [pointer, value] : changes)
        if (edit.refusal = setAt (guitar, pointer, value, false); ! edit.refusal.empty())
            return edit;
    edit.json = guitar.dump();
    return edit;
}

JobEdit pickupChoice (const JobEditor& editor, const std::string& part, const std::string& preset)
{
    const auto job = editor.job();
    const auto* now = pickupOf (*job, part);
    if (now == nullptr)
        return refused ("the guitar has no pickup " + part);
    JobTree pickup = preset;
    if (now->pickup.slantMm != 0.0)
    {
        pickup = JobTree { { "like", preset } };
        keepPlace (pickup, *now);
    }
    return guitarEdit (editor.text(), { { pickupPath (part), pickup } }, "Another " + part + " pickup");
}

JobEdit pickupEdit (const JobEditor& editor, const std::string& part, const JobTree& values, const std::string& name)
{
    const auto job = editor.job();
    const auto* now = pickupOf (*job, part);
    if (now == nullptr)
        return refused ("the guitar has no pickup " + part);
    const auto& preset = job->guitar.harness.find (part)->preset;
    JobTree pickup = ownWords (editor.text(), part);
    if (pickup.is_string())
        pickup = JobTree { { "like", pickup } };
    else if (! pickup.is_object())
        pickup = presetHasObject (editor, part) || preset.empty() ? JobTree::object() : JobTree { { "like", preset } };
    pickup.merge_patch (values);
    return guitarEdit (editor.text(), { { pickupPath (part), pickup } }, name);
}

Pickup genericPickup (const JobEditor& editor, const std::string& part)
{
    const auto job = editor.job();
    const auto* now = pickupOf (*job, part);
    if (now == nullptr)
        return {};
    const auto& preset = job->guitar.harness.find (part)->preset;
    if (preset.empty())
        return now->pickup;
    const auto resolved = presetOf (editor, "pickup", preset);
    if (! resolved)
        return now->pickup;
    Diagnostics diagnostics;
    auto pickup = readPickup (resolved->json, diagnostics);
    return diagnostics.empty() && pickup.coils.size() == now->pickup.coils.size() ? pickup : now->pickup;
}

JobEdit pickupFromText (const JobEditor& editor, const std::string& part, const std::string& text, const std::string& file)
{
    const auto job = editor.job();
    const auto* now = pickupOf (*job, part);
    if (now == nullptr)
        return refused ("the guitar has no pickup " + part);
    Diagnostics diagnostics;
    if (! readPickupText (text, file, editor.presets(), diagnostics))
        return refused (diagnostics.empty() ? file + " holds no pickup" : diagnostics.front().text());
    JobTree pickup = parseJobTree (text);
    pickup.erase ("coldiron");
    keepPlace (pickup, *now);
    return guitarEdit (editor.text(), { { pickupPath (part), pickup } }, "The " + part + " pickup from " + file);
}
}
