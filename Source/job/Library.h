#pragma once

#include "job/Job.h"

#include <map>
#include <optional>
#include <string>

namespace coldiron
{
/** A value that was resolved: what it says in whole, and the preset that it is, or is like. */
struct Resolved
{
    Json json;
    std::string preset; ///< empty for an object of its own
};

/** The preset files of one reading: each read once, its faults reported once. */
class Library
{
public:
    Library (const PresetFolders& presetFolders, Diagnostics& faultList) : folders (presetFolders), diagnostics (faultList)
    {
        for (const auto& fault : folders.unreadable())
            diagnostics.push_back (fault);
    }

    /** A name (a preset), an object in line, or an object with "like". Kinds: "pickup", "switch", "taper", "guitar",
        "rewire". Nothing after a fault. */
    std::optional<Resolved> resolve (const std::string& kind, const Json& value);

    const PresetFolders& presetFolders() const { return folders; }
    Diagnostics& faultList() { return diagnostics; }

private:
    const PresetFolders& folders;
    Diagnostics& diagnostics;

    struct Known
    {
        std::optional<Json> json;
        bool isFaulty = false; ///< its faults are listed; every use of it raises them again
    };
    std::map<std::string, Known> cache; ///< by label

    std::optional<Json> preset (const std::string& kind, const std::string& name, const Json& at, int depth);
    std::optional<Json> withLike (const std::string& kind, Json object, std::string& name, int depth);
};

/** What follows over what it is like: objects merge deeply, all else replaces, null takes the key away. An object with a
    "like" of its own replaces too. */
Json merged (const Json& base, const Json& over);
}
