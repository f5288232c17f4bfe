#include "analysis/StrikeTable.h"

#include "analysis/BenchLikelihood.h"
#include "analysis/BenchPrediction.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
constexpr size_t mostStrikeSettings = 400; ///< positions of all switches taken together that are looked at

bool isSameSound (const StrikeRow& a, const StrikeRow& b)
{
    for (size_t i = 0; i < a.coils.size(); ++i)
        if (a.coils[i].tap != b.coils[i].tap || a.coils[i].kick != b.coils[i].kick)
            return false;
    return a.coils.size() == b.coils.size();
}

std::vector<Setting> switchSettings (const Harness& harness)
{
    std::vector<Setting> settings (1);
    for (const auto& control : controls (harness))
    {
        if (control.positions.empty())
            continue;
        std::vector<Setting> next;
        for (const auto& setting : settings)
            for (const auto& position : control.positions)
                if (next.size() < mostStrikeSettings)
                {
                    next.push_back (setting);
                    next.back().levers[control.name] = position;
                }
        settings = std::move (next);
    }
    return settings;
}
}

std::vector<StrikeRow> strikeTable (const Harness& harness, const Load& listening)
{
    std::vector<StrikePlace> places;
    for (const auto& place : strikePlaces (harness))
    {
        const auto* pickup = harness.find (place.pickup);
        const bool hasOneCoil = pickup != nullptr && pickup->as<PickupPart>()->pickup.coils.size() == 1;
        if (place.reference > 0.0 && (place.coil.empty() ? hasOneCoil : ! hasOneCoil))
            places.push_back (place);
    }
    std::vector<StrikeRow> rows;
    for (const auto& setting : switchSettings (harness))
    {
        const auto prediction = predictBench (harness, setting, listening, places);
        StrikeRow row;
        for (const auto& [lever, position] : setting.levers)
            row.levers.emplace_back (lever, position);
        double strongest = 0.0;
        for (const double kick : prediction.kicks)
            if (std::abs (kick) > std::abs (strongest))
                strongest = kick;
        for (size_t i = 0; i < places.size(); ++i)
        {
            CoilStrike coil { places[i].pickup, places[i].coil };
            const double db = prediction.tapDb[i];
            coil.tap = db > BenchLikelihood::loudDb     ? CoilStrike::Tap::loud
                       : db > BenchLikelihood::silentDb ? CoilStrike::Tap::weak
                                                        : CoilStrike::Tap::none;
            if (std::abs (prediction.kicks[i]) > BenchLikelihood::leastKick)
                coil.kick = prediction.kicks[i] * strongest > 0.0 ? 1 : -1; // the strongest is called +
            row.coils.push_back (coil);
        }
        if (std::none_of (rows.begin(), rows.end(), [&] (const StrikeRow& known) { return isSameSound (known, row); }))
            rows.push_back (row);
    }
    return rows;
}
}
