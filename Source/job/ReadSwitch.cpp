#include "job/Fields.h"
#include "job/Readers.h"

#include "files/Limits.h"
#include "files/Quantity.h"

#include <algorithm>
#include <cctype>

namespace coldiron
{
namespace
{
bool contains (const std::vector<std::string>& names, const std::string& name)
{
    return std::find (names.begin(), names.end(), name) != names.end();
}

std::vector<std::vector<std::string>> readContacts (const Json& json, const SwitchType& type, Diagnostics& diagnostics)
{
    std::vector<std::vector<std::string>> contacts;
    if (json.kind != Json::Kind::list)
    {
        addDiagnostic (diagnostics, json,
                       "a position: found " + json.kindName()
                           + ", expected a list of groups of points that touch, like [[\"a\", \"b\"]]");
        return contacts;
    }
    for (const auto& item : json.items)
    {
        auto group = readTexts (item, "points that touch", diagnostics);
        if (item.kind == Json::Kind::list && group.size() < 2)
            addDiagnostic (diagnostics, item, "points that touch: expected two or more, found " + std::to_string (group.size()));
        for (size_t i = 0; i < group.size(); ++i)
            if (! contains (type.points, group[i]))
            {
                const auto near = nearest (group[i], type.points);
                addDiagnostic (diagnostics, item.items[i],
                               "the switch has no point \"" + group[i] + "\""
                                   + (near.empty() ? "; it has " + listed (type.points) : "; did you mean \"" + near + "\"?"));
                group.erase (group.begin() + static_cast<std::ptrdiff_t> (i--));
                break;
            }
        contacts.push_back (std::move (group));
    }
    return contacts;
}
}

SwitchType readSwitch (const Json& json, Diagnostics& diagnostics)
{
    ObjectReader reader (json, "a switch", diagnostics);
    SwitchType type;
    type.name = reader.text ("name");
    reader.text ("about");
    const auto* points = reader.needed ("points", "\"points\": the names of its lugs, in their order");
    if (points != nullptr)
        type.points = readTexts (*points, "\"points\"", diagnostics);
    if (points != nullptr && points->kind == Json::Kind::list && (type.points.size() < 2 || type.points.size() > limits::lugs))
    {
        addDiagnostic (diagnostics, *points,
                       "\"points\": found " + std::to_string (points->items.size()) + " lugs, expected 2 to "
                           + std::to_string (limits::lugs));
        type.points.resize (std::min (type.points.size(), limits::lugs));
    }
    for (size_t i = 0; i < type.points.size(); ++i)
    {
        if (! isPresetName (type.points[i]))
            addDiagnostic (diagnostics, *points, "\"" + type.points[i] + "\" cannot name a lug: a name has a-z, 0-9 and -");
        if (std::find (type.points.begin(), type.points.begin() + static_cast<std::ptrdiff_t> (i), type.points[i])
            != type.points.begin() + static_cast<std::ptrdiff_t> (i))
            addDiagnostic (diagnostics, *points, "the lug \"" + type.points[i] + "\" is here twice");
    }

    const auto* positions = reader.needed ("positions", "\"positions\": { \"up\": [[\"a\", \"b\"]] }");
    if (positions != nullptr && positions->kind == Json::Kind::object)
    {
        for (const auto& [name, contacts] : positions->members)
            type.positions.push_back ({ name, readContacts (contacts, type, diagnostics) });
        if (type.positions.empty() || type.positions.size() > limits::positions)
            addDiagnostic (diagnostics, *positions,
                           "\"positions\": found " + std::to_string (type.positions.size()) + ", expected 1 to "
                               + std::to_string (limits::positions));
    }
    else if (positions != nullptr)
        addDiagnostic (diagnostics, *positions,
                       "\"positions\": found " + positions->kindName() + ", expected an object of positions by name");

    type.rest = reader.text ("rest");
    if (! type.rest.empty() && type.find (type.rest) == nullptr)
    {
        std::vector<std::string> names;
        for (const auto& position : type.positions)
            names.push_back (position.name);
        addDiagnostic (diagnostics, *json.find ("rest"),
                       "\"rest\": there is no position \"" + type.rest + "\"; there are " + listed (names));
    }
    reader.finish();
    return type;
}

std::optional<Taper> taperByName (const std::string& name)
{
    if (name == "linear")
        return Taper::linear();
    const bool reverse = name.starts_with ("reverse-");
    const auto rest = reverse ? name.substr (8) : name;
    if (! rest.starts_with ("log-") || rest.size() < 5 || rest.size() > 6
        || ! std::all_of (rest.begin() + 4, rest.end(), [] (unsigned char c) { return std::isdigit (c) != 0; }))
        return std::nullopt;
    const int percent = std::stoi (rest.substr (4));
    if (percent < 1 || percent > 49)
        return std::nullopt;
    return reverse ? Taper::reverseLogarithmic (percent / 100.0) : Taper::logarithmic (percent / 100.0);
}

namespace
{
Taper readTaperPoints (const Json& list, Diagnostics& diagnostics)
{
    const auto shape = [&] (const Json& at, const std::string& found)
    {
        addDiagnostic (
            diagnostics, at,
            found + "; a taper is a list of [travel, share] from [0, 0] to [1, 1], travel rising and share never falling");
    };
    if (list.kind != Json::Kind::list || list.items.size() < 2 || list.items.size() > 1000)
    {
        shape (list, "\"points\": found " + list.kindName() + ", expected 2 to 1000 points");
        return {};
    }
    std::vector<std::pair<double, double>> points;
    for (const auto& item : list.items)
    {
        if (item.kind != Json::Kind::list || item.items.size() != 2)
        {
            shape (item, "a point: found " + item.kindName() + ", expected two numbers");
            return {};
        }
        const auto travel = readQuantity (item.items[0], "travel", fields::travel, diagnostics);
        const auto share = readQuantity (item.items[1], "share", fields::share, diagnostics);
        if (! travel || ! share)
            return {};
        const std::pair<double, double> point { *travel, *share };
        if (points.empty() && point != std::pair (0.0, 0.0))
            shape (item, "the first point is not [0, 0]");
        else if (! points.empty() && point.first <= points.back().first)
            shape (item, "the travel goes from " + quantityText (points.back().first) + " to " + quantityText (point.first));
        else if (! points.empty() && point.second < points.back().second)
            shape (item, "the taper falls from " + quantityText (points.back().second) + " to " + quantityText (point.second));
        else
        {
            points.push_back (point);
            continue;
        }
        return {};
    }
    if (points.back() != std::pair (1.0, 1.0))
    {
        shape (list.items.back(), "the last point is not [1, 1]");
        return {};
    }
    return Taper::fromPoints (std::move (points));
}
}

Taper readTaper (const Json& json, Library& library)
{
    auto& diagnostics = library.faultList();
    if (json.kind == Json::Kind::text && ! library.presetFolders().has ("tapers", json.text))
    {
        if (const auto taper = taperByName (json.text))
            return *taper;
        auto names = library.presetFolders().list ("tapers");
        for (const char* name : { "linear", "log-10", "log-15", "log-20", "reverse-log-10", "reverse-log-15" })
            if (std::find (names.begin(), names.end(), name) == names.end())
                names.emplace_back (name);
        const auto near = nearest (json.text, names);
        addDiagnostic (diagnostics, json,
                       "there is no taper \"" + json.text + "\"" + (near.empty() ? "" : "; did you mean \"" + near + "\"?")
                           + " There are " + listed (names) + "; or log-M and reverse-log-M with M % at half travel");
        return {};
    }
    const auto resolved = library.resolve ("taper", json);
    if (! resolved)
        return {};
    ObjectReader reader (resolved->json, "a taper", diagnostics);
    const auto name = reader.text ("name");
    reader.text ("about");
    const auto law = reader.word ("law", { "linear", "log", "reverse-log" }, "");
    const auto mid = reader.given (fields::midTravel);
    const auto* points = reader.value ("points");
    reader.finish();
    Taper taper;
    if (points != nullptr && ! law.empty())
        addDiagnostic (diagnostics, *points, "a taper has a \"law\" or \"points\", not both");
    else if (points != nullptr)
        taper = readTaperPoints (*points, diagnostics);
    else if (law.empty())
        addDiagnostic (diagnostics, resolved->json, "a taper needs a \"law\" (linear, log, reverse-log) or \"points\"");
    else if (law != "linear")
    {
        if (! mid)
            addDiagnostic (diagnostics, resolved->json,
                           "a taper with the law " + law + " needs \"mid_travel\": its share at half travel, 0.01 to 0.49");
        else
            taper = law == "log" ? Taper::logarithmic (*mid) : Taper::reverseLogarithmic (*mid);
    }
    if (json.kind == Json::Kind::text)
        taper.name = json.text;
    else if (! name.empty())
        taper.name = name;
    return taper;
}
}
