#include "files/Json.h"

#include "files/Printable.h"

#include <algorithm>

namespace coldiron
{
Json::Json (const std::vector<std::string>& texts) : kind (Kind::list), items (texts.begin(), texts.end()) {}

Json::Json (const std::map<std::string, std::string>& texts)
    : kind (Kind::object), members (texts.begin(), texts.end()), memberLines (texts.size(), 0)
{
}

Json Json::object (std::vector<Member> members)
{
    Json result;
    result.kind = Kind::object;
    result.memberLines.assign (members.size(), 0);
    result.members = std::move (members);
    return result;
}

Json Json::list (std::vector<Json> items)
{
    Json result;
    result.kind = Kind::list;
    result.items = std::move (items);
    return result;
}

const Json* Json::find (std::string_view key) const
{
    const auto found = std::find_if (members.begin(), members.end(), [&] (const auto& member) { return member.first == key; });
    return found == members.end() ? nullptr : &found->second;
}

Json* Json::find (std::string_view key) { return const_cast<Json*> (std::as_const (*this).find (key)); }

const Json* Json::find (const std::vector<std::string>& path) const
{
    const auto* at = this;
    for (const auto& key : path)
        if (at = at->find (key); at == nullptr)
            return nullptr;
    return at;
}

std::string Json::textAt (std::string_view key) const
{
    const auto* found = find (key);
    return found != nullptr && found->isText() ? found->text : std::string();
}

Json& Json::operator[] (std::string_view key)
{
    if (! isObject())
        *this = object();
    if (auto* found = find (key))
        return *found;
    memberLines.push_back (0);
    return members.emplace_back (key, Json()).second;
}

bool Json::set (const std::vector<std::string>& path, Json value)
{
    const auto* at = this;
    for (const auto& key : path) // nothing is changed before the whole path is known to exist
        if (at != nullptr)
        {
            if (! at->isObject() && ! at->isNull())
                return false;
            at = at->find (key);
        }
    auto* place = this;
    for (const auto& key : path)
        place = &(*place)[key];
    *place = std::move (value);
    return true;
}

bool Json::erase (std::string_view key)
{
    const auto found = std::find_if (members.begin(), members.end(), [&] (const auto& member) { return member.first == key; });
    if (found == members.end())
        return false;
    memberLines.erase (memberLines.begin() + (found - members.begin()));
    members.erase (found);
    return true;
}

void Json::add (Json item)
{
    if (! isList())
        *this = list();
    items.push_back (std::move (item));
}

void Json::merge (const Json& patch)
{
    if (! patch.isObject())
    {
        *this = patch;
        return;
    }
    if (! isObject())
        *this = object();
    for (const auto& [key, value] : patch.members)
        if (value.isNull())
            erase (key);
        else
            (*this)[key].merge (value);
}

bool Json::operator== (const Json& other) const
{
    if (kind != other.kind)
        return false;
    switch (kind)
    {
    case Kind::null: return true;
    case Kind::boolean: return boolean == other.boolean;
    case Kind::number: return number == other.number;
    case Kind::text: return text == other.text;
    case Kind::list: return items == other.items;
    case Kind::object: return members == other.members;
    }
    return false;
}

std::string Json::kindName() const
{
    switch (kind)
    {
    case Kind::null: return "null";
    case Kind::boolean: return boolean ? "true" : "false";
    case Kind::number: return "the number " + *plain();
    case Kind::text: return "the text \"" + (text.size() > 60 ? shortened (text, 60) + "..." : text) + "\"";
    case Kind::list: return "a list";
    case Kind::object: return "an object";
    }
    return {};
}
}
