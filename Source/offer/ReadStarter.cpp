#include "offer/Starter.h"

#include "job/Readers.h"

#include "files/Quantity.h"

#include <algorithm>

namespace coldiron
{
namespace
{
const std::vector<std::pair<std::string, StarterProof>> proofs { { "quieter", StarterProof::quieter },
                                                                 { "brighter", StarterProof::brighter },
                                                                 { "clear when turned down", StarterProof::clearWhenTurnedDown },
                                                                 { "another voice", StarterProof::anotherVoice },
                                                                 { "independent", StarterProof::independent } };
const std::vector<std::string> argumentKinds { "pot",    "volume", "tone",      "pickup",   "coil",
                                               "switch", "point",  "capacitor", "resistor", "part" };

std::string plain (const Json& json, const std::string& what, Diagnostics& diagnostics)
{
    if (json.kind == Json::Kind::text)
        return json.text;
    if (json.kind == Json::Kind::number)
        return json.dump();
    addDiagnostic (diagnostics, json, what + ": found " + json.kindName() + ", expected a text or a number");
    return {};
}

std::vector<std::pair<std::string, std::string>> readPairs (const Json* json, const std::string& what, Diagnostics& diagnostics)
{
    std::vector<std::pair<std::string, std::string>> pairs;
    if (json == nullptr)
        return pairs;
    if (json->kind != Json::Kind::object)
        addDiagnostic (diagnostics, *json, "\"" + what + "\": found " + json->kindName() + ", expected { name: text }");
    for (const auto& [key, value] : json->members)
        pairs.emplace_back (key, plain (value, "\"" + key + "\"", diagnostics));
    return pairs;
}

StarterRewire readRewire (const Json& json, Library& library)
{
    StarterRewire rewire;
    auto& diagnostics = library.faultList();
    const auto* use = json.find ("use");
    if (use == nullptr || use->kind != Json::Kind::text)
    {
        addDiagnostic (diagnostics, json, "a rewire: found " + json.kindName() + ", expected { \"use\": \"NAME\", ... }");
        return rewire;
    }
    rewire.preset = use->text;
    std::vector<std::string> asked;
    if (const auto resolved = library.resolve ("rewire", *use))
        if (const auto info = readRewireInfo (*resolved, library))
            for (const auto& ask : info->asks)
                asked.push_back (ask.name);
    for (const auto& [key, value] : json.members)
    {
        if (key == "use")
            continue;
        if (! asked.empty() && std::find (asked.begin(), asked.end(), key) == asked.end())
            addDiagnostic (diagnostics, value,
                           "\"" + use->text + "\" does not ask for \"" + key + "\"; it asks for " + listed (asked));
        rewire.arguments.emplace_back (key, plain (value, "\"" + key + "\"", diagnostics));
    }
    return rewire;
}

StarterCandidate readCandidate (const Json& json, Library& library)
{
    auto& diagnostics = library.faultList();
    StarterCandidate candidate;
    ObjectReader reader (json, "a candidate", diagnostics);
    reader.needed ("name", "\"name\": \"{pickup}, coils in parallel\"");
    candidate.name = reader.text ("name");
    reader.text ("about");
    candidate.asks = readPairs (reader.value ("asks"), "asks", diagnostics);
    for (const auto& [name, kind] : candidate.asks)
        if (std::find (argumentKinds.begin(), argumentKinds.end(), kind) == argumentKinds.end())
            addDiagnostic (diagnostics, *json.find ("asks"),
                           "\"" + name + "\" asks for \"" + kind + "\", expected one of: " + listed (argumentKinds));
    candidate.setting = readPairs (reader.value ("setting"), "setting", diagnostics);
    candidate.hear = reader.texts ("hear");
    if (const auto* rewires = reader.value ("rewires"))
    {
        if (rewires->kind != Json::Kind::list)
            addDiagnostic (diagnostics, *rewires,
                           "\"rewires\": found " + rewires->kindName() + ", expected a list of { \"use\": \"NAME\", ... }");
        for (const auto& item : rewires->items)
            candidate.rewires.push_back (readRewire (item, library));
    }
    reader.finish();
    return candidate;
}
}

std::optional<Starter> readStarter (const std::string& preset, const PresetFolders& presets, Diagnostics& diagnostics)
{
    const auto before = diagnostics.raised();
    Library library (presets, diagnostics);
    const auto resolved = library.resolve ("starter", preset);
    if (! resolved)
        return std::nullopt;
    ObjectReader reader (resolved->json, "a starter set", diagnostics);
    Starter starter;
    starter.preset = preset;
    starter.name = reader.text ("name", preset);
    reader.text ("about");
    reader.texts ("also_called"); // read by PresetSearch
    starter.says = reader.text ("says");
    starter.wish = reader.text ("wish");
    std::vector<std::string> allowed { "" };
    for (const auto& [word, proof] : proofs)
        allowed.push_back (word);
    const auto proved = reader.word ("proof", allowed, "");
    for (const auto& [word, proof] : proofs)
        if (proved == word)
            starter.proof = proof;
    if (const auto* list = reader.needed ("candidates", "\"candidates\": [ { \"name\": ..., \"asks\": { }, \"rewires\": [ ] } ]"))
    {
        if (list->kind != Json::Kind::list || list->items.empty() || list->items.size() > 100)
            addDiagnostic (diagnostics, *list,
                           "\"candidates\": found " + list->kindName() + ", expected a list of 1 to 100 candidates");
        for (const auto& item : list->items)
            starter.candidates.push_back (readCandidate (item, library));
    }
    reader.finish();
    return diagnostics.raised() == before ? std::optional<Starter> (std::move (starter)) : std::nullopt;
}
}
