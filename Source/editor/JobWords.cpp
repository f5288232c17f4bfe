#include "editor/JobWords.h"

#include "session/JobEditor.h"

#include <nlohmann/json.hpp>

namespace coldiron::jobwords
{
namespace
{
juce::String field (const JobEditor& editor, const char* key)
{
    const auto json = nlohmann::ordered_json::parse (editor.text(), nullptr, false, true);
    if (! json.is_object() || ! json.contains (key) || ! json[key].is_string())
        return {};
    return words::from (json[key].get<std::string>());
}
}

juce::String client (const JobEditor& editor) { return words::from (editor.job()->wish); }
juce::String agreed (const JobEditor& editor) { return field (editor, "agreed"); }

juce::String point (const Harness& harness, const std::string& fullPoint)
{
    const auto [partName, terminal] = splitPoint (fullPoint);
    const auto* part = harness.find (partName);
    auto text = words::plain (partName) + " ";
    if (part != nullptr && part->as<PotPart>() != nullptr && terminal != "case")
        return text + "lug " + words::from (terminal);
    if (part != nullptr && part->isLead (terminal) && part->as<PickupPart>() == nullptr)
        return words::plain (partName);
    return text + words::from (terminal).replaceCharacters (".-", "  ");
}

juce::String made (const Harness& harness, const Changes::Made& step)
{
    const bool leadSecond = harness.isLead (step.pair.second) && ! harness.isLead (step.pair.first);
    return point (harness, leadSecond ? step.pair.second : step.pair.first) + " to "
           + point (harness, leadSecond ? step.pair.first : step.pair.second);
}
}
