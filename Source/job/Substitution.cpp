#include "job/Substitution.h"

#include "files/Limits.h"
#include "files/Quantity.h"
#include "job/Reader.h"

namespace coldiron
{
std::string filledIn (const std::string& text, const std::map<std::string, std::string>& values,
                      std::vector<std::string>& unknown)
{
    std::string result;
    size_t from = 0;
    for (size_t open = text.find ('{'); open != std::string::npos && result.size() <= limits::filledLength;
         open = text.find ('{', from))
    {
        const auto close = text.find ('}', open);
        if (close == std::string::npos)
            break;
        const auto name = text.substr (open + 1, close - open - 1);
        result += text.substr (from, open - from);
        if (const auto found = values.find (name); found != values.end())
            result += found->second;
        else
        {
            result += text.substr (open, close - open + 1);
            unknown.push_back (name);
        }
        from = close + 1;
    }
    return result + text.substr (from);
}

Json filledIn (const Json& json, const std::map<std::string, std::string>& values, size_t& length, Diagnostics& diagnostics)
{
    Json result = json;
    if (json.kind == Json::Kind::text && length <= limits::filledLength)
    {
        std::vector<std::string> unknown;
        result.text = filledIn (json.text, values, unknown);
        length += result.text.size();
        if (length > limits::filledLength)
        {
            addDiagnostic (diagnostics, json,
                           "a rewire with its names filled in is longer than " + std::to_string (limits::filledLength)
                               + " bytes; expected so many at most");
            result.text = json.text;
        }
        for (const auto& name : unknown)
        {
            std::vector<std::string> names;
            for (const auto& [known, value] : values)
                names.push_back (known);
            const auto near = nearest (name, names);
            addDiagnostic (diagnostics, json,
                           "{" + name + "}: the rewire does not ask for \"" + name + "\""
                               + (near.empty() ? "; it asks for " + listed (names) : "; did you mean {" + near + "}?"));
        }
    }
    for (auto& item : result.items)
        item = filledIn (item, values, length, diagnostics);
    for (auto& [key, value] : result.members)
        value = filledIn (value, values, length, diagnostics);
    return result;
}
}
