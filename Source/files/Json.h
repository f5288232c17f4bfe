#pragma once

#include "files/Diagnostics.h"
#include "files/Limits.h"

#include <concepts>
#include <cstdint>
#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace coldiron
{
/** A JSON value: read from text with comments, edited in place and written again. It keeps the order of keys, and of what was
    read the line. The only JSON value there is: the library that parses text shows in Json.cpp alone.

    A value is what `kind` says; the other fields mean nothing. Reaching for what is not there never throws. */
struct Json
{
    enum class Kind { null, boolean, number, text, list, object };
    using Member = std::pair<std::string, Json>;

    Json() = default; ///< null
    Json (double value) : kind (Kind::number), number (value) {}
    Json (std::string value) : kind (Kind::text), text (std::move (value)) {}
    Json (std::string_view value) : Json (std::string (value)) {}
    Json (const char* value) : Json (std::string (value)) {}
    Json (const std::vector<std::string>& texts);
    Json (const std::map<std::string, std::string>& texts);
    template <std::same_as<bool> T>
    Json (T value) : kind (Kind::boolean), boolean (value)
    {
    } // no pointer is a bool
    template <std::integral T>
    requires (! std::same_as<T, bool>) Json (T value) : kind (Kind::number), isWhole (true), number (static_cast<double> (value))
    {
    }

    static Json object (std::vector<Member> = {});
    static Json list (std::vector<Json> = {});

    Kind kind = Kind::null;
    bool boolean = false;
    bool isWhole = false;        ///< a number that was written without a point and stays so
    int line = 0;                ///< from 1, of the text it was read from; 0: made here
    uint32_t begin = 0, end = 0; ///< bytes of the text: a list's or an object's bracket; one behind the value
    double number = 0.0;
    std::shared_ptr<const std::string> file; ///< the file it came from; shared by all of that file
    std::string text;
    std::vector<Json> items;      ///< list
    std::vector<Member> members;  ///< object, in the file's order
    std::vector<int> memberLines; ///< line of each key

    bool isNull() const { return kind == Kind::null; }
    bool isNumber() const { return kind == Kind::number; }
    bool isText() const { return kind == Kind::text; }
    bool isList() const { return kind == Kind::list; }
    bool isObject() const { return kind == Kind::object; }

    const Json* find (std::string_view key) const;
    Json* find (std::string_view key);
    const Json* find (const std::vector<std::string>& path) const; ///< through objects; an empty path: this

    /** The text under a key; empty where there is none. */
    std::string textAt (std::string_view key) const;

    /** The value of a key, added at the end where it is new. What was null becomes an object; anything else that is none gives way
        to an empty one. */
    Json& operator[] (std::string_view key);

    /** Sets what stands at the end of a path of keys, objects made on the way.
        @returns false, and nothing changed, where something on the way is neither an object nor null */
    bool set (const std::vector<std::string>& path, Json value);

    bool erase (std::string_view key); ///< @returns whether it was there
    void add (Json item);              ///< to a list; what is no list becomes one

    /** What follows over what stands: objects merge deeply, all else replaces, null takes the key away (RFC 7396). */
    void merge (const Json& patch);

    /** The same value, wherever it stands: lines are not compared, the order of keys is. */
    bool operator== (const Json&) const;

    /** A text as it is, a number in its shortest form: what may fill in for a name. Nothing for all else. */
    std::optional<std::string> plain() const;

    std::string kindName() const; ///< "a list", "the text \"x\"", "the number 3": what to say was found

    /** Compact text, keys in order, each number in its shortest form: 650.0 is 650. What is no UTF-8 is replaced. */
    std::string dump() const;

    /** The text as files and commands write it: a whole number as one, any other with its point, 650.0. What is no number
        is null. @param indent  blanks a level; 0: one line, compact */
    std::string write (int indent = 0) const;
};

/** What a text may hold; more is a fault. */
struct JsonLimits
{
    std::uint64_t bytes = limits::fileBytes;
    size_t values = limits::values, keys = limits::keys, textLength = limits::textLength;
};

/** Reads text. Duplicate keys, depth over 64 and syntax faults go to `faults`; a syntax fault ends the file.
    @returns whether the whole text was read; false after a syntax fault */
bool parseJson (const std::string& text, const std::string& file, Json& result, Diagnostics&, const JsonLimits& = {});
}
