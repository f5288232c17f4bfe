#include "job/Readers.h"

#include "files/Quantity.h"

#include <algorithm>

namespace coldiron
{
namespace
{
const std::vector<std::string> verbs { "unsolder", "solder", "move", "swap", "fit", "replace", "remove" };

constexpr Step::Kind kindOfVerb[] = { Step::Kind::unsolder, Step::Kind::solder,  Step::Kind::move,  Step::Kind::swap,
                                      Step::Kind::fit,      Step::Kind::replace, Step::Kind::remove };

void readPoints (ObjectReader& reader, const std::string& verb, Step& step, Diagnostics& diagnostics)
{
    const auto& json = *reader.value (verb);
    for (const auto& text : readTexts (json, "\"" + verb + "\"", diagnostics))
        step.points.push_back (PointName::parse (text));
    const bool chain = verb == "solder";
    if (json.kind == Json::Kind::list && (chain ? step.points.size() < 2 : step.points.size() != 2))
        addDiagnostic (diagnostics, json,
                       "\"" + verb + "\": found " + std::to_string (json.items.size()) + " points, expected "
                           + (chain ? "two or more" : "two"));
}

void readFitted (ObjectReader& reader, Step& step, Library& library)
{
    auto& diagnostics = library.faultList();
    if (const auto* as = reader.needed ("as", "\"as\": { \"capacitor\": \"1n\" }, the part"))
        step.as = readPart (*as, step.part, step.kind == Step::Kind::replace, library);
    if (step.kind != Step::Kind::replace)
        return;
    if (const auto* as = reader.value ("as"))
        for (const char* key : { "taper", "shaft", "no_load", "turned_over", "rest", "tolerance" })
            if (as->find (key) == nullptr)
                step.leftOut.emplace_back (key);
    const auto* points = reader.value ("points");
    if (points == nullptr)
        return;
    if (points->kind != Json::Kind::object)
        addDiagnostic (diagnostics, *points,
                       "\"points\": found " + points->kindName() + ", expected { \"old point\": \"new point\" }");
    for (const auto& [from, to] : points->members)
    {
        if (to.kind == Json::Kind::text)
            step.pointMap[from] = to.text;
        else
            addDiagnostic (diagnostics, to,
                           "\"points\": found " + to.kindName() + ", expected the name of a point of the new part");
    }
}
}

std::optional<Step> readStep (const Json& json, Library& library)
{
    auto& diagnostics = library.faultList();
    ObjectReader reader (json, "a step", diagnostics);
    if (! reader.isObject())
        return std::nullopt;
    std::vector<std::string> found;
    for (const auto& verb : verbs)
        if (json.find (verb) != nullptr)
            found.push_back (verb);
    if (found.size() != 1)
    {
        const auto near = found.empty() && ! json.members.empty() ? nearest (json.members.front().first, verbs) : std::string();
        addDiagnostic (
            diagnostics, json,
            std::string ("a step ") + (found.empty() ? "does not say what to do" : "says several things to do: " + listed (found))
                + "; expected one of the keys " + listed (verbs) + (near.empty() ? "" : " (did you mean \"" + near + "\"?)"));
        return std::nullopt;
    }

    const auto before = diagnostics.raised();
    const auto& verb = found.front();
    Step step;
    step.kind = kindOfVerb[std::find (verbs.begin(), verbs.end(), verb) - verbs.begin()];
    step.line = json.line;
    if (step.kind == Step::Kind::unsolder || step.kind == Step::Kind::solder || step.kind == Step::Kind::swap)
        readPoints (reader, verb, step, diagnostics);
    else if (step.kind == Step::Kind::move)
    {
        step.points = { PointName::parse (reader.text (verb)) };
        step.from = PointName::parse (reader.text ("from"));
        reader.needed ("to", "\"to\": a solder point");
        step.to = PointName::parse (reader.text ("to"));
        step.leaving = PointName::parse (reader.text ("leaving"));
    }
    else
    {
        step.part = reader.text (verb);
        if (! isPresetName (step.part))
            addDiagnostic (diagnostics, *json.find (verb), "\"" + step.part + "\" cannot name a part: a name has a-z, 0-9 and -");
        if (step.kind != Step::Kind::remove)
            readFitted (reader, step, library);
    }
    reader.finish();
    if (diagnostics.raised() != before)
        return std::nullopt;
    return step;
}
}
