#include "response/Confidence.h"

#include <cctype>

namespace coldiron
{
double Confidence::thirdOctaveTypicalDb() const
{
    switch (playing)
    {
    case Similarity::sameCoils: return 0.1;
    case Similarity::close: return 1.5;
    case Similarity::fair: return 2.0;
    case Similarity::rough: return betweenOneAndBothOutOfPhase ? 3.0 : 2.5;
    }
    return 3.0;
}

double Confidence::thirdOctaveNineInTenDb() const
{
    switch (playing)
    {
    case Similarity::sameCoils: return 0.5;
    case Similarity::close: return 2.5;
    case Similarity::fair: return 3.5;
    case Similarity::rough: return betweenOneAndBothOutOfPhase ? 4.5 : 4.0;
    }
    return 4.5;
}

double Confidence::loudnessDb() const
{
    switch (playing)
    {
    case Similarity::sameCoils: return 0.1;
    case Similarity::close: return 0.5;
    case Similarity::fair: return 1.5;
    case Similarity::rough: return betweenOneAndBothOutOfPhase ? 2.5 : 2.0;
    }
    return 2.5;
}

std::string Confidence::playingWord() const
{
    switch (playing)
    {
    case Similarity::sameCoils: return "same coils";
    case Similarity::close: return "close";
    case Similarity::fair: return "fair";
    case Similarity::rough: return "rough";
    }
    return "rough";
}

std::string Confidence::guitarWord() const
{
    switch (guitar)
    {
    case Provenance::measured: return "measured";
    case Provenance::fromOhms: return "from ohms";
    case Provenance::assumed: return "assumed";
    }
    return "assumed";
}

std::string Confidence::pillWord() const
{
    // One ladder for both marks: a measured guitar never weakens; an assumed one stands beside "fair".
    const int byPlaying = static_cast<int> (playing);
    const int byGuitar = guitar == Provenance::measured ? 0 : guitar == Provenance::fromOhms ? 1 : 2;
    return byGuitar > byPlaying ? guitarWord() : playingWord();
}

std::vector<std::string> Confidence::meanings() const
{
    std::vector<std::string> list;
    switch (playing)
    {
    case Similarity::sameCoils:
        list.push_back ("same coils: this option hears the strings just as the take did; only the circuit differs.");
        break;
    case Similarity::close:
    case Similarity::fair:
        list.push_back (
            playingWord()
            + ": this option hears the strings at another place than the take did; tone and level are right on average, "
              "about as close as playing the phrase twice; single notes can be several dB louder or quieter. "
              "For riffs and solos: fewer strings, less sure.");
        break;
    case Similarity::rough:
        list.push_back ("rough: trust the character, thin and hollow, and roughly the level; not single notes. "
                        "For riffs and solos: fewer strings, less sure.");
        break;
    }
    if (guitar == Provenance::assumed)
        list.push_back ("assumed: computed for a typical pickup of this kind; three meter readings would make it surer.");
    else if (guitar == Provenance::fromOhms)
        list.push_back ("from ohms: the pickup's ohms are known and the rest is scaled from a typical one; "
                        "inductance and capacitance readings would make it surer.");
    return list;
}

std::string Confidence::explanation() const
{
    std::string text;
    for (const auto& meaning : meanings())
    {
        auto words = meaning.substr (meaning.find (": ") + 2);
        words[0] = static_cast<char> (std::toupper (static_cast<unsigned char> (words[0])));
        text += (text.empty() ? "" : " ") + words;
    }
    return text;
}
}
