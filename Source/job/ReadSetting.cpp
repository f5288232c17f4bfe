#include "job/Fields.h"
#include "job/Readers.h"

#include "files/Quantity.h"

#include <algorithm>

namespace coldiron
{
namespace
{
void readControl (const Control& control, const Json& value, Setting& setting, Diagnostics& diagnostics)
{
    if (control.positions.empty())
    {
        if (const auto knob = readQuantity (value, "the knob \"" + control.name + "\"", fields::knob, diagnostics))
            setting.knobs[control.name] = *knob;
        return;
    }
    const auto position = value.plain().value_or (std::string());
    if (std::find (control.positions.begin(), control.positions.end(), position) != control.positions.end())
        setting.levers[control.name] = position;
    else
        addDiagnostic (diagnostics, value,
                       "the switch \"" + control.name + "\": found " + value.kindName()
                           + ", expected one of its positions: " + listed (control.positions));
}
}

Setting readSetting (const Json* json, const Harness& harness, Diagnostics& diagnostics)
{
    Setting setting;
    if (json == nullptr)
        return setting;
    if (json->kind != Json::Kind::object)
    {
        addDiagnostic (diagnostics, *json,
                       "\"setting\": found " + json->kindName() + ", expected { \"volume\": 10, \"selector\": \"bridge\" }");
        return setting;
    }
    const auto all = controls (harness);
    std::vector<std::string> names;
    for (const auto& control : all)
        names.push_back (control.name);
    for (size_t i = 0; i < json->members.size(); ++i)
    {
        const auto& [name, value] = json->members[i];
        const auto found = std::find_if (all.begin(), all.end(), [&n = name] (const Control& c) { return c.name == n; });
        if (found != all.end())
        {
            readControl (*found, value, setting, diagnostics);
            continue;
        }
        const auto near = nearest (name, names);
        addDiagnostic (diagnostics, value.file != nullptr ? *value.file : std::string(), json->memberLines[i],
                       "there is no knob or switch \"" + name + "\" here"
                           + (near.empty() ? "." : "; did you mean \"" + near + "\"?") + " There are: " + listed (names));
    }
    return setting;
}

Load readLoad (const Json& json, const Load& standard, Diagnostics& diagnostics)
{
    ObjectReader reader (json, "a load", diagnostics);
    Load load = standard;
    static const std::vector<std::string> plugs { "mono", "stereo-tip", "stereo-ring" }; // in the order of Plug
    const auto plug = reader.word ("plug", plugs, plugs[static_cast<size_t> (load.plug)]);
    load.plug = static_cast<Plug> (std::find (plugs.begin(), plugs.end(), plug) - plugs.begin());
    load.cableFarads = reader.quantity (fields::cable, load.cableFarads);
    if (const auto* input = reader.value ("input"))
    {
        ObjectReader inputReader (*input, "an input", diagnostics);
        load.inputOhms = inputReader.quantity (fields::inputResistance, load.inputOhms);
        load.inputFarads = inputReader.quantity (fields::inputCapacitance, load.inputFarads);
        inputReader.finish();
    }
    reader.finish();
    return load;
}
}
