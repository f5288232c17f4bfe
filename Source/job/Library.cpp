#include "job/Library.h"

#include "files/Quantity.h"
#include "job/Reader.h"

#include <algorithm>

namespace coldiron
{
Json merged (const Json& base, const Json& over)
{
    if (base.kind != Json::Kind::object || over.kind != Json::Kind::object)
        return over;
    Json result = base;
    result.line = over.line;
    result.file = over.file;
    for (size_t i = 0; i < over.members.size(); ++i)
    {
        const auto& [key, value] = over.members[i];
        if (key == "like")
            continue;
        const auto found =
            std::find_if (result.members.begin(), result.members.end(), [&k = key] (const auto& m) { return m.first == k; });
        const auto index = found - result.members.begin();
        if (value.kind == Json::Kind::null)
        {
            if (found != result.members.end())
            {
                result.members.erase (found);
                result.memberLines.erase (result.memberLines.begin() + index);
            }
        }
        else if (found != result.members.end())
        {
            // An object that is like another preset is a value of its own: nothing of what it takes the place of stays.
            found->second = value.find ("like") != nullptr ? value : merged (found->second, value);
            result.memberLines[static_cast<size_t> (index)] = over.memberLines[i];
        }
        else
        {
            result.members.emplace_back (key, value);
            result.memberLines.push_back (over.memberLines[i]);
        }
    }
    return result;
}

std::optional<Json> Library::preset (const std::string& kind, const std::string& name, const Json& at, int depth)
{
    const auto folder = presetFolderOf (kind);
    const auto found = folders.find (folder, name);
    if (found == nullptr)
    {
        const auto names = folders.list (folder);
        const auto near = nearest (name, names);
        addDiagnostic (diagnostics, at,
                       "there is no " + kind + " preset \"" + name + "\""
                           + (! near.empty()          ? "; did you mean \"" + near + "\"?"
                              : ! isPresetName (name) ? "; a name has only a-z, 0-9 and -"
                              : names.empty()         ? "; no presets were found: " + folders.lookedIn()
                                                      : "; there are " + listed (names, 12)));
        return std::nullopt;
    }
    if (const auto known = cache.find (found->label); known != cache.end())
    {
        if (known->second.isFaulty)
            diagnostics.again();
        return known->second.json;
    }
    const auto before = diagnostics.raised();
    for (const auto& fault : found->faults)
        diagnostics.push_back (fault);
    auto json = found->json;
    if (json && ! checkTag (*json, kind, diagnostics))
        json.reset();
    if (json)
    {
        std::string ignored;
        json = withLike (kind, std::move (*json), ignored, depth);
    }
    cache[found->label] = { json, diagnostics.raised() != before };
    return json;
}

std::optional<Json> Library::withLike (const std::string& kind, Json object, std::string& name, int depth)
{
    const auto* like = object.find ("like");
    if (like == nullptr)
        return object;
    if (like->kind != Json::Kind::text)
    {
        addDiagnostic (diagnostics, *like,
                       "\"like\": found " + like->kindName() + ", expected the name of a " + kind + " preset");
        return std::nullopt;
    }
    if (depth > 8)
    {
        addDiagnostic (diagnostics, *like,
                       "\"like\": a preset is like another, and so on more than 8 deep; do they go round in a circle?");
        return std::nullopt;
    }
    const auto base = preset (kind, like->text, *like, depth + 1);
    if (! base)
        return std::nullopt;
    name = like->text;
    return merged (*base, object);
}

std::optional<Resolved> Library::resolve (const std::string& kind, const Json& value)
{
    if (value.kind == Json::Kind::text)
    {
        auto json = preset (kind, value.text, value, 0);
        if (! json)
            return std::nullopt;
        return Resolved { std::move (*json), value.text };
    }
    if (value.kind != Json::Kind::object)
    {
        addDiagnostic (diagnostics, value,
                       "found " + value.kindName() + ", expected the name of a " + kind + " preset or an object { ... }");
        return std::nullopt;
    }
    if (value.find ("coldiron") != nullptr)
        checkTag (value, kind, diagnostics);
    std::string name;
    auto json = withLike (kind, value, name, 0);
    if (! json)
        return std::nullopt;
    return Resolved { std::move (*json), name };
}
}
