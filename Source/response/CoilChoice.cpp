#include "response/CoilChoice.h"

#include "response/SourceResponses.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
constexpr double hz = 100.0;

/** The part of z in phase with reference. */
double inStep (std::complex<double> z, std::complex<double> reference)
{
    const double size = std::abs (reference);
    return size > 0.0 ? (z * std::conj (reference)).real() / size : 0.0;
}

double db (double ratio) { return 20.0 * std::log10 (std::max (ratio, 1e-6)); }

/** A coil that is the only one of its pickup to be heard. */
struct KeptSettings
{
    std::string pickup, coil;
    double hum = 0.0, strings = 0.0;
};

std::vector<KeptSettings> keptAlone (const GuitarResponse& response)
{
    const auto hums = coilHums (response);
    const auto strings = sourceResponses (response, hz);
    double loudest = 0.0;
    std::complex<double> reference;
    for (size_t k = 0; k < hums.size(); ++k)
        if (std::abs (hums[k].share) > loudest)
        {
            loudest = std::abs (hums[k].share);
            reference = strings[static_cast<int> (k)];
        }
    std::vector<KeptSettings> kept;
    for (size_t k = 0; k < hums.size(); ++k)
        if (std::abs (hums[k].share) > 0.1 * loudest) // a shorted neighbour answers through its coupling, far softer
            kept.push_back ({ hums[k].pickup, hums[k].coil, hums[k].share, inStep (strings[static_cast<int> (k)], reference) });
    return kept;
}

const Pickup* pickupOf (const Harness& harness, const std::string& name)
{
    for (const Part& part : harness.parts())
        if (part.name == name && part.as<PickupPart>() != nullptr)
            return &part.as<PickupPart>()->pickup;
    return nullptr;
}

const Coil* coilOf (const Pickup* pickup, const std::string& name)
{
    if (pickup != nullptr)
        for (const Coil& coil : pickup->coils)
            if (coil.name == name)
                return &coil;
    return nullptr;
}

std::vector<OtherCoil> atSetting (const CircuitConfig& config)
{
    std::vector<OtherCoil> found;
    const auto kept = keptAlone (config.response());
    if (kept.size() != 2 || kept[0].pickup == kept[1].pickup || kept[0].hum * kept[1].hum <= 0.0
        || kept[0].strings * kept[1].strings <= 0.0)
        return found;
    for (size_t i : { size_t (1), size_t (0) })
    {
        const KeptSettings &change = kept[i], &stays = kept[1 - i];
        const Pickup* pickup = pickupOf (config.harness, change.pickup);
        const Coil* now = coilOf (pickup, change.coil);
        if (now == nullptr)
            continue;
        for (const Coil& other : pickup->coils)
            if (other.name != now->name && other.magnet != Magnet::none && now->magnet != Magnet::none
                && other.magnet != now->magnet)
            {
                const double loudest = std::max (std::abs (change.hum), std::abs (stays.hum));
                OtherCoil choice { {},
                                   {},
                                   change.pickup,
                                   change.coil,
                                   other.name,
                                   db (std::abs (change.hum + stays.hum) / loudest),
                                   db (std::abs (stays.hum - change.hum * other.turns / now->turns) / loudest) };
                if (choice.otherHumDb < choice.humDb - 6.0)
                    found.push_back (choice);
                break;
            }
    }
    return found;
}
}

std::vector<CoilHum> coilHums (const GuitarResponse& response)
{
    Eigen::VectorXcd h (response.numCoils());
    response.humResponses (hz, h.data());
    int most = 0;
    for (int k = 1; k < response.numCoils(); ++k)
        if (std::abs (h[k]) > std::abs (h[most]))
            most = k;
    std::vector<CoilHum> hums;
    for (int k = 0; k < response.numCoils(); ++k)
    {
        const auto& coil = response.guitar().coils[static_cast<size_t> (k)];
        hums.push_back ({ coil.pickup, coil.coil, inStep (h[k], h[most]) });
    }
    return hums;
}

std::vector<OtherCoil> otherCoils (const CircuitConfig& option, const Cancellation& isUnwanted)
{
    CircuitConfig config = option;
    for (const Control& control : controls (config.harness))
        if (control.positions.empty())
            config.setting.knobs[control.name] = control.rest;
    if (auto here = atSetting (config); ! here.empty())
        return here;
    for (const Control& control : controls (config.harness))
        for (const std::string& position : control.positions)
        {
            isUnwanted.check();
            CircuitConfig thrown = config;
            thrown.setting.levers[control.name] = position;
            auto found = atSetting (thrown);
            for (OtherCoil& choice : found)
            {
                choice.lever = control.name;
                choice.position = position;
            }
            if (! found.empty())
                return found;
        }
    return {};
}
}
