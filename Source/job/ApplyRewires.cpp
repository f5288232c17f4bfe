#include "job/Readers.h"

#include "files/Limits.h"
#include "files/Quantity.h"

#include <algorithm>
#include <numeric>

namespace coldiron
{
namespace
{
/** Why a sequence stopped, in words, or the harness it ends in. */
struct Outcome
{
    std::optional<Harness> harness;
    size_t refused = 0; ///< place in the list
    std::string why;
};

std::string whyStepReachesInside (const Harness& harness, const Step& step)
{
    auto points = step.points;
    for (const auto& point : { step.from, step.to, step.leaving })
        points.push_back (point);
    for (const auto& point : points)
        if (const auto lead = leadInside (harness, point))
            return lead->text()
                   + " is joined inside the pickup and cannot be reached; it needs a pickup with four leads, or this one opened";
    return {};
}

std::string place (const RewireUse& use, size_t step)
{
    const auto line = use.steps[step].line;
    return "step " + std::to_string (step + 1) + " of \"" + use.name + "\""
           + (use.file.empty() ? "" : " (" + use.file + (line > 0 ? ":" + std::to_string (line) : "") + ")") + ", "
           + inWords (use.steps[step]);
}

std::string applyOne (Harness& harness, const RewireUse& use)
{
    if (const auto why = whyNotFilled (use, harness); ! why.empty())
        return "\"" + use.name + "\" cannot be done: " + why;
    const Harness before = harness;
    for (size_t i = 0; i < use.steps.size(); ++i)
    {
        auto why = whyStepReachesInside (harness, use.steps[i]);
        if (why.empty())
            try
            {
                harness = applyStep (harness, use.steps[i]);
                why = whyUnsound (harness);
            }
            catch (const HarnessError& error)
            {
                why = error.what();
            }
        if (! why.empty())
            return place (use, i) + ": " + why;
    }
    if (harness.sameAs (before))
        return "\"" + use.name + "\" changes nothing: the guitar is wired so already";
    return {};
}

Outcome applyAll (const Harness& start, const std::vector<RewireUse>& uses, const std::vector<size_t>& order)
{
    Harness harness = start;
    for (const auto index : order)
        if (const auto why = applyOne (harness, uses[index]); ! why.empty())
            return { std::nullopt, index, why };
    return { std::move (harness), 0, {} };
}

/** Other orders worth a try: all of up to five rewires, else the refused one at every other place. */
std::vector<std::vector<size_t>> otherOrders (size_t count, size_t refused)
{
    std::vector<size_t> given (count);
    std::iota (given.begin(), given.end(), size_t { 0 });
    std::vector<std::vector<size_t>> orders;
    if (count <= 5)
    {
        auto order = given;
        while (std::next_permutation (order.begin(), order.end()))
            orders.push_back (order);
        return orders;
    }
    for (size_t to = 0; to < count; ++to)
    {
        auto order = given;
        order.erase (order.begin() + static_cast<std::ptrdiff_t> (refused));
        order.insert (order.begin() + static_cast<std::ptrdiff_t> (to), refused);
        if (to != refused)
            orders.push_back (std::move (order));
    }
    return orders;
}

std::string aboutOtherOrders (const Harness& start, const std::vector<RewireUse>& uses, size_t refused)
{
    if (uses.size() < 2)
        return {};
    size_t steps = 0;
    for (const auto& use : uses)
        steps += use.steps.size();
    if (steps * otherOrders (uses.size(), refused).size() > limits::triedSteps)
        return " So many steps were not tried in another order.";
    if (! applyAll (start, uses, { refused }).harness && uses.size() == 2)
        return " It is refused on this guitar by itself too.";
    for (const auto& order : otherOrders (uses.size(), refused))
        if (applyAll (start, uses, order).harness)
        {
            std::vector<std::string> names;
            for (const auto index : order)
                names.push_back ("\"" + uses[index].name + "\"");
            return " Another order works: " + listed (names, 100) + ".";
        }
    return uses.size() <= 5 ? " No other order works." : " Moving it to another place in the list does not help.";
}
}

std::optional<Harness> applyRewires (const Harness& start, const std::vector<RewireUse>& uses, const std::string& file,
                                     Diagnostics& diagnostics)
{
    std::vector<size_t> given (uses.size());
    std::iota (given.begin(), given.end(), size_t { 0 });
    auto outcome = applyAll (start, uses, given);
    if (outcome.harness)
        return outcome.harness;
    addDiagnostic (diagnostics, file, uses[outcome.refused].line,
                   outcome.why + "." + aboutOtherOrders (start, uses, outcome.refused));
    return std::nullopt;
}
}
