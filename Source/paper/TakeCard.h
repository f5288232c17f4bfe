#pragma once

#include "job/Job.h"

#include <set>
#include <string>
#include <vector>

namespace coldiron
{
/** One recording to make: where the controls go and what is heard there. */
struct TakePlan
{
    std::set<std::string> pickups; ///< that are on
    Setting setting;               ///< what differs from all knobs at 10 and all switches at rest
    std::string words;             ///< "selector to bridge", "neck volume to 0", "as it stands"
};

/** Each pickup by itself where the controls allow it, by switches first and by volumes where there is no switch, then
    each pair or more that the switches put together, volumes at 10. In the order of the parts. */
std::vector<TakePlan> takePlans (const Guitar&);

/** What to read before recording a take: one page of A4, HTML that needs nothing from outside and runs no script.
    @param title, wish  of the job; may be empty */
std::string takeCardHtml (const Guitar&, const std::string& title = {}, const std::string& wish = {});
}
