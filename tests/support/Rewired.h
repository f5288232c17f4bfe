#pragma once

#include "support/Catalogue.h"

#include "analysis/OhmTable.h"
#include "response/PickupsHeard.h"

namespace coldiron::support
{
/** A rewire and what its asks are filled with. */
struct Named
{
    std::string preset;
    Arguments arguments;
};

inline Guitar guitarOf (const std::string& name) { return allGuitars ({ name }).front(); }

inline CircuitConfig configOf (const Guitar& guitar, const Harness& harness, const Setting& setting)
{
    StringSet strings;
    strings.strings = guitar.strings;
    strings.played.assign (guitar.strings.size(), true);
    return { harness, setting, {}, strings };
}

/** The guitar after the rewires, one after another; nothing where one is refused, and why. */
inline std::optional<Harness> tryRewired (const Guitar& guitar, const std::vector<Named>& jobs, std::string& why)
{
    Harness harness = guitar.harness;
    for (const auto& job : jobs)
    {
        Diagnostics diagnostics;
        const auto use = fillRewire (job.preset, job.arguments, harness, shipped(), diagnostics);
        const auto next = use ? applyRewires (harness, { *use }, "job", diagnostics) : std::nullopt;
        if (! next)
        {
            why = diagnostics.empty() ? "no reason" : diagnostics.front().message;
            return std::nullopt;
        }
        harness = *next;
    }
    return harness;
}

inline Harness rewired (const Guitar& guitar, const std::vector<Named>& jobs)
{
    std::string why;
    auto harness = tryRewired (guitar, jobs, why);
    INFO (why);
    REQUIRE (harness.has_value());
    return *harness;
}

inline std::string whyRefused (const Guitar& guitar, const std::vector<Named>& jobs)
{
    std::string why;
    CHECK_FALSE (tryRewired (guitar, jobs, why).has_value());
    return why;
}

inline std::set<std::string> heard (const Guitar& guitar, const Harness& harness, const Setting& setting)
{
    return pickupsHeard (configOf (guitar, harness, setting));
}

/** What a meter reads at the jack, volumes full. */
inline double ohmsAt (const Harness& harness, const std::map<std::string, std::string>& levers)
{
    Setting setting;
    setting.levers = levers;
    return ohmReading (harness, setting).ohms;
}

inline double parallel (std::initializer_list<double> ohms)
{
    double sum = 0.0;
    for (const double r : ohms)
        sum += 1.0 / r;
    return 1.0 / sum;
}

inline double levelDb (const Guitar& guitar, const Harness& harness, const Setting& setting, double hz)
{
    return 20.0 * std::log10 (std::abs (configOf (guitar, harness, setting).response().unisonResponse (hz)) + 1e-15);
}
}
