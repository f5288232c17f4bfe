#include "analysis/HumTriage.h"

namespace coldiron
{
std::optional<size_t> HumQuestion::given (const HumAnswers& hum) const
{
    using Touch = HumAnswers::Touch;
    const auto yesNo = [] (const std::optional<bool>& said)
    { return said ? std::optional<size_t> (*said ? 1 : 0) : std::nullopt; };
    switch (about)
    {
    case About::everyGuitar: return yesNo (hum.everywhere);
    case About::turning: return yesNo (hum.turned);
    case About::touch: break;
    }
    if (! hum.touched || *hum.touched == Touch::changes)
        return {};
    return *hum.touched == Touch::same ? 0 : *hum.touched == Touch::falls ? 1 : 2;
}

const std::vector<HumQuestion>& humQuestions()
{
    // Common practice of the trade, no source.
    static const std::vector<HumQuestion> questions {
        { HumQuestion::About::everyGuitar, "everywhere", { "false", "true" } },
        { HumQuestion::About::touch, "touched", { "\"same\"", "\"falls\"", "\"rises\"" } },
        { HumQuestion::About::turning, "turned", { "false", "true" } }
    };
    return questions;
}

HumCause humCause (const HumAnswers& hum)
{
    if (hum.everywhere.value_or (false))
        return HumCause::elsewhere;
    if (hum.touched && *hum.touched != HumAnswers::Touch::same)
        return HumCause::touch;
    if (hum.turned.value_or (false))
        return HumCause::magnetic;
    if (hum.touched && hum.turned && hum.everywhere)
        return HumCause::none;
    return hum == HumAnswers() ? HumCause::notAsked : HumCause::open;
}
}
