#include "files/Json.h"

#include "files/Limits.h"
#include "files/Printable.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <charconv>
#include <set>

namespace coldiron
{
namespace
{
/** Walks the text and leaves its place where others can read it: the parser tells no positions with its events. */
struct TrackingIterator
{
    using iterator_category = std::forward_iterator_tag;
    using value_type = char;
    using difference_type = std::ptrdiff_t;
    using pointer = const char*;
    using reference = const char&;

    const char* at = nullptr;
    const char** place = nullptr;

    reference operator*() const { return *at; }
    TrackingIterator& operator++()
    {
        ++at;
        *place = at;
        return *this;
    }
    TrackingIterator operator++ (int)
    {
        auto before = *this;
        ++*this;
        return before;
    }
    bool operator== (const TrackingIterator& other) const { return at == other.at; }
    bool operator!= (const TrackingIterator& other) const { return at != other.at; }
};

class TreeMaker
{
public:
    TreeMaker (const char* textBegin, Json& root, std::shared_ptr<const std::string> fileName, Diagnostics& faultList)
        : place (textBegin), first (textBegin), counted (textBegin), top (root), file (std::move (fileName)),
          diagnostics (faultList)
    {
    }

    const char* place;

    bool null() { return put (Json::Kind::null, false) != nullptr; }

    bool boolean (bool value)
    {
        auto* target = put (Json::Kind::boolean, false);
        return target != nullptr && (target->boolean = value, true);
    }

    bool number_integer (std::int64_t value) { return number (static_cast<double> (value)); }
    bool number_unsigned (std::uint64_t value) { return number (static_cast<double> (value)); }
    bool number_float (double value, const std::string&) { return number (value); }

    bool string (std::string& value)
    {
        auto* target = put (Json::Kind::text, false);
        if (target == nullptr)
            return false;
        if (value.size() > limits::textLength)
        {
            diagnostics.push_back ({ *file, target->line,
                                     "found a text of " + std::to_string (value.size()) + " bytes, expected "
                                         + std::to_string (limits::textLength) + " at most" });
            value = shortened (value, 100);
        }
        target->text = std::move (value);
        return true;
    }

    bool binary (std::vector<std::uint8_t>&) { return false; }

    bool start_object (size_t) { return open (Json::Kind::object); }
    bool start_array (size_t) { return open (Json::Kind::list); }
    bool end_object() { return close(); }
    bool end_array() { return close(); }

    bool key (std::string& name)
    {
        auto& parent = *stack.back();
        const int line = lineAt (place);
        if (parent.members.size() >= limits::keys)
            return tooMany (line, std::to_string (limits::keys) + " keys in one object");
        if (! keys.back().insert (name).second)
            diagnostics.push_back ({ *file, line, "the key \"" + name + "\" is here twice in one object; keep one of the two" });
        parent.members.emplace_back (std::move (name), Json {});
        parent.memberLines.push_back (line);
        return true;
    }

    bool parse_error (size_t, const std::string&, const nlohmann::json::exception& error)
    {
        std::string why = error.what();
        if (const auto column = why.find (", column "); column != std::string::npos)
            if (const auto colon = why.find (": ", column); colon != std::string::npos)
                why = why.substr (colon + 2);
        if (const auto bracket = why.find ("] "); why.starts_with ("[json.") && bracket != std::string::npos)
            why = why.substr (bracket + 2);
        diagnostics.push_back (
            { *file, lineAt (place),
              "this is not JSON: " + why + "; look for a missing comma, quote or bracket here or just before" });
        return false;
    }

private:
    const char* first;
    const char* counted;
    int linesBefore = 1;
    Json& top;
    std::shared_ptr<const std::string> file;
    Diagnostics& diagnostics;
    std::vector<Json*> stack;
    std::vector<std::set<std::string>> keys;
    size_t values = 0;

    bool tooMany (int line, const std::string& what)
    {
        diagnostics.push_back ({ *file, line, "more than " + what + ", expected so many at most; no file of ours has" });
        return false;
    }

