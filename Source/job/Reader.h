#pragma once

#include "files/Field.h"
#include "files/Json.h"

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace coldiron
{
/** Adds a fault at a place in a file, once: a preset used twice is wrong once. */
void addDiagnostic (Diagnostics&, const Json& at, const std::string& message);
void addDiagnostic (Diagnostics&, const std::string& file, int line, const std::string& message);

/** All of a file; nothing after a fault. @param what  what it should be, to people: "a job" */
std::optional<std::string> wholeText (const std::filesystem::path&, const std::string& what, std::uint64_t mostBytes,
                                      Diagnostics&);

/** Reads one object: typed getters that say what was found and what was expected, and after them the unknown keys.

    Every getter notes its key as known; finish() reports the others with the nearest known name. */
class ObjectReader
{
public:
    /** @param what  the object's name to people, e.g. "a coil" */
    ObjectReader (const Json&, std::string what, Diagnostics&);

    bool isObject() const { return node.kind == Json::Kind::object; }
    const Json& json() const { return node; }

    /** The value of a key, or null; notes the key. */
    const Json* value (const std::string& key);
    const Json* needed (const std::string& key, const std::string& expected);

    /** The number of a field, in base units and within its range; nothing where it is left out or wrong. */
    std::optional<double> given (const Field&);

    /** The same, or the field's standard; that a needed one is left out is a fault. */
    double quantity (const Field&);

    /** The same of one that may be left out for something else. */
    double quantity (const Field&, double standard);

    std::string text (const std::string& key, const std::string& standard = {});
    bool flag (const std::string& key, bool standard = false);
    std::vector<std::string> texts (const std::string& key);

    /** One of a few words. */
    std::string word (const std::string& key, const std::vector<std::string>& allowed, const std::string& standard);

    void fault (const Json& at, const std::string& message) { addDiagnostic (diagnostics, at, message); }
    void finish();

private:
    const Json& node;
    std::string what;
    Diagnostics& diagnostics;
    std::vector<std::string> known;
};

/** A quantity in a value of its own; nothing after a fault. @param name  how to call it to people */
std::optional<double> readQuantity (const Json&, const std::string& name, const Field&, Diagnostics&);

/** "from 100 to 100M ohm" */
std::string rangeInWords (const Field&);

/** A list of texts; faults name the item. */
std::vector<std::string> readTexts (const Json&, const std::string& name, Diagnostics&);
}
