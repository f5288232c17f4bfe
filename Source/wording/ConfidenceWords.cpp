#include "wording/ConfidenceWords.h"

#include "wording/Say.h"

namespace coldiron::wording
{
namespace
{
std::string meaning (Similarity playing)
{
    switch (playing)
    {
    case Similarity::sameCoils: return say ("this option hears the strings just as the take did; only the circuit differs.");
    case Similarity::close:
    case Similarity::fair:
        return say ("this option hears the strings at another place than the take did; tone and level are right on average, "
                    "about as close as playing the phrase twice; single notes can be several dB louder or quieter. "
                    "For riffs and solos: fewer strings, less sure.");
    case Similarity::rough: break;
    }
    return say ("trust the character, thin and hollow, and roughly the level; not single notes. "
                "For riffs and solos: fewer strings, less sure.");
}

/** Empty for a measured guitar. */
std::string meaning (Provenance guitar)
{
    switch (guitar)
    {
    case Provenance::measured: return {};
    case Provenance::fromOhms:
        return say ("the pickup's ohms are known and the rest is scaled from a typical one; "
                    "inductance and capacitance readings would make it surer.");
    case Provenance::assumed: break;
    }
    return say ("computed for a typical pickup of this kind; three meter readings would make it surer.");
}
}

std::string similarity (Similarity playing)
{
    switch (playing)
    {
    case Similarity::sameCoils: return say ("same coils");
    case Similarity::close: return say ("close");
    case Similarity::fair: return say ("fair");
    case Similarity::rough: break;
    }
    return say ("rough");
}

std::string provenance (Provenance guitar)
{
    switch (guitar)
    {
    case Provenance::measured: return say ("measured");
    case Provenance::fromOhms: return say ("from ohms");
    case Provenance::assumed: break;
    }
    return say ("assumed");
}

std::string weakerMark (const Confidence& confidence)
{
    return confidence.isGuitarWeaker() ? provenance (confidence.guitar) : similarity (confidence.playing);
}

std::vector<MarkMeaning> markMeanings (const Confidence& confidence)
{
    std::vector<MarkMeaning> all { { similarity (confidence.playing), meaning (confidence.playing) } };
    if (auto guitar = meaning (confidence.guitar); ! guitar.empty())
        all.push_back ({ provenance (confidence.guitar), std::move (guitar) });
    return all;
}

std::string explanation (const Confidence& confidence)
{
    std::string text;
    for (const auto& [mark, sentence] : markMeanings (confidence))
        text += (text.empty() ? "" : " ") + capitalised (sentence);
    return text;
}
}