    /** The line of a place; places only move on. */
    int lineAt (const char* where)
    {
        if (where > counted)
        {
            linesBefore += static_cast<int> (std::count (counted, where, '\n'));
            counted = where;
        }
        return linesBefore;
    }

    /** A number ends only where the next character is read, which may be the end of its line: that one is not counted.
        Null where there are too many values. */
    Json* put (Json::Kind kind, bool readOneFurther)
    {
        if (++values > limits::values)
        {
            tooMany (lineAt (place), std::to_string (limits::values) + " values in one file");
            return nullptr;
        }
        auto* target = &top;
        if (! stack.empty() && stack.back()->kind == Json::Kind::object)
            target = &stack.back()->members.back().second;
        else if (! stack.empty())
            target = &stack.back()->items.emplace_back();
        target->kind = kind;
        target->line = lineAt (readOneFurther ? place - 1 : place);
        target->end = static_cast<size_t> (place - first) - (readOneFurther ? 1 : 0);
        target->file = file;
        return target;
    }

    bool number (double value)
    {
        auto* target = put (Json::Kind::number, true);
        return target != nullptr && (target->number = value, true);
    }

    bool open (Json::Kind kind)
    {
        auto* target = put (kind, false);
        if (target == nullptr)
            return false;
        if (stack.size() >= limits::depth)
        {
            diagnostics.push_back (
                { *file, target->line, "nested more than " + std::to_string (limits::depth) + " deep; no file of ours is" });
            return false;
        }
        target->begin = target->end - 1;
        stack.push_back (target);
        keys.emplace_back();
        return true;
    }

    bool close()
    {
        stack.back()->end = static_cast<size_t> (place - first);
        stack.pop_back();
        keys.pop_back();
        return true;
    }
};

std::string numberText (double value)
{
    char buffer[40];
    const auto end = std::to_chars (buffer, buffer + sizeof buffer, value).ptr;
    return { buffer, end };
}
}

const Json* Json::find (const std::string& key) const
{
    const auto found = std::find_if (members.begin(), members.end(), [&] (const auto& member) { return member.first == key; });
    return found == members.end() ? nullptr : &found->second;
}

std::string Json::kindName() const
{
    switch (kind)
    {
    case Kind::null: return "null";
    case Kind::boolean: return boolean ? "true" : "false";
    case Kind::number: return "the number " + numberText (number);
    case Kind::text: return "the text \"" + (text.size() > 60 ? shortened (text, 60) + "..." : text) + "\"";
    case Kind::list: return "a list";
    case Kind::object: return "an object";
    }
    return {};
}

std::string Json::dump() const
{
    std::string result;
    switch (kind)
    {
    case Kind::null: return "null";
    case Kind::boolean: return boolean ? "true" : "false";
    case Kind::number: return numberText (number);
    case Kind::text: return nlohmann::json (text).dump (-1, ' ', false, nlohmann::json::error_handler_t::replace);
    case Kind::list:
        for (const auto& item : items)
            result += (result.empty() ? "" : ",") + item.dump();
        return "[" + result + "]";
    case Kind::object:
        for (const auto& [key, value] : members)
            result += (result.empty() ? "" : ",")
                      + nlohmann::json (key).dump (-1, ' ', false, nlohmann::json::error_handler_t::replace) + ":" + value.dump();
        return "{" + result + "}";
    }
    return result;
}

bool parseJson (const std::string& text, const std::string& file, Json& result, Diagnostics& diagnostics)
{
    result = {};
    if (text.size() > limits::fileBytes)
    {
        diagnostics.push_back ({ file, 0, "larger than 8 MB; no file of ours is" });
        return false;
    }
    TreeMaker maker (text.data(), result, std::make_shared<const std::string> (file), diagnostics);
    const TrackingIterator first { text.data(), &maker.place }, last { text.data() + text.size(), &maker.place };
    return nlohmann::json::sax_parse (first, last, &maker, nlohmann::json::input_format_t::json, true, true);
}
}
