#pragma once

#include "job/Job.h"

#include <string>
#include <vector>

namespace coldiron
{
/** A question about hum, put before any option, since its answers decide whether a rewire can help at all. */
struct HumQuestion
{
    enum class About {
        everyGuitar, ///< is it there with every guitar?
        touch,       ///< what becomes of it when the strings are touched?
        turning      ///< does it change when the player turns?
    };
    About about = About::everyGuitar;
    std::string key;                  ///< in the job, inside "hum"
    std::vector<std::string> answers; ///< as the job's file says them, JSON values: no, yes; or same, falls, rises

    /** Which of the answers was given; none: not asked, or said in a way that none of them has. */
    std::optional<size_t> given (const HumAnswers&) const;
};

/** In the order they are asked: what is mended elsewhere comes before what a rewire can help. */
const std::vector<HumQuestion>& humQuestions();

/** Where the hum comes from, by all answers so far. */
enum class HumCause {
    notAsked,  ///< no answer yet
    open,      ///< the answers so far leave it open
    elsewhere, ///< not this guitar: amplifier, outlet, cable
    touch,     ///< the strings' touch changes it: ground or shield, by HumAnswers::touched
    magnetic,  ///< a field in the coils, which wiring can help
    none       ///< none of the three
};
HumCause humCause (const HumAnswers&);
}
