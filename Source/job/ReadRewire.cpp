#include "job/Readers.h"

#include "job/Limits.h"
#include "job/Quantity.h"
#include "job/Substitution.h"

#include <algorithm>

namespace coldiron
{
namespace
{
/** What an ask can be filled with. The first six name something of the guitar; so do the parts. */
const std::vector<std::string> askKinds { "pot", "pickup", "coil", "switch", "point", "value",
                                          "capacitor", "resistor", "part", "pickup-preset", "switch-preset", "taper" };
const std::vector<std::string> wishes { "quieter", "brighter", "darker", "louder", "clear when turned down", "more voices", "independent" };

bool namesSomething (const std::string& kind)
{
    return kind != "value" && kind != "taper" && ! kind.ends_with ("-preset");
}

std::optional<std::string> plainText (const Json& json)
{
    if (json.kind == Json::Kind::text)
        return json.text;
    if (json.kind == Json::Kind::number)
        return json.dump();
    return std::nullopt;
}

/** A rewire's file as read, nothing filled in. */
struct Template
{
    std::string preset, name, gives, costs, wish, file;
    std::vector<std::string> alsoCalled;
    std::vector<std::pair<std::string, std::string>> asks;       ///< name, kind
    std::vector<std::pair<std::string, std::string>> defaults;
    std::vector<Json> steps, needs;
};

Template readTemplate (const Resolved& resolved, Faults& faults)
{
    ObjectReader reader (resolved.json, "a rewire", faults);
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
            addFault (faults, *asks, "\"asks\": found " + asks->kindName() + ", expected { \"pot\": \"pot\" }: names and kinds");
        for (const auto& [name, kind] : asks->members)
        {
            if (std::find (askKinds.begin(), askKinds.end(), kind.text) == askKinds.end())
                addFault (faults, kind, "\"" + name + "\" asks for " + kind.kindName() + ", expected one of: " + listed (askKinds));
            if (name == "use" || ! isPresetName (name))
                addFault (faults, kind, "\"" + name + "\" cannot be asked for: a name has a-z, 0-9 and -, and is not \"use\"");
            result.asks.emplace_back (name, kind.text);
        }
    }
    if (const auto* defaults = reader.value ("defaults"))
    {
        if (defaults->kind != Json::Kind::object)
            addFault (faults, *defaults, "\"defaults\": found " + defaults->kindName() + ", expected { \"cap\": \"1n\" }");
        for (const auto& [name, value] : defaults->members)
        {
            const auto text = plainText (value);
            if (! text)
                addFault (faults, value, "the default of \"" + name + "\": found " + value.kindName() + ", expected a text or a number");
            result.defaults.emplace_back (name, text.value_or (""));
            if (std::none_of (result.asks.begin(), result.asks.end(), [&n = name] (const auto& ask) { return ask.first == n; }))
                result.asks.emplace_back (name, "value");
        }
    }
    if (const auto* needs = reader.value ("needs"))
    {
        if (needs->kind != Json::Kind::list)
            addFault (faults, *needs, "\"needs\": found " + needs->kindName() + ", expected a list of texts and of { \"point\": ..., \"else\": ... }");
        result.needs = needs->items;
    }
    if (const auto* steps = reader.needed ("steps", "\"steps\": [{ \"swap\": [\"{pot}.in\", \"{pot}.out\"] }]"))
    {
        if (steps->kind != Json::Kind::list || steps->items.empty() || steps->items.size() > limits::rewireSteps)
            addFault (faults, *steps, "\"steps\": found " + steps->kindName() + ", expected a list of 1 to " + std::to_string (limits::rewireSteps) + " steps");
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

void readNeeds (const Template& from, const RewireUse& use, std::vector<RewireNeed>& needs, size_t& length, Faults& faults)
{
    for (const auto& item : from.needs)
    {
        if (item.kind == Json::Kind::text)
            continue; // for people
        const auto filled = filledIn (item, use.arguments, length, faults);
        ObjectReader reader (filled, "a need", faults);
        reader.needed ("point", "\"point\": a solder point that must be within reach");
        needs.push_back ({ reader.text ("point"), reader.text ("else"), item.line });
        reader.finish();
    }
}

/** Fills a template in. @param at  where it is used */
std::optional<RewireUse> fill (const Template& from, std::map<std::string, std::string> arguments, const Json& at, Library& library)
{
    auto& faults = library.faultList();
    const auto before = faults.raised();
    RewireUse use;
    use.preset = from.preset;
    use.name = from.name;
    use.line = at.line;
    use.file = from.file;
    for (const auto& [name, value] : from.defaults)
        arguments.emplace (name, value);
    use.arguments = std::move (arguments);
    for (const auto& [name, kind] : from.asks)
    {
        if (namesSomething (kind))
            use.kinds[name] = kind;
        const auto given = use.arguments.find (name);
        if (given == use.arguments.end())
            addFault (faults, at, "\"" + from.name + "\" needs \"" + name + "\", the name of a " + kind + "; " + signature (from));
        else if (given->second.empty() || given->second.find_first_of ("{}") != std::string::npos)
            addFault (faults, at, "\"" + name + "\" cannot be \"" + given->second + "\"; expected a " + kind);
        else if (kind == "value" && name != "name" && ! parseQuantity (given->second) && from.steps.empty())
            addFault (faults, at, "\"" + name + "\": found \"" + given->second + "\", expected a number like \"22n\"");
    }
    if (faults.raised() != before)
        return std::nullopt;

    std::vector<std::string> ignored;
    use.gives = filledIn (from.gives, use.arguments, ignored);
    use.costs = filledIn (from.costs, use.arguments, ignored);
    size_t length = 0;
    readNeeds (from, use, use.needs, length, faults);
    for (const auto& item : from.steps)
        if (const auto step = readStep (filledIn (item, use.arguments, length, faults), library); step && ! faults.isFull())
            use.steps.push_back (*step);
    if (faults.raised() != before)
    {
        if (at.file != nullptr && *at.file != from.file && ! from.file.empty())
            addFault (faults, at, "\"" + from.name + "\" cannot be used so: see the faults in " + from.file);
        return std::nullopt;
    }
    return use;
}
}

std::optional<RewireUse> readRewireUse (const Json& entry, Library& library)
{
    auto& faults = library.faultList();
    if (entry.kind != Json::Kind::object || entry.find ("use") == nullptr)
    {
        addFault (faults, entry, "a rewire: found " + (entry.kind == Json::Kind::object ? std::string ("no \"use\"") : entry.kindName())
                                     + ", expected { \"use\": \"NAME\", ... }");
        return std::nullopt;
    }
    const auto resolved = library.resolve ("rewire", *entry.find ("use"));
    if (! resolved)
        return std::nullopt;
    const auto before = faults.raised();
    const auto from = readTemplate (*resolved, faults);
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
            addFault (faults, value.file != nullptr ? *value.file : std::string(), entry.memberLines[i],
                      "\"" + from.name + "\" does not ask for \"" + name + "\"" + (near.empty() ? "" : "; did you mean \"" + near + "\"?") + "; " + signature (from));
            continue;
        }
        if (const auto text = plainText (value))
            arguments[name] = *text;
        else
            addFault (faults, value, "\"" + name + "\": found " + value.kindName() + ", expected a name or a value");
    }
    if (faults.raised() != before)
        return std::nullopt;
    return fill (from, std::move (arguments), entry, library);
}

std::optional<RewireInfo> readRewireInfo (const Resolved& resolved, Library& library)
{
    auto& faults = library.faultList();
    const auto before = faults.raised();
    const auto from = readTemplate (resolved, faults);
    RewireInfo info;
    info.preset = from.preset;
    info.name = from.name;
    info.gives = from.gives;
    info.costs = from.costs;
    info.wish = from.wish;
    info.alsoCalled = from.alsoCalled;
    for (const auto& [name, kind] : from.asks)
    {
        RewireInfo::Ask ask { name, kind, {} };
        for (const auto& [known, value] : from.defaults)
            if (known == name)
            {
                ask.standard = value;
                ask.hasStandard = true;
            }
        info.asks.push_back (std::move (ask));
    }
    for (const auto& need : from.needs)
    {
        if (need.kind == Json::Kind::text)
            info.needs.push_back (need.text);
        else if (const auto* otherwise = need.find ("else"); otherwise != nullptr && std::find (info.needs.begin(), info.needs.end(), otherwise->text) == info.needs.end())
            info.needs.push_back (otherwise->text);
    }
    if (faults.raised() != before)
        return std::nullopt;
    return info;
}
}
