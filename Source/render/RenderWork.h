#pragma once

#include "render/FileRenderer.h"
#include "takes/ImpulseFile.h"

namespace coldiron::render
{
/** A piece as it is worked on. */
struct Work
{
    RenderedFile file;
    EngineDesign design;
    bool isOption = false;
    size_t take = 0; ///< index
};

/** A take with the pieces that are rendered from it. */
struct Take
{
    std::filesystem::path path;
    TakeInfo info;
    double lufs = 0.0;
    std::vector<Work*> works;
    std::vector<float> impulse; ///< at this take's rate
};

/** Passes over takes: what all of a rendering's steps are made of. */
class Passes
{
public:
    /** Opens and measures all takes, then designs all pieces. @throws TakeError, std::invalid_argument, Cancelled */
    Passes (RenderPlan, PassProgress, Cancellation);

    const RenderSettings settings;
    const std::vector<KeptFile> kept;
    std::vector<std::unique_ptr<Work>> works;
    std::vector<Take> takes;

    size_t piecesAtOnce() const; ///< in one pass: as many as fit into constant memory
    bool hasChain() const { return settings.outputChain.sound != OutputSound::none; }

    RenderSpec asRecorded (const Take&) const; ///< with what follows the jack, without noises
    RenderSpec dryOf (const Work&) const;      ///< the same of a piece, unmatched

    /** Integrated loudness of each, in one pass. [LUFS] */
    std::vector<double> loudness (const Take&, const std::vector<RenderSpec>&);

    /** Renders pieces of a take in one pass, or in several where there are more than fit.
        @param hear  is given a piece's place in the list and its sound, block by block; by several threads, but for one
                     piece by one at a time */
    void render (const Take&, const std::vector<Work*>&, const std::function<RenderSpec (const Work&)>& specOf,
                 const std::function<void (size_t, Work&, const Channels&)>& hear);

    WorkerPool pool;
    const Cancellation isUnwanted; ///< asked before each block of each piece

private:
    const PassProgress progress;
    std::optional<double> driveLufs; ///< none: each take's own
    double framesDone = 0.0, framesExpected = 0.0;

    void expect();
    void measureTakes();
    void design (const RenderPiece&, Work&) const;
    void pass (const Take&, const std::vector<BlockListener>&);
    void each (const Take&, size_t count, const std::function<BlockListener (size_t)>& listener);
};
}
