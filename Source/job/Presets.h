#pragma once

#include "files/Json.h"
#include "files/RegularFile.h"

#include <filesystem>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

namespace coldiron
{
/** Whether a name may name a preset: a-z, 0-9 and '-' alone, so that no name leads out of the folders. */
bool isPresetName (const std::string&);

/** Where presets of a kind lie: "switches" for "switch", "guitars" for "guitar"; and the way back. */
std::string presetFolderOf (const std::string& kind);
std::string presetKindOf (const std::string& folder);

/** A preset as found: read and parsed once, however often it is used. Immutable. */
struct Preset
{
    std::string label;          ///< what faults call it: its path, or "guitars/NAME, kept with the job"
    std::filesystem::path file; ///< empty: it lies in none
    std::string text;
    std::optional<Json> json; ///< none where it is no JSON
    Diagnostics faults;       ///< of its text as JSON; what it says is for those who use it to judge
};

/** Where presets come from. Asked by any thread. Folders are named by the plural: "guitars", "pickups", "switches", "tapers",
    "rewires", "starters", "jobs". */
class PresetSource
{
public:
    virtual ~PresetSource() = default;

    virtual std::shared_ptr<const Preset> find (const std::string& folder, const std::string& name) const = 0; ///< null: none
    virtual std::vector<std::string> list (const std::string& folder) const = 0;
};

/** A folder on disk: `guitars/NAME.json` and the like. A file that has changed is read again. */
class PresetFolder final : public PresetSource
{
public:
    explicit PresetFolder (std::filesystem::path);

    const std::filesystem::path& path() const { return root; }
    std::shared_ptr<const Preset> find (const std::string& folder, const std::string& name) const override;
    std::vector<std::string> list (const std::string& folder) const override;

private:
    struct Known
    {
        FileStamp stamp;
        std::shared_ptr<const Preset> preset;
    };
    std::filesystem::path root;
    mutable std::mutex mutex;
    mutable std::map<std::filesystem::path, Known> known;
};

/** Presets that travel with a state and lie in no file: key "guitars/NAME", value the text. */
class CarriedPresets final : public PresetSource
{
public:
    explicit CarriedPresets (std::map<std::string, std::string> texts);

    std::shared_ptr<const Preset> find (const std::string& folder, const std::string& name) const override;
    std::vector<std::string> list (const std::string& folder) const override;

private:
    const std::map<std::string, std::string> texts;
    mutable std::mutex mutex;
    mutable std::map<std::string, std::shared_ptr<const Preset>> known;
};

/** The sources there are, in the order they are asked; the first that has a preset wins. Readers ask this and know no others.
    Copies share what was read. */
class PresetFolders final : public PresetSource
{
public:
    PresetFolders() = default;
    explicit PresetFolders (const std::vector<std::filesystem::path>& folders);

    /** Given folders, the user's own, the shipped ones. The shipped folder is found from COLDIRON_PRESETS, beside the executable,
        installed, or in the source tree. A folder that was asked for by name and cannot be read is a fault of every reading. */
    static PresetFolders standard (const std::vector<std::filesystem::path>& extra = {});

    PresetFolders behind (std::shared_ptr<const PresetSource> first) const; ///< these, and another one asked before them
    PresetFolders behind (const std::filesystem::path& folder) const;

    std::shared_ptr<const Preset> find (const std::string& folder, const std::string& name) const override;
    std::vector<std::string> list (const std::string& folder) const override; ///< sorted, each once
    bool has (const std::string& folder, const std::string& name) const { return find (folder, name) != nullptr; }

    std::vector<std::filesystem::path> folders() const;   ///< of those that lie on disk
    std::string lookedIn() const;                         ///< where, and what to do, for people who find none
    const Diagnostics& unreadable() const { return bad; } ///< folders asked for by name

private:
    std::vector<std::shared_ptr<const PresetSource>> sources;
    std::vector<std::filesystem::path> notThere; ///< where the shipped ones were looked for in vain
    Diagnostics bad;
};

/** Parses a file's text: one fault where it is empty. Nothing after a fault that ends it. @param label  what faults call it */
std::optional<Json> parsePreset (const std::string& text, const std::string& label, const std::string& kind, Diagnostics&);

/** Whether it is an object, and its first key "coldiron": "KIND 1". @returns false where it is no object */
bool checkTag (const Json&, const std::string& kind, Diagnostics&);
}
