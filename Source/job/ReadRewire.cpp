#include "job/Readers.h"

#include "files/Limits.h"
#include "files/Quantity.h"
#include "job/Substitution.h"

#include <algorithm>
#include <cctype>

namespace coldiron
{
namespace
{
/** What an ask can be filled with. The first six name something of the guitar; so do the parts. */
const std::vector<std::string> askKinds { "pot",       "pickup",   "coil", "switch",        "point",         "value",
                                          "capacitor", "resistor", "part", "pickup-preset", "switch-preset", "taper" };
const std::vector<std::string> wishes { "quieter",     "brighter",   "darker", "louder", "clear when turned down",
                                        "more voices", "independent" };

bool namesSomething (const std::string& kind) { return kind != "value" && kind != "taper" && ! kind.ends_with ("-preset"); }

/** What an ask is filled with when nothing is said: a text, or the value of a part: { "of": "{pot}" }. */
struct Standard
{
    std::string name, text, of;
};

/** A rewire's file as read, nothing filled in. */
struct Template
{
    std::string preset, name, gives, costs, wish, file;
    std::vector<std::string> alsoCalled;
    std::vector<std::pair<std::string, std::string>> asks; ///< name, kind
    std::vector<Standard> defaults;
    std::vector<Json> steps, needs;
};

Standard readStandard (const std::string& name, const Json& value, Diagnostics& diagnostics)
{
    if (value.kind == Json::Kind::object)
    {
        ObjectReader reader (value, "the default of \"" + name + "\"", diagnostics);
        reader.needed ("of", "\"of\": \"{pot}\", the part whose value it takes");
        Standard standard { name, {}, reader.text ("of") };
        reader.finish();
        return standard;
    }
    const auto text = value.plain();
    if (! text)
        addDiagnostic (diagnostics, value,
                       "the default of \"" + name + "\": found " + value.kindName()
                           + ", expected a text, a number or { \"of\": \"{pot}\" }");
    return { name, text.value_or (""), {} };
}

Template readTemplate (const Resolved& resolved, Diagnostics& diagnostics)
{
    ObjectReader reader (resolved.json, "a rewire", diagnostics);
    Template result;
    result.preset = resolved.preset;
    result.file = resolved.json.file != nullptr ? *resolved.json.file : std::string();
    result.name = reader.text ("name", resolved.preset);
    reader.text ("about");
    result.gives = reader.text ("gives");
    result.costs = reader.text ("costs");
    result.wish = reader.word ("wish", wishes, "");
    result.alsoCalled = reader.texts ("also_called");
    if (const auto* asks = reader.value ("asks"))
    {
        if (asks->kind != Json::Kind::object)
            addDiagnostic (diagnostics, *asks,
                           "\"asks\": found " + asks->kindName() + ", expected { \"pot\": \"pot\" }: names and kinds");
        for (const auto& [name, kind] : asks->members)
        {
            if (std::find (askKinds.begin(), askKinds.end(), kind.text) == askKinds.end())
                addDiagnostic (diagnostics, kind,
                               "\"" + name + "\" asks for " + kind.kindName() + ", expected one of: " + listed (askKinds));
            if (name == "use" || ! isPresetName (name))
                addDiagnostic (diagnostics, kind,
                               "\"" + name + "\" cannot be asked for: a name has a-z, 0-9 and -, and is not \"use\"");
            result.asks.emplace_back (name, kind.text);
        }
    }
    if (const auto* defaults = reader.value ("defaults"))
    {
        if (defaults->kind != Json::Kind::object)
            addDiagnostic (diagnostics, *defaults,
                           "\"defaults\": found " + defaults->kindName() + ", expected { \"cap\": \"1n\" }");
        for (const auto& [name, value] : defaults->members)
        {
            result.defaults.push_back (readStandard (name, value, diagnostics));
            if (std::none_of (result.asks.begin(), result.asks.end(), [&n = name] (const auto& ask) { return ask.first == n; }))
                result.asks.emplace_back (name, "value");
        }
    }
    if (const auto* needs = reader.value ("needs"))
    {
        if (needs->kind != Json::Kind::list)
            addDiagnostic (diagnostics, *needs,
                           "\"needs\": found " + needs->kindName()
                               + ", expected a list of texts and of { \"point\": ..., \"else\": ... }");
        result.needs = needs->items;
    }
    if (const auto* steps = reader.needed ("steps", "\"steps\": [{ \"swap\": [\"{pot}.in\", \"{pot}.out\"] }]"))
    {
        if (steps->kind != Json::Kind::list || steps->items.empty() || steps->items.size() > limits::rewireSteps)
            addDiagnostic (diagnostics, *steps,
                           "\"steps\": found " + steps->kindName() + ", expected a list of 1 to "
                               + std::to_string (limits::rewireSteps) + " steps");
        result.steps = steps->items;
    }
    reader.finish();
    return result;
}

std::string signature (const Template& from)
{
    std::vector<std::string> names;
    for (const auto& [name, kind] : from.asks)
        names.push_back ("\"" + name + "\" (" + kind + ")");
    return names.empty() ? "it asks for nothing" : "it asks for " + listed (names);
}

void readNeeds (const Template& from, const RewireUse& use, std::vector<RewireNeed>& needs, size_t& length,
                Diagnostics& diagnostics)
{
    for (const auto& item : from.needs)
    {
        if (item.kind == Json::Kind::text)
            continue; // for people
        const auto filled = filledIn (item, use.arguments, length, diagnostics);
        ObjectReader reader (filled, "a need", diagnostics);
        const bool free = filled.find ("free") != nullptr;
        if (! free)
            reader.needed ("point", "\"point\": a solder point that must be within reach, or \"free\": one with nothing on it");
        needs.push_back ({ PointName::parse (reader.text (free ? "free" : "point")), free, reader.text ("else"), item.line });
        reader.finish();
    }
}

std::string kindOf (const Template& from, const std::string& ask)
{
    const auto found = std::find_if (from.asks.begin(), from.asks.end(), [&] (const auto& a) { return a.first == ask; });
    return found == from.asks.end() ? std::string ("value") : found->second;
}

bool isOfPart (const Template& from, const std::string& ask)
{
    return std::any_of (from.defaults.begin(), from.defaults.end(),
                        [&] (const auto& standard) { return standard.name == ask && ! standard.of.empty(); });
}

/** The defaults that are a part's value, once what names the part is known. @returns why one has none; empty: all have */
std::string fillFromParts (const Template& from, RewireUse& use, const Harness& harness)
{
    for (const auto& standard : from.defaults)
    {
        if (standard.of.empty() || use.arguments.count (standard.name) > 0)
            continue;
        if (std::vector<std::string> missing; filledIn (standard.of, use.arguments, missing), ! missing.empty())
        {
            if (std::any_of (from.asks.begin(), from.asks.end(), [&] (const auto& ask) { return ask.first == missing.front(); }))
                continue; // an ask that is not filled is told of as such
            return "the default of \"" + standard.name + "\" is of {" + missing.front() + "}, which is not asked for";
        }
        const auto value =
            standardValue ({ standard.name, kindOf (from, standard.name), {}, true, standard.of }, use.arguments, harness);
        if (value.empty())
        {
            auto why = whyNotFilled (use, harness); // most likely the part it is taken from is none of the guitar
            return ! why.empty() ? why : "say \"" + standard.name + "\": no value for it can be taken from the guitar";
        }
        use.arguments[standard.name] = value;
    }
    return {};
}

/** Fills a template in. @param at  where it is used */
std::optional<RewireUse> fill (const Template& from, std::map<std::string, std::string> arguments, const Json& at,
                               const Harness& harness, Library& library)
{
    auto& diagnostics = library.faultList();
    const auto before = diagnostics.raised();
    RewireUse use;
    use.preset = from.preset;
    use.name = from.name;
    use.line = at.line;
    use.file = from.file;
    for (const auto& standard : from.defaults)
        if (standard.of.empty())
            arguments.emplace (standard.name, standard.text);
    use.arguments = std::move (arguments);
    for (const auto& [name, kind] : from.asks)
        if (namesSomething (kind) && use.arguments.count (name) > 0)
            use.kinds[name] = kind;
    if (const auto why = fillFromParts (from, use, harness); ! why.empty())
        addDiagnostic (diagnostics, at, "\"" + from.name + "\" cannot be done: " + why);
    if (diagnostics.raised() != before)
        return std::nullopt;
    for (const auto& [name, kind] : from.asks)
    {
        const auto given = use.arguments.find (name);
        if (given == use.arguments.end() && isOfPart (from, name))
            continue; // told of the part that it is taken from
        if (given == use.arguments.end())
            addDiagnostic (diagnostics, at,
                           "\"" + from.name + "\" needs \"" + name + "\", the name of a " + kind + "; " + signature (from));
        else if (given->second.empty() || given->second.find_first_of ("{}") != std::string::npos)
            addDiagnostic (diagnostics, at, "\"" + name + "\" cannot be \"" + given->second + "\"; expected a " + kind);
        else if (kind == "value" && name != "name" && ! parseQuantity (given->second) && from.steps.empty())
            addDiagnostic (diagnostics, at, "\"" + name + "\": found \"" + given->second + "\", expected a number like \"22n\"");
    }
    if (diagnostics.raised() != before)
        return std::nullopt;

    std::vector<std::string> ignored;
    use.gives = filledIn (from.gives, use.arguments, ignored);
    use.costs = filledIn (from.costs, use.arguments, ignored);
    size_t length = 0;
    readNeeds (from, use, use.needs, length, diagnostics);
    for (const auto& item : from.steps)
        if (const auto step = readStep (filledIn (item, use.arguments, length, diagnostics), library);
            step && ! diagnostics.isFull())
            use.steps.push_back (*step);
    if (diagnostics.raised() != before)
    {
        if (at.file != nullptr && *at.file != from.file && ! from.file.empty())
            addDiagnostic (diagnostics, at, "\"" + from.name + "\" cannot be used so: see the faults in " + from.file);
        return std::nullopt;
    }
    return use;
}
}

namespace
{
std::string asSpoken (std::string words)
{
    std::replace (words.begin(), words.end(), '-', ' ');
    std::transform (words.begin(), words.end(), words.begin(),
                    [] (unsigned char c) { return static_cast<char> (std::tolower (c)); });
    return words;
}

/** The rewires that go by another name in the trade. A job keeps the one name of each, so that it means the same to all
    who read it: what is asked for by another is a fault that says the name. */
std::vector<std::string> calledAlso (const std::string& words, Library& library)
{
    std::vector<std::string> names;
    Diagnostics ignored;
    Library others (library.presetFolders(), ignored);
    for (const auto& name : library.presetFolders().list ("rewires"))
    {
        const auto resolved = others.resolve ("rewire", name);
        if (! resolved)
            continue;
        const auto from = readTemplate (*resolved, ignored);
        const auto& also = from.alsoCalled;
        if (asSpoken (from.name) == asSpoken (words)
            || std::any_of (also.begin(), also.end(), [&] (const auto& other) { return asSpoken (other) == asSpoken (words); }))
            names.push_back ("\"" + name + "\"");
    }
    return names;
}
}

std::optional<RewireUse> readRewireUse (const Json& entry, const Harness& harness, Library& library)
{
    auto& diagnostics = library.faultList();
    if (entry.kind != Json::Kind::object || entry.find ("use") == nullptr)
    {
        addDiagnostic (diagnostics, entry,
                       "a rewire: found " + (entry.kind == Json::Kind::object ? std::string ("no \"use\"") : entry.kindName())
                           + ", expected { \"use\": \"NAME\", ... }");
        return std::nullopt;
    }
    const auto& wanted = *entry.find ("use");
    if (wanted.kind == Json::Kind::text && ! library.presetFolders().has ("rewires", wanted.text))
        if (const auto names = calledAlso (wanted.text, library); ! names.empty())
        {
            addDiagnostic (diagnostics, wanted,
                           "there is no rewire preset \"" + wanted.text + "\"; what is also called so is " + listed (names)
                               + (names.size() > 1 ? ": use one of them" : ": use that"));
            return std::nullopt;
        }
    const auto resolved = library.resolve ("rewire", wanted);
    if (! resolved)
        return std::nullopt;
    const auto before = diagnostics.raised();
    const auto from = readTemplate (*resolved, diagnostics);
    std::map<std::string, std::string> arguments;
    for (size_t i = 0; i < entry.members.size(); ++i)
    {
        const auto& [name, value] = entry.members[i];
        if (name == "use")
            continue;
        std::vector<std::string> names;
        for (const auto& [ask, kind] : from.asks)
            names.push_back (ask);
        if (std::find (names.begin(), names.end(), name) == names.end())
        {
            const auto near = nearest (name, names);
            addDiagnostic (diagnostics, value.file != nullptr ? *value.file : std::string(), entry.memberLines[i],
                           "\"" + from.name + "\" does not ask for \"" + name + "\""
                               + (near.empty() ? "" : "; did you mean \"" + near + "\"?") + "; " + signature (from));
            continue;
        }
        if (const auto text = value.plain())
            arguments[name] = *text;
        else
            addDiagnostic (diagnostics, value, "\"" + name + "\": found " + value.kindName() + ", expected a name or a value");
    }
    if (diagnostics.raised() != before)
        return std::nullopt;
    return fill (from, std::move (arguments), entry, harness, library);
}

std::optional<RewireInfo> readRewireInfo (const Resolved& resolved, Library& library)
{
    auto& diagnostics = library.faultList();
    const auto before = diagnostics.raised();
    const auto from = readTemplate (resolved, diagnostics);
    RewireInfo info;
    info.preset = from.preset;
    info.name = from.name;
    info.gives = from.gives;
    info.costs = from.costs;
    info.wish = from.wish;
    info.alsoCalled = from.alsoCalled;
    for (const auto& [name, kind] : from.asks)
    {
        RewireInfo::Ask ask { name, kind, {}, false, {} };
        for (const auto& standard : from.defaults)
            if (standard.name == name)
            {
                ask.standard = standard.text;
                ask.standardOf = standard.of;
                ask.hasStandard = true;
            }
        info.asks.push_back (std::move (ask));
    }
    for (const auto& need : from.needs)
    {
        if (need.kind == Json::Kind::text)
            info.needs.push_back (need.text);
        else if (const auto* otherwise = need.find ("else");
                 otherwise != nullptr && std::find (info.needs.begin(), info.needs.end(), otherwise->text) == info.needs.end())
            info.needs.push_back (otherwise->text);
    }
    if (diagnostics.raised() != before)
        return std::nullopt;
    return info;
}
}
