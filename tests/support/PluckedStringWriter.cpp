#include "support/PluckedStringWriter.h"

#include <algorithm>

namespace coldiron::support
{
namespace
{
constexpr double strumSeconds = 0.010; // across all strings
constexpr double noteScatterDb = 1.5;
constexpr double firstBeat = 0.05; // seconds of quiet before the first note
}

PhraseWriter::PhraseWriter (std::string name, double beatsPerMinute, uint64_t seed)
    : beatSeconds (60.0 / beatsPerMinute), hand (seed * 7919 + 13)
{
    phrase.name = std::move (name);
    phrase.seed = seed;
}

PhraseWriter& PhraseWriter::picking (double newPluck, double newSoftMm)
{
    pluck = newPluck;
    softMm = newSoftMm;
    return *this;
}

PhraseWriter& PhraseWriter::note (int string, int fret, double beat, double beats, double level, double mute)
{
    const double place = std::clamp (pluck + 0.01 * hand.normal(), 0.07, 0.16);
    const double soft = std::clamp (softMm + 0.4 * hand.normal(), 2.0, 6.0);
    phrase.notes.push_back ({ string, fret, firstBeat + beat * beatSeconds, beats * beatSeconds,
                              level * hand.factor (noteScatterDb), mute, place, soft });
    return *this;
}

PhraseWriter& PhraseWriter::strum (const std::vector<int>& frets, double beat, double beats, double level, bool down, double mute)
{
    const auto sounding = static_cast<double> (std::count_if (frets.begin(), frets.end(), [] (int f) { return f >= 0; }));
    double order = 0.0;
    for (size_t i = 0; i < frets.size(); ++i)
    {
        const size_t s = down ? i : frets.size() - 1 - i;
        if (frets[s] < 0)
            continue;
        const double late = order++ / std::max (1.0, sounding - 1.0) * strumSeconds / beatSeconds;
        note (static_cast<int> (s), frets[s], beat + late, beats - late, level, mute);
    }
    return *this;
}

PhraseWriter& PhraseWriter::row (const std::vector<Fingering>& fingerings, double beat, double step, double ring, double level,
                                 double mute)
{
    for (const auto& f : fingerings)
    {
        note (f.string, f.fret, beat, ring, level, mute);
        beat += step;
    }
    return *this;
}

Phrase PhraseWriter::done (double beats) const
{
    Phrase finished = phrase;
    // A string plays one note at a time: the next one ends it.
    for (auto& n : finished.notes)
        for (const auto& later : phrase.notes)
            if (later.string == n.string && later.start > n.start)
                n.length = std::min (n.length, later.start - n.start);
    finished.seconds = firstBeat + beats * beatSeconds;
    return finished;
}
}
