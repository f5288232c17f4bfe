#include "response/Confidence.h"

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

bool Confidence::isGuitarWeaker() const
{
    const int byPlaying = static_cast<int> (playing);
    const int byGuitar = guitar == Provenance::measured ? 0 : guitar == Provenance::fromOhms ? 1 : 2;
    return byGuitar > byPlaying;
}
}
