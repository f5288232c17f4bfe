#include "response/Volumes.h"

#include "guitar/Nets.h"
#include "response/SourceResponses.h"
#include "response/StringResponse.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
constexpr double mutedDb = -40.0;
constexpr double differenceShare = 0.1; ///< of what is heard changes where a volume goes from 10 to 0

/** All coils' power: nothing cancels, whatever the phase of the pickups. */
double powerDb (const CircuitConfig& config, const Setting& setting, double hz)
{
    CircuitConfig turned = config;
    turned.setting = setting;
    const GuitarResponse response = turned.response();
    const double power = sourceResponses (response, hz).squaredNorm();
    return power > 1e-30 ? 10.0 * std::log10 (power) : -300.0;
}

double dropDb (const CircuitConfig& config, Setting setting, const std::string& knob)
{
    setting.knobs[knob] = 10.0;
    const double open = powerDb (config, setting, 500.0);
    setting.knobs[knob] = 0.0;
    return open <= -300.0 ? 0.0 : powerDb (config, setting, 500.0) - open;
}

/** Whether turning the knob to 0 changes any coil's share of what is heard: in a middle position their sum may even rise. */
bool isHeard (const CircuitConfig& config, const Setting& setting, const std::string& knob)
{
    CircuitConfig turned = config;
    turned.setting = setting;
    turned.setting.knobs[knob] = 10.0;
    const Eigen::VectorXcd open = sourceResponses (turned.response(), 500.0);
    turned.setting.knobs[knob] = 0.0;
    return (sourceResponses (turned.response(), 500.0) - open).norm() > differenceShare * open.norm();
}

std::vector<std::string> heardKnobs (const CircuitConfig& config, const Setting& setting)
{
    std::vector<std::string> heard;
    for (const auto& knob : volumeKnobs (config.harness, setting))
        if (isHeard (config, setting, knob))
            heard.push_back (knob);
    return heard;
}

/** The lever positions, own setting first, where two volumes or more are heard with all of them at 10. */
std::optional<Setting> whereTwoAreHeard (const CircuitConfig& config, const Cancellation& isUnwanted)
{
    std::vector<Setting> settings { config.setting };
    settings.front().knobs.clear();
    constexpr size_t limit = 256;
    for (const auto& control : controls (config.harness))
    {
        if (control.positions.empty())
            continue;
        const size_t before = settings.size();
        for (size_t i = 0; i < before; ++i)
            for (const auto& position : control.positions)
            {
                auto next = settings[i];
                next.levers[control.name] = position;
                if (settings.size() < limit && std::find (settings.begin(), settings.end(), next) == settings.end())
                    settings.push_back (next);
            }
    }
    for (const auto& setting : settings)
    {
        isUnwanted.check();
        if (volumeKnobs (config.harness, setting).size() > 1 && heardKnobs (config, setting).size() > 1)
            return setting;
    }
    return {};
}

std::vector<VolumeStep> stepsOf (const CircuitConfig& config, const std::string& knob, const Clarity* clarity,
                                 const Cancellation& isUnwanted)
{
    std::vector<VolumeStep> steps;
    CircuitConfig turned = config;
    double openDb = 0.0;
    std::optional<double> openClarity;
    for (const double value : { 10.0, 8.0, 6.0, 4.0, 2.0 })
    {
        isUnwanted.check();
        turned.setting.knobs[knob] = value;
        const double level = 20.0 * std::log10 (stringResponse (turned.response(), 500.0) + 1e-15);
        const auto clear = clarity != nullptr ? clarity->db (turned) : std::nullopt;
        if (steps.empty())
        {
            openDb = level;
            openClarity = clear;
        }
        steps.push_back (
            { value, level - openDb, clear && openClarity ? std::optional<double> (*clear - *openClarity) : std::nullopt });
    }
    return steps;
}
}

std::vector<std::string> volumeKnobs (const Harness& harness, const Setting& setting)
{
    const Nets nets (harness, setting);
    const int groundNet = nets.net (harness.point ("ground"));
    std::vector<std::string> knobs;
    for (const auto& part : harness.parts())
    {
        if (part.as<PotPart>() == nullptr)
            continue;
        const int one = nets.net (part.name + ".1"), wiper = nets.net (part.name + ".2"), three = nets.net (part.name + ".3");
        const int far = one == groundNet ? three : one;
        if (wiper == groundNet || (one == groundNet) == (three == groundNet) || far == wiper)
            continue;
        const auto shared = [&] (int net, const std::string& own)
        {
            for (const auto& point : harness.allPoints())
                if (point != own && nets.net (point) == net)
                    return true;
            return false;
        };
        const std::string farPoint = part.name + (one == groundNet ? ".3" : ".1");
        if (shared (far, farPoint) && shared (wiper, part.name + ".2")
            && std::find (knobs.begin(), knobs.end(), part.knobName()) == knobs.end())
            knobs.push_back (part.knobName());
    }
    return knobs;
}

std::vector<VolumeFigures> volumeFigures (const CircuitConfig& config, const Clarity* clarity, const Cancellation& isUnwanted)
{
    const auto heard = heardKnobs (config, config.setting);
    const auto common = whereTwoAreHeard (config, isUnwanted);
    const auto together = common ? heardKnobs (config, *common) : std::vector<std::string> {};
    std::vector<VolumeFigures> figures;
    for (const auto& knob : volumeKnobs (config.harness, config.setting))
    {
        VolumeFigures volume;
        volume.knob = knob;
        volume.heard = std::find (heard.begin(), heard.end(), knob) != heard.end();
        if (volume.heard)
            volume.steps = stepsOf (config, knob, clarity, isUnwanted);
        if (std::find (together.begin(), together.end(), knob) != together.end())
            volume.mutesOthers = dropDb (config, *common, knob) < mutedDb;
        figures.push_back (std::move (volume));
    }
    return figures;
}
}
