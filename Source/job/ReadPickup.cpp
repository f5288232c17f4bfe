#include "job/Fields.h"
#include "job/Readers.h"

#include "files/Quantity.h"

#include <algorithm>

namespace coldiron
{
namespace
{
std::vector<LossCell> readLosses (const Json* list, Diagnostics& diagnostics)
{
    std::vector<LossCell> cells;
    if (list == nullptr)
        return cells;
    if (list->kind != Json::Kind::list)
    {
        addDiagnostic (diagnostics, *list,
                       "\"loss\": found " + list->kindName()
                           + ", expected a list of { \"inductance\": 0.5, \"resistance\": \"60k\" }");
        return cells;
    }
    if (list->items.size() > 8)
        addDiagnostic (diagnostics, *list,
                       "\"loss\": found " + std::to_string (list->items.size()) + " cells, expected 8 at most");
    for (const auto& item : list->items)
    {
        ObjectReader cell (item, "a loss cell", diagnostics);
        cells.push_back ({ cell.quantity (fields::lossInductance), cell.quantity (fields::lossResistance) });
        cell.finish();
    }
    return cells;
}

Coil readCoil (const std::string& name, const Json& json, Diagnostics& diagnostics)
{
    ObjectReader reader (json, "a coil", diagnostics);
    Coil coil;
    coil.name = name;
    coil.dcrOhms = reader.quantity (fields::dcr);
    coil.henries = reader.quantity (fields::inductance);
    coil.farads = reader.quantity (fields::capacitance);
    coil.losses = readLosses (reader.value ("loss"), diagnostics);
    const auto magnet = reader.word ("magnet", { "north", "south", "none" }, "north");
    coil.magnet = magnet == "north" ? Magnet::north : magnet == "south" ? Magnet::south : Magnet::none;
    coil.wound = reader.word ("wound", { "clockwise", "counter-clockwise" }, "clockwise") == "clockwise"
                     ? Wound::clockwise
                     : Wound::counterClockwise;
    coil.offsetMm = reader.quantity (fields::offset);
    coil.turns = reader.quantity (fields::turns);
    coil.output = reader.quantity (fields::output, coil.turns / fields::turns.standard);
    coil.hears = reader.texts ("hears");
    reader.finish();
    return coil;
}

void readInside (const Json* list, Pickup& pickup, Diagnostics& diagnostics)
{
    if (list == nullptr)
        return;
    std::vector<std::string> leads;
    for (const auto& coil : pickup.coils)
        for (const char* end : { ".start", ".finish" })
            leads.push_back (coil.name + end);
    if (pickup.shield)
        leads.emplace_back ("shield");
    if (list->kind != Json::Kind::list)
    {
        addDiagnostic (diagnostics, *list, "\"inside\": found " + list->kindName() + ", expected a list of pairs of leads");
        return;
    }
    for (const auto& item : list->items)
    {
        const auto names = readTexts (item, "a joint inside", diagnostics);
        if (names.size() != 2 || names[0] == names[1])
        {
            addDiagnostic (diagnostics, item,
                           "a joint inside: expected two different leads, like [\"north.finish\", \"south.finish\"]");
            continue;
        }
        bool known = true;
        for (size_t i = 0; i < 2; ++i)
            if (std::find (leads.begin(), leads.end(), names[i]) == leads.end())
            {
                addDiagnostic (diagnostics, item.items[i],
                               "the pickup has no lead \"" + names[i] + "\"; it has " + listed (leads));
                known = false;
            }
        if (known)
            pickup.inside.push_back ({ names[0], names[1] });
    }
}
}

Pickup readPickup (const Json& json, Diagnostics& diagnostics)
{
    ObjectReader reader (json, "a pickup", diagnostics);
    Pickup pickup;
    pickup.name = reader.text ("name");
    reader.text ("about");
    pickup.coupling = reader.quantity (fields::coupling);
    pickup.slantMm = reader.quantity (fields::slant);
    pickup.shield = reader.flag ("shield");
    const auto known = reader.word ("known", { "assumed", "from ohms", "measured" }, "assumed");
    pickup.known = known == "measured" ? Provenance::measured : known == "from ohms" ? Provenance::fromOhms : Provenance::assumed;

    const auto* coils = reader.needed ("coils", "\"coils\": { \"coil\": { \"dcr\": \"6k\", \"inductance\": 2.5 } }");
    if (coils != nullptr && coils->kind == Json::Kind::object)
    {
        for (size_t i = 0; i < coils->members.size(); ++i)
        {
            const auto& [name, coil] = coils->members[i];
            if (! isPresetName (name) || name == "shield")
                addDiagnostic (diagnostics, coil, "\"" + name + "\" cannot name a coil: a name has a-z, 0-9 and -");
            pickup.coils.push_back (readCoil (name, coil, diagnostics));
        }
        if (pickup.coils.empty() || pickup.coils.size() > 8)
            addDiagnostic (diagnostics, *coils, "\"coils\": found " + std::to_string (pickup.coils.size()) + ", expected 1 to 8");
    }
    else if (coils != nullptr)
        addDiagnostic (diagnostics, *coils, "\"coils\": found " + coils->kindName() + ", expected an object of coils by name");

    const auto count = static_cast<double> (pickup.coils.size());
    if (count > 2 && pickup.coupling <= -1.0 / (count - 1.0))
        addDiagnostic (diagnostics, *json.find ("coupling"),
                       "\"coupling\": " + std::to_string (pickup.coils.size())
                           + " coils cannot oppose each other so much; expected more than "
                           + quantityText (-1.0 / (count - 1.0)));
    readInside (reader.value ("inside"), pickup, diagnostics);

    const auto* colours = reader.value ("lead_colours");
    if (colours != nullptr && colours->kind == Json::Kind::object)
    {
        for (const auto& [lead, colour] : colours->members)
        {
            const auto isKnown =
                std::any_of (pickup.coils.begin(), pickup.coils.end(),
                             [&lead = lead] (const Coil& c) { return lead == c.name + ".start" || lead == c.name + ".finish"; });
            if (! isKnown && lead != "shield")
                addDiagnostic (diagnostics, colour, "\"lead_colours\": the pickup has no lead \"" + lead + "\"");
            else if (colour.kind != Json::Kind::text)
                addDiagnostic (diagnostics, colour,
                               "\"lead_colours\": found " + colour.kindName() + ", expected a colour's name");
            else
                pickup.colours.emplace_back (lead, colour.text);
        }
    }
    else if (colours != nullptr)
        addDiagnostic (diagnostics, *colours,
                       "\"lead_colours\": found " + colours->kindName() + ", expected { \"north.start\": \"red\" }");
    reader.finish();
    return pickup;
}
}
