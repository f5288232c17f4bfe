#pragma once

#include "job/Job.h"

#include <map>
#include <optional>
#include <string>

namespace coldiron
{
/** Whether a name may name a preset: a-z, 0-9 and '-' alone, so that no name leads out of the folders. */
bool isPresetName (const std::string&);

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
        for (const auto& fault : folders.unreadable)
            diagnostics.push_back (fault);
    }

    /** A name (a preset), an object in line, or an object with "like". Kinds: "pickup", "switch", "taper", "guitar",
        "rewire". Nothing after a fault. */
    std::optional<Resolved> resolve (const std::string& kind, const Json& value);

    /** Reads a file and checks its first key. Nothing after a fault. */
    std::optional<Json> readFile (const std::filesystem::path&, const std::string& kind);

    /** The same of a text. @param name  for faults */
    std::optional<Json> readText (const std::string& text, const std::string& name, const std::string& kind);

    /** Checks "coldiron": "KIND 1". */
    void checkVersion (const Json&, const std::string& kind, bool mustBeThere);

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
    std::map<std::string, Known> cache;

    std::optional<Json> preset (const std::string& kind, const std::string& name, const Json& at, int depth);
    std::optional<Json> withLike (const std::string& kind, Json object, std::string& name, int depth);
};

/** What follows over what it is like: objects merge deeply, all else replaces, null takes the key away. An object with a
    "like" of its own replaces too. */
Json merged (const Json& base, const Json& over);
}
