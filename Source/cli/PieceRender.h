#pragma once

#include "audition/AfterJack.h"
#include "cli/TakeRender.h"
#include "job/ImpulseFile.h"

namespace coldiron::cli
{
/** How a rendering is to sound, apart from the wiring. */
struct Sounding
{
    bool matched = false;
    std::optional<double> humDb, hissDb;
    double mainsHz = 50.0, facingDegrees = 0.0, buzz = 0.0;
    AfterJackChoice after;

    bool hasNoises() const { return humDb || hissDb; }
};

/** What --after and --drive ask for; where they are left away, what the job says, or nothing.
    @param after  "none", "amplifier", or a file's name */
AfterJackChoice afterJackFor (const Job&, const std::optional<std::string>& after, const std::optional<double>& driveDb);

/** One file to write: an option, or a take as recorded. */
struct Piece
{
    std::string fileName, title;
    const Option* option = nullptr; ///< nullptr: as recorded
    int take = 0;
};

/** Renders pieces: wiring, level matching, hum, hiss, the chain after the jack. */
class PieceRenderer
{
public:
    PieceRenderer (const Job&, Sounding); ///< @throws JobFault where the impulse response cannot be used

    /** @param what  is added to: what was done to the piece, for people
        @param gain  linear, last of all */
    Rendered render (const Piece&, double gain, std::string& what);
    const LoadedTake& take (const Piece& piece) { return takes.get (piece.take); }

private:
    const Job& job;
    const Sounding sounding;
    LoadedTakes takes;
    std::optional<ImpulseResponse> impulse;
    std::optional<AfterJack> chain;
    int chainTake = -1;          ///< the chain is at this take's rate and level
    double heardTakeLufs = 0.0;  ///< of that take behind the chain

    void followTake (const Piece&);
    double matchingGain (const Rendered&, const LoadedTake&);
    void addNoises (Rendered&, const Voice&, const LoadedTake&, double gain) const;
};
}
