#include "job/Fields.h"
#include "job/Readers.h"

#include "files/Quantity.h"

#include <algorithm>

namespace coldiron
{
namespace
{
const std::vector<std::string> partKinds { "pickup", "pot", "capacitor", "resistor", "inductor", "switch", "jack", "buffer" };

void readPickupPart (ObjectReader& reader, Part& part, bool inPlace, Library& library)
{
    PickupPart pickup;
    pickup.bridgeMm = inPlace ? reader.quantity (fields::bridgeDistance, 0.0) : reader.quantity (fields::bridgeDistance);
    if (const auto resolved = library.resolve ("pickup", *reader.value ("pickup")))
    {
        pickup.pickup = readPickup (resolved->json, library.faultList());
        part.preset = resolved->preset;
    }
    part.kind = std::move (pickup);
}

void readPot (ObjectReader& reader, Part& part, Library& library)
{
    PotPart pot;
    pot.ohms = reader.quantity (fields::pot);
    if (const auto* taper = reader.value ("taper"))
        pot.taper = readTaper (*taper, library);
    pot.shaft = reader.text ("shaft");
    pot.noLoad = reader.flag ("no_load");
    pot.turnedOver = reader.flag ("turned_over");
    pot.rest = reader.quantity (fields::knob, pot.rest);
    pot.tolerance = reader.quantity (fields::tolerance, pot.tolerance);
    part.kind = std::move (pot);
}

void readSwitchPart (ObjectReader& reader, Part& part, Library& library)
{
    SwitchPart lever;
    if (const auto resolved = library.resolve ("switch", *reader.value ("switch")))
    {
        lever.type = readSwitch (resolved->json, library.faultList());
        part.preset = resolved->preset;
    }
    lever.on = reader.text ("on");
    lever.shaft = reader.text ("shaft");
    part.kind = std::move (lever);
}
}

std::optional<Part> readPart (const Json& json, const std::string& name, bool inPlace, Library& library)
{
    auto& diagnostics = library.faultList();
    ObjectReader reader (json, "the part \"" + name + "\"", diagnostics);
    if (! reader.isObject())
        return std::nullopt;

    std::vector<std::string> found;
    for (const auto& kind : partKinds)
        if (json.find (kind) != nullptr)
            found.push_back (kind);
    if (found.size() != 1)
    {
        std::vector<std::string> keys;
        for (const auto& [key, value] : json.members)
            keys.push_back (key);
        const auto near = found.empty() && ! keys.empty() ? nearest (keys.front(), partKinds) : std::string();
        addDiagnostic (diagnostics, json,
                       "the part \"" + name + "\" "
                           + (found.empty() ? "does not say what it is" : "says it is several things: " + listed (found))
                           + "; expected one of the keys " + listed (partKinds)
                           + (near.empty() ? "" : " (did you mean \"" + near + "\"?)"));
        return std::nullopt;
    }

    Part part;
    part.name = name;
    part.serves = reader.text ("serves");
    const auto& kind = found.front();
    if (kind == "pickup")
        readPickupPart (reader, part, inPlace, library);
    else if (kind == "pot")
        readPot (reader, part, library);
    else if (kind == "switch")
        readSwitchPart (reader, part, library);
    else if (kind == "capacitor")
        part.kind =
            CapacitorPart { reader.quantity (fields::capacitor), reader.quantity (fields::tolerance, CapacitorPart().tolerance) };
    else if (kind == "resistor")
        part.kind =
            ResistorPart { reader.quantity (fields::resistor), reader.quantity (fields::tolerance, ResistorPart().tolerance) };
    else if (kind == "inductor")
        part.kind = InductorPart { reader.quantity (fields::inductor), reader.quantity (fields::inductorResistance),
                                   reader.quantity (fields::tolerance, InductorPart().tolerance) };
    else if (kind == "jack")
        part.kind = JackPart { reader.word (kind, { "mono", "stereo" }, "mono") == "stereo" };
    else
        part.kind = BufferPart { reader.quantity (fields::bufferGain), reader.quantity (fields::bufferInput),
                                 reader.quantity (fields::bufferOutput) };
    reader.finish();
    return part;
}
}
