#pragma once

#include "files/Diagnostics.h"

#include <filesystem>
#include <memory>
#include <string>
#include <utility>
#include <vector>

namespace coldiron
{
/** JSON text with comments as a tree that keeps the order of keys and the line of everything. */
struct Json
{
    enum class Kind { null, boolean, number, text, list, object };

    Kind kind = Kind::null;
    int line = 0;
    size_t begin = 0, end = 0;               ///< bytes of the text: a list's or an object's bracket; one behind the value
    std::shared_ptr<const std::string> file; ///< the file it came from; shared by all of that file
    bool boolean = false;
    double number = 0.0;
    std::string text;
    std::vector<Json> items;                           ///< list
    std::vector<std::pair<std::string, Json>> members; ///< object, in the file's order
    std::vector<int> memberLines;                      ///< line of each key

    const Json* find (const std::string& key) const;
    std::string kindName() const; ///< "a list", "the text \"x\"", "the number 3": what to say was found
    std::string dump() const;     ///< compact JSON text, keys in order
};

/** Reads text. Duplicate keys, depth over 64 and syntax faults go to `faults`; a syntax fault ends the file.
    @returns whether the whole text was read; false after a syntax fault */
bool parseJson (const std::string& text, const std::string& file, Json& result, Diagnostics& diagnostics);
}
