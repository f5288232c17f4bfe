#include "job/Fields.h"
#include "job/Readers.h"

#include "files/Limits.h"
#include "files/Quantity.h"

#include <algorithm>

namespace coldiron
{
namespace
{
std::vector<double> readScale (ObjectReader& reader, size_t strings)
{
    const auto* json = reader.needed ("scale_mm", "\"scale_mm\": one length, or one for each string");
    if (json == nullptr)
        return {};
    std::vector<double> scales;
    if (json->kind != Json::Kind::list)
        return std::vector<double> (strings, reader.quantity (fields::scale));
    Diagnostics diagnostics;
    for (const auto& item : json->items)
        scales.push_back (readQuantity (item, "a scale length", fields::scale, diagnostics).value_or (fields::scale.standard));
    for (const auto& fault : diagnostics)
        reader.fault (*json, fault.message);
    if (scales.size() != strings)
        reader.fault (*json, "\"scale_mm\": found " + std::to_string (scales.size()) + " lengths for " + std::to_string (strings)
                                 + " strings; give one number, or one for each string, lowest string first");
    scales.resize (strings, fields::scale.standard);
    return scales;
}

std::vector<GuitarString> readStrings (ObjectReader& reader)
{
    std::vector<GuitarString> strings;
    const auto* json = reader.needed ("strings", "\"strings\": [\"E2\", \"A2\", \"D3\", \"G3\", \"B3\", \"E4\"], lowest first");
    if (json == nullptr)
        return strings;
    if (json->kind != Json::Kind::list || json->items.empty() || json->items.size() > 24)
    {
        reader.fault (*json, "\"strings\": found " + json->kindName()
                                 + ", expected a list of 1 to 24 note names or frequencies in Hz, lowest first");
        return strings;
    }
    for (const auto& item : json->items)
    {
        GuitarString string;
        if (item.kind == Json::Kind::text)
        {
            string.name = item.text;
            string.hz = noteHz (item.text);
            if (string.hz <= 0.0)
                string.hz = parseQuantity (item.text).value_or (0.0);
        }
        else if (item.kind == Json::Kind::number)
        {
            string.name = quantityText (item.number) + " Hz";
            string.hz = item.number;
        }
        if (! fields::stringHz.holds (string.hz))
        {
            reader.fault (item, "a string: found " + item.kindName()
                                    + ", expected a note like \"E2\" or \"Bb1\" or its frequency, 5 to 5000 Hz");
            string.hz = fields::stringHz.standard;
        }
        for (const auto& other : strings)
            if (other.name == string.name)
                reader.fault (item, "two strings are called \"" + string.name + "\"; write one of them as a frequency in Hz");
        strings.push_back (std::move (string));
    }
    return strings;
}

void readParts (ObjectReader& reader, Guitar& guitar, Library& library)
{
    const auto* json = reader.needed ("parts", "\"parts\": { \"neck\": { \"pickup\": ... }, \"jack\": { \"jack\": \"mono\" } }");
    if (json == nullptr)
        return;
    if (json->kind != Json::Kind::object)
    {
        reader.fault (*json, "\"parts\": found " + json->kindName() + ", expected an object of parts by name");
        return;
    }
    if (json->members.size() > limits::parts)
    {
        reader.fault (*json, "\"parts\": found " + std::to_string (json->members.size()) + ", expected "
                                 + std::to_string (limits::parts) + " at most");
        return;
    }
    int jacks = 0;
    for (const auto& [name, value] : json->members)
    {
        auto part = readPart (value, name, false, library);
        if (! isPresetName (name) || name == "ground" || name == "strings")
            reader.fault (value,
                          "\"" + name
                              + "\" cannot name a part: a name has a-z, 0-9 and -, and \"ground\" and \"strings\" are points");
        else if (part && guitar.harness.find (name) == nullptr)
        {
            jacks += part->as<JackPart>() != nullptr ? 1 : 0;
            guitar.harness.addPart (std::move (*part));
        }
    }
    if (jacks != 1
        && std::none_of (json->members.begin(), json->members.end(),
                         [] (const auto& m) { return m.second.find ("jack") != nullptr; }))
        reader.fault (*json, "\"parts\": no jack; a guitar has exactly one, like \"jack\": { \"jack\": \"mono\" }");
    else if (jacks > 1)
        reader.fault (*json, "\"parts\": " + std::to_string (jacks) + " jacks; a guitar has exactly one");

    // Names that refer to other parts.
    for (const auto& part : guitar.harness.parts())
    {
        const auto* at = json->find (part.name);
        const auto* served = part.serves.empty() ? nullptr : guitar.harness.find (part.serves);
        if (! part.serves.empty() && (served == nullptr || served->as<PickupPart>() == nullptr))
            reader.fault (*at, "\"serves\": \"" + part.serves + "\" is no pickup of this guitar");
        const auto* lever = part.as<SwitchPart>();
        if (lever != nullptr && ! lever->on.empty())
            if (const auto* pot = guitar.harness.find (lever->on); pot == nullptr || pot->as<PotPart>() == nullptr)
                reader.fault (*at, "\"on\": \"" + lever->on + "\" is no pot of this guitar");
    }
}

/** A part that could not be read is no reason to complain of every wire to it. */
bool couldBePoint (const SolderPoint& point, const Json* parts, const Harness& harness)
{
    const auto part = point.part();
    return parts != nullptr && parts->find (part) != nullptr && harness.find (part) == nullptr;
}

bool checkPoint (const Json& item, const Json* parts, const Harness& harness, Diagnostics& diagnostics)
{
    if (item.kind != Json::Kind::text)
    {
        addDiagnostic (diagnostics, item, "found " + item.kindName() + ", expected a solder point like \"volume.2\"");
        return false;
    }
    const auto point = SolderPoint::parse (item.text);
    try
    {
        harness.point (point);
        return true;
    }
    catch (const HarnessError& error)
    {
        const auto& all = harness.parts();
        const bool hasJack =
            std::any_of (all.begin(), all.end(), [] (const Part& part) { return part.as<JackPart>() != nullptr; });
        if (couldBePoint (point, parts, harness) || (point == SolderPoint::ground() && ! hasJack))
            return false; // said already
        auto points = harness.allPoints();
        points.push_back (SolderPoint::ground());
        const auto near = nearest (item.text, textsOf (points));
        addDiagnostic (diagnostics, item, std::string (error.what()) + (near.empty() ? "" : "; did you mean \"" + near + "\"?"));
        return false;
    }
}

void readWires (ObjectReader& reader, Guitar& guitar, Library& library)
{
    auto& diagnostics = library.faultList();
    const auto* json = reader.needed ("wires", "\"wires\": [[\"volume.2\", \"jack.tip\"]]: chains of solder points");
    const auto* parts = reader.json().find ("parts");
    if (json == nullptr)
        return;
    if (json->kind != Json::Kind::list)
    {
        reader.fault (*json, "\"wires\": found " + json->kindName() + ", expected a list of chains of solder points");
        return;
    }
    size_t points = 0;
    for (const auto& item : json->items)
        points += item.items.size();
    if (points > limits::wirePoints)
    {
        reader.fault (*json, "\"wires\": found " + std::to_string (points) + " solder points, expected "
                                 + std::to_string (limits::wirePoints) + " at most");
        return;
    }
    for (const auto& item : json->items)
    {
        if (diagnostics.isFull())
            return;
        if (item.kind != Json::Kind::list || item.items.size() < 2)
        {
            reader.fault (
                item, "a wire: found "
                          + (item.kind == Json::Kind::list ? "a list of " + std::to_string (item.items.size()) : item.kindName())
                          + ", expected two solder points or more, like [\"volume.2\", \"jack.tip\"]");
            continue;
        }
        std::vector<SolderPoint> chain;
        bool fine = true;
        for (const auto& pointJson : item.items)
        {
            fine = checkPoint (pointJson, parts, guitar.harness, diagnostics) && fine;
            const auto point = SolderPoint::parse (pointJson.text);
            if (const auto inside = fine ? leadInside (guitar.harness, point) : std::nullopt)
            {
                const auto& part = guitar.harness.partOf (*inside);
                const bool braid = part.as<PickupPart>()->pickup.isOnShieldInside (inside->terminal());
                reader.fault (pointJson,
                              inside->text()
                                  + (braid ? " is joined to the braid inside the pickup: wire \"" + part.name
                                                 + ".shield\" instead, or take \"inside\" away if the pickup has four leads"
                                           : std::string (" is joined inside the pickup and cannot be reached; leave it out, or "
                                                          "take \"inside\" away if the pickup has four leads")));
                fine = false;
            }
            chain.push_back (point);
        }
        if (! fine)
            continue;
        try
        {
            guitar.harness.solder (chain);
        }
        catch (const HarnessError& error)
        {
            reader.fault (item, error.what());
        }
    }
}

/** The capacitance of one run of wire [F]: told as such, or by length and capacitance a metre. */
std::optional<double> readRunFarads (ObjectReader& reader)
{
    const bool told = reader.json().find ("capacitance") != nullptr,
               measured = reader.json().find ("mm") != nullptr || reader.json().find ("per_metre") != nullptr;
    if (told == measured)
    {
        reader.value ("mm");
        reader.value ("per_metre");
        reader.value ("capacitance");
        reader.fault (reader.json(), "a run of wire: expected either \"capacitance\", or \"mm\" and \"per_metre\", like { "
                                     "\"at\": \"selector.out\", \"mm\": 400, \"per_metre\": \"150p\" }");
        return std::nullopt;
    }
    if (told)
        return reader.given (fields::runCapacitance);
    const double mm = reader.quantity (fields::runLength), perMetre = reader.quantity (fields::runPerMetre);
    return mm / 1000.0 * perMetre;
}

void readRuns (ObjectReader& reader, Guitar& guitar, Library& library)
{
    auto& diagnostics = library.faultList();
    const auto* json = reader.value ("runs");
    if (json == nullptr)
        return;
    if (json->kind != Json::Kind::list)
    {
        reader.fault (*json, "\"runs\": found " + json->kindName()
                                 + ", expected a list like [{ \"at\": \"selector.out\", \"mm\": 400, \"per_metre\": \"150p\" }]");
        return;
    }
    if (json->items.size() > limits::parts)
        reader.fault (*json, "\"runs\": found " + std::to_string (json->items.size()) + ", expected "
                                 + std::to_string (limits::parts) + " at most");
    for (const auto& item : json->items)
    {
        if (diagnostics.isFull() || json->items.size() > limits::parts)
            return;
        ObjectReader run (item, "a run of wire", diagnostics);
        if (! run.isObject())
            continue;
        run.text ("about");
        const auto farads = readRunFarads (run);
        const auto* at = run.needed ("at", "\"at\": the solder point that the wire leads to, like \"selector.out\"");
        run.finish();
        if (at == nullptr || ! farads || ! checkPoint (*at, reader.json().find ("parts"), guitar.harness, diagnostics))
            continue;
        const auto point = SolderPoint::parse (at->text);
        if (const auto inside = leadInside (guitar.harness, point))
            reader.fault (*at, inside->text() + " is joined inside the pickup: no wire leads to it");
        else if (point == SolderPoint::strings() || guitar.harness.point (point) == guitar.harness.point (SolderPoint::ground()))
            reader.fault (*at, "\"" + point.text()
                                   + "\" is ground: a run of wire there adds nothing; name the end that carries the signal");
        else
            guitar.harness.addRun (point, *farads);
    }
}
}

std::optional<Guitar> readGuitar (const Resolved& resolved, Library& library)
{
    auto& diagnostics = library.faultList();
    const auto before = diagnostics.raised();
    ObjectReader reader (resolved.json, "a guitar", diagnostics);
    if (! reader.isObject())
        return std::nullopt;
    Guitar guitar;
    guitar.preset = resolved.preset;
    guitar.name = reader.text ("name", resolved.preset);
    reader.text ("about");
    reader.texts ("also_called"); // read by PresetSearch
    guitar.strings = readStrings (reader);
    const auto scales = readScale (reader, guitar.strings.size());
    for (size_t i = 0; i < guitar.strings.size() && i < scales.size(); ++i)
        guitar.strings[i].scaleMm = scales[i];
    readParts (reader, guitar, library);
    readWires (reader, guitar, library);
    readRuns (reader, guitar, library);
    reader.finish();
    if (diagnostics.raised() == before)
        if (const auto why = whyUnsound (guitar.harness); ! why.empty())
            reader.fault (resolved.json, why);
    if (diagnostics.raised() == before)
        if (const auto why = whyUnheard (guitar.harness, guitar.strings); ! why.empty())
            reader.fault (resolved.json, why);
    if (diagnostics.raised() != before)
        return std::nullopt;
    return guitar;
}
}
