#include "job/Reader.h"

#include "files/Quantity.h"
#include "files/RegularFile.h"

#include <algorithm>

namespace coldiron
{
void addDiagnostic (Diagnostics& diagnostics, const std::string& file, int line, const std::string& message)
{
    diagnostics.push_back ({ file, line, message });
}

void addDiagnostic (Diagnostics& diagnostics, const Json& at, const std::string& message)
{
    addDiagnostic (diagnostics, at.file != nullptr ? *at.file : std::string(), at.line, message);
}

std::optional<std::string> wholeText (const std::filesystem::path& path, const std::string& what, std::uint64_t mostBytes,
                                      Diagnostics& diagnostics)
{
    const RegularFile file (path, what);
    if (! file.why().empty())
        addDiagnostic (diagnostics, path.string(), 0, file.why());
    else if (file.size() > mostBytes)
        addDiagnostic (diagnostics, path.string(), 0,
                       "larger than " + std::to_string (mostBytes >> 20) + " MB; it cannot be " + what);
    else if (auto text = file.text (mostBytes))
        return text;
    else
        addDiagnostic (diagnostics, path.string(), 0, "the file cannot be read; is its disk there and well?");
    return std::nullopt;
}

std::string rangeInWords (const Field& field)
{
    const std::string unit = field.unit;
    return "from " + quantityText (field.least) + " to " + quantityText (field.most) + (unit.empty() ? "" : " " + unit);
}

std::optional<double> readQuantity (const Json& json, const std::string& name, const Field& field, Diagnostics& diagnostics)
{
    std::optional<double> value;
    if (json.kind == Json::Kind::number)
        value = json.number;
    else if (json.kind == Json::Kind::text)
        value = parseQuantity (json.text);
    if (! value)
    {
        addDiagnostic (diagnostics, json,
                       name + ": found " + json.kindName() + ", expected a number " + rangeInWords (field)
                           + ", plain or as a text with a prefix and no unit, like \"4.1k\", \"22n\" or \"2.2\" (p n u m k M G)");
        return std::nullopt;
    }
    if (! field.holds (*value))
    {
        addDiagnostic (diagnostics, json,
                       name + ": found " + quantityText (*value) + ", expected a number " + rangeInWords (field));
        return std::nullopt;
    }
    return value;
}

std::vector<std::string> readTexts (const Json& json, const std::string& name, Diagnostics& diagnostics)
{
    std::vector<std::string> result;
    if (json.kind != Json::Kind::list)
    {
        addDiagnostic (diagnostics, json, name + ": found " + json.kindName() + ", expected a list of texts");
        return result;
    }
    for (const auto& item : json.items)
    {
        if (item.kind == Json::Kind::text)
            result.push_back (item.text);
        else
            addDiagnostic (diagnostics, item, name + ": found " + item.kindName() + ", expected a text");
    }
    return result;
}

ObjectReader::ObjectReader (const Json& json, std::string name, Diagnostics& faultList)
    : node (json), what (std::move (name)), diagnostics (faultList), known { "coldiron", "like" }
{
    if (! isObject())
        addDiagnostic (diagnostics, node, what + ": found " + node.kindName() + ", expected an object { ... }");
}

const Json* ObjectReader::value (const std::string& key)
{
    known.push_back (key);
    return node.find (key);
}

const Json* ObjectReader::needed (const std::string& key, const std::string& expected)
{
    const auto* found = value (key);
    if (found == nullptr && isObject())
        addDiagnostic (diagnostics, node, what + " has no \"" + key + "\"; add " + expected);
    return found;
}

std::optional<double> ObjectReader::given (const Field& field)
{
    const auto* found = value (field.key);
    return found == nullptr ? std::nullopt : readQuantity (*found, "\"" + std::string (field.key) + "\"", field, diagnostics);
}

double ObjectReader::quantity (const Field& field)
{
    if (field.isNeeded)
        needed (field.key, "\"" + std::string (field.key) + "\": a number " + rangeInWords (field));
    return given (field).value_or (field.standard);
}

double ObjectReader::quantity (const Field& field, double standard) { return given (field).value_or (standard); }

std::string ObjectReader::text (const std::string& key, const std::string& standard)
{
    const auto* found = value (key);
    if (found == nullptr)
        return standard;
    if (found->kind == Json::Kind::text)
        return found->text;
    addDiagnostic (diagnostics, *found, "\"" + key + "\": found " + found->kindName() + ", expected a text");
    return standard;
}

bool ObjectReader::flag (const std::string& key, bool standard)
{
    const auto* found = value (key);
    if (found == nullptr)
        return standard;
    if (found->kind == Json::Kind::boolean)
        return found->boolean;
    addDiagnostic (diagnostics, *found, "\"" + key + "\": found " + found->kindName() + ", expected true or false");
    return standard;
}

std::vector<std::string> ObjectReader::texts (const std::string& key)
{
    const auto* found = value (key);
    return found == nullptr ? std::vector<std::string> {} : readTexts (*found, "\"" + key + "\"", diagnostics);
}

std::string ObjectReader::word (const std::string& key, const std::vector<std::string>& allowed, const std::string& standard)
{
    const auto* found = value (key);
    if (found == nullptr)
        return standard;
    if (found->kind == Json::Kind::text && std::find (allowed.begin(), allowed.end(), found->text) != allowed.end())
        return found->text;
    addDiagnostic (diagnostics, *found, "\"" + key + "\": found " + found->kindName() + ", expected one of: " + listed (allowed));
    return standard;
}

void ObjectReader::finish()
{
    for (size_t i = 0; i < node.members.size() && ! diagnostics.isFull(); ++i)
    {
        const auto& [key, member] = node.members[i];
        if (std::find (known.begin(), known.end(), key) != known.end())
            continue;
        std::vector<std::string> names;
        for (const auto& name : known)
            if (name != "coldiron" && name != "like" && std::find (names.begin(), names.end(), name) == names.end())
                names.push_back (name);
        const auto near = nearest (key, names);
        addDiagnostic (diagnostics, member.file != nullptr ? *member.file : std::string(), node.memberLines[i],
                       what + " has no key \"" + key + "\"" + (near.empty() ? "" : "; did you mean \"" + near + "\"?")
                           + " It takes: " + listed (names));
    }
}
}
