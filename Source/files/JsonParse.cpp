// The way in: text with comments becomes values that know their lines.

#include "files/Json.h"
#include "files/JsonCounts.h"
#include "files/Printable.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <atomic>
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
    TreeMaker (const char* textBegin, Json& root, std::shared_ptr<const std::string> fileName, Diagnostics& faultList,
               const JsonLimits& limitsOfText)
        : place (textBegin), first (textBegin), counted (textBegin), top (root), file (std::move (fileName)),
          diagnostics (faultList), most (limitsOfText)
    {
    }

    const char* place;

    bool null() { return put (Json::Kind::null, false) != nullptr; }

    bool boolean (bool value)
    {
        auto* target = put (Json::Kind::boolean, false);
        return target != nullptr && (target->boolean = value, true);
    }

    bool number_integer (std::int64_t value) { return number (static_cast<double> (value), true); }
    bool number_unsigned (std::uint64_t value) { return number (static_cast<double> (value), true); }
    bool number_float (double value, const std::string&) { return number (value, false); }

    bool string (std::string& value)
    {
        auto* target = put (Json::Kind::text, false);
        if (target == nullptr)
            return false;
        if (value.size() > most.textLength)
        {
            diagnostics.push_back ({ *file, target->line,
                                     "found a text of " + std::to_string (value.size()) + " bytes, expected "
                                         + std::to_string (most.textLength) + " at most" });
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
        if (parent.members.size() >= most.keys)
            return tooMany (line, std::to_string (most.keys) + " keys in one object");
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
    const JsonLimits& most;
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
        if (++values > most.values)
        {
            tooMany (lineAt (place), std::to_string (most.values) + " values in one file");
            return nullptr;
        }
        auto* target = &top;
        if (! stack.empty() && stack.back()->kind == Json::Kind::object)
            target = &stack.back()->members.back().second;
        else if (! stack.empty())
            target = &stack.back()->items.emplace_back();
        target->kind = kind;
        target->line = lineAt (readOneFurther ? place - 1 : place);
        target->end = static_cast<uint32_t> (place - first) - (readOneFurther ? 1 : 0);
        target->file = file;
        return target;
    }

    bool number (double value, bool isWhole)
    {
        auto* target = put (Json::Kind::number, true);
        if (target == nullptr)
            return false;
        target->number = value;
        target->isWhole = isWhole;
        return true;
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
        stack.back()->end = static_cast<uint32_t> (place - first);
        stack.pop_back();
        keys.pop_back();
        return true;
    }
};

std::atomic<uint64_t> parsedTexts { 0 };
}

bool parseJson (const std::string& text, const std::string& file, Json& result, Diagnostics& diagnostics, const JsonLimits& most)
{
    ++parsedTexts;
    result = {};
    if (text.size() > most.bytes)
    {
        diagnostics.push_back ({ file, 0, "larger than " + std::to_string (most.bytes >> 20) + " MB; no file of ours is" });
        return false;
    }
    TreeMaker maker (text.data(), result, std::make_shared<const std::string> (file), diagnostics, most);
    const TrackingIterator first { text.data(), &maker.place }, last { text.data() + text.size(), &maker.place };
    return nlohmann::json::sax_parse (first, last, &maker, nlohmann::json::input_format_t::json, true, true);
}

uint64_t textsParsed() { return parsedTexts.load(); }
}
