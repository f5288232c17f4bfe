// A pickup preset's text as a pickup.

#include "job/Readers.h"
#include "job/Readings.h"

namespace coldiron
{
std::optional<Pickup> readPickupText (const std::string& text, const std::string& file, const PresetFolders& folders,
                                      Diagnostics& diagnostics)
{
    const auto before = diagnostics.raised();
    Json json;
    if (! parseJson (text, file, json, diagnostics))
        return std::nullopt;
    Library library (folders, diagnostics);
    checkTag (json, "pickup", diagnostics);
    const auto resolved = library.resolve ("pickup", json);
    if (! resolved)
        return std::nullopt;
    auto pickup = readPickup (resolved->json, diagnostics);
    if (diagnostics.raised() > before)
        return std::nullopt;
    return pickup;
}
}
