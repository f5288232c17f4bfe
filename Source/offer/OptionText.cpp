#include "offer/OptionText.h"

#include "files/JsonText.h"

#include <cmath>

namespace coldiron
{
namespace
{
/** A knob as a job has it. */
Json roundedNumber (double value)
{
    Json json (std::round (value * 1e4) / 1e4);
    json.isWhole = json.number == std::round (json.number);
    return json;
}

std::string rewireText (const std::pair<std::string, std::map<std::string, std::string>>& rewire)
{
    std::string text = "{ \"use\": " + quotedJson (rewire.first);
    for (const auto& [ask, value] : rewire.second)
        text += ", " + quotedJson (ask) + ": " + quotedJson (value);
    return text + " }";
}

std::string settingText (const Setting& setting)
{
    std::string text;
    for (const auto& [name, value] : setting.knobs)
        text += (text.empty() ? "" : ", ") + quotedJson (name) + ": " + roundedNumber (value).write();
    for (const auto& [name, position] : setting.levers)
        text += (text.empty() ? "" : ", ") + quotedJson (name) + ": " + quotedJson (position);
    return "{ " + text + " }";
}

/** The blanks that the line of a place begins with. */
std::string indentAt (const std::string& text, size_t place)
{
    const auto newline = place == 0 ? std::string::npos : text.rfind ('\n', place - 1);
    const auto begin = newline == std::string::npos ? 0 : newline + 1;
    const auto end = text.find_first_not_of (" \t", begin);
    return text.substr (begin, std::min (end, place) - begin);
}

/** Puts members at the end of an object: a comma behind its last value, the members before its bracket, so that a comment
    behind the last value stays with it. */
std::string withMembers (const std::string& text, const Json& object, const std::vector<std::string>& members,
                         const std::string& indent, const std::string& newline)
{
    const auto bracket = object.end - 1;
    const auto lineEnd = text.find_last_not_of (" \t", bracket - 1);
    const bool ownLine = lineEnd != std::string::npos && text[lineEnd] == '\n';
    const auto place = ownLine ? lineEnd + 1 : bracket;
    std::string result = text.substr (0, place);
    if (! ownLine)
    {
        while (result.ends_with (' ') || result.ends_with ('\t'))
            result.pop_back();
        result += newline;
    }
    for (size_t i = 0; i < members.size(); ++i)
        result += indent + members[i] + (i + 1 < members.size() ? "," : "") + newline;
    result += ownLine ? text.substr (place) : indentAt (text, object.begin) + text.substr (bracket);
    if (! object.members.empty())
        result.insert (object.members.back().second.end, ",");
    return result;
}

std::string memberIndent (const std::string& text, const Json& object)
{
    if (! object.members.empty())
    {
        const auto& last = object.members.back().second;
        const auto start = last.kind == Json::Kind::object || last.kind == Json::Kind::list ? last.begin : last.end;
        const auto indent = indentAt (text, start);
        const auto line = text.rfind ('\n', start);
        if (line != std::string::npos && line > object.begin) // it begins a line of its own
            return indent;
    }
    return indentAt (text, object.begin) + "  ";
}
}

std::vector<std::string> freeLetters (const std::set<std::string>& taken)
{
    std::vector<std::string> letters;
    for (char c = 'A'; c <= 'H'; ++c)
        if (taken.count (std::string (1, c)) == 0)
            letters.emplace_back (1, c);
    return letters;
}

std::string optionText (const StarterOption& option, const std::optional<std::string>& indent)
{
    const std::string gap = indent ? "," + *indent + "  " : ", ";
    std::string text = "{ \"name\": " + quotedJson (option.name);
    if (! option.rewires.empty())
    {
        text += gap + "\"rewires\": [ ";
        for (size_t i = 0; i < option.rewires.size(); ++i)
            text += (i == 0 ? "" : indent ? "," + *indent + "               " : ", ") + rewireText (option.rewires[i]);
        text += " ]";
    }
    if (! (option.setting == Setting()))
        text += gap + "\"setting\": " + settingText (option.setting);
    return text + " }";
}

Json optionAsJson (const StarterOption& option)
{
    auto json = Json::object ({ { "name", option.name } });
    for (const auto& [preset, arguments] : option.rewires)
    {
        auto use = Json::object ({ { "use", preset } });
        for (const auto& [ask, value] : arguments)
            use[ask] = value;
        json["rewires"].add (std::move (use));
    }
    for (const auto& [name, value] : option.setting.knobs)
        json["setting"][name] = roundedNumber (value);
    for (const auto& [name, position] : option.setting.levers)
        json["setting"][name] = position;
    return json;
}

std::optional<OptionsAdded> withOptions (const std::string& jobText, const std::vector<StarterOption>& options)
{
    Json job;
    Diagnostics ignored;
    if (! parseJson (jobText, {}, job, ignored) || job.kind != Json::Kind::object)
        return std::nullopt;
    const auto* held = job.find ("options");
    if (held != nullptr && held->kind != Json::Kind::object)
        return std::nullopt;
    std::set<std::string> taken;
    if (held != nullptr)
        for (const auto& [letter, option] : held->members)
            taken.insert (letter);
    const auto letters = freeLetters (taken);
    OptionsAdded added { jobText, {}, options.size() - std::min (options.size(), letters.size()) };
    if (options.size() == added.left)
        return added;

    const std::string newline = jobText.find ("\r\n") != std::string::npos ? "\r\n" : "\n";
    const auto outer = memberIndent (jobText, job);
    const auto indent = held != nullptr ? memberIndent (jobText, *held) : outer + "  ";
    std::vector<std::string> members;
    for (size_t i = 0; i + added.left < options.size(); ++i)
    {
        added.letters.push_back (letters[i]);
        members.push_back (quotedJson (letters[i]) + ": " + optionText (options[i], newline + indent + "     "));
    }
    if (held != nullptr)
    {
        added.text = withMembers (jobText, *held, members, indent, newline);
        return added;
    }
    std::string object = "\"options\": {" + newline;
    for (size_t i = 0; i < members.size(); ++i)
        object += indent + members[i] + (i + 1 < members.size() ? "," : "") + newline;
    added.text = withMembers (jobText, job, { object + outer + "}" }, outer, newline);
    return added;
}
}
