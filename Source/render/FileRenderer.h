#pragma once

#include "engine/OfflineRenderer.h"
#include "job/KeptFiles.h"
#include "response/CircuitConfig.h"
#include "takes/TakeFile.h"

#include <memory>
#include <optional>

namespace coldiron
{
/** How renderings are to sound, apart from the wiring: as a person asks for it. */
struct RenderSettings
{
    bool matched = false;         ///< each option as loud as its take, both as heard after the jack; within 30 dB
    std::optional<double> humDb;  ///< of one coil against the take's loudness; none: no hum
    std::optional<double> hissDb; ///< over the playing, which counts as 0.1 V; none: no hiss
    double mainsHz = 50.0, facingDegrees = 0.0, buzz = 0.0;
    OutputChainChoice outputChain;
    std::filesystem::path driveTake; ///< the drive stands against this one's loudness, for all pieces; empty: against each's own
    bool headroom = false;           ///< one gain for all, so that none passes full scale between samples either

    bool hasNoises() const { return humDb || hissDb; }
};

/** One file to write. */
struct RenderPiece
{
    std::string fileName;
    std::filesystem::path take;
    CircuitConfig recorded;              ///< how the take was recorded
    std::optional<CircuitConfig> option; ///< none: as recorded
};

/** All that is to be rendered. */
struct RenderPlan
{
    RenderSettings settings;
    std::vector<RenderPiece> pieces;
    std::vector<KeptFile> kept; ///< none of these is written over
};

struct RenderedFile
{
    std::string fileName;
    bool asFloat = false;       ///< 32-bit float, since it passes what 24 bits hold
    bool isCapped = false;      ///< the filter's boost is held below 24 dB
    double peak = 0.0;          ///< linear
    double truePeakDb = -300.0; ///< [dBTP], where it passes full scale; below that it may be told too low
    double matchDb = 0.0;       ///< what matching added

    double peakDb() const; ///< [dBFS]; -300 for silence
};

/** Renders takes file to file, in constant memory whatever their length: all pieces of a take in one pass over it, on all
    cores. @throws TakeError, and Cancelled, wherever a take is read or a file written; what was not finished is gone. */
class FileRenderer
{
public:
    /** Opens every take and measures what is needed: loudness, matching, headroom. Nothing is written.
        @param progress  told the share done of everything, the writing too */
    explicit FileRenderer (RenderPlan, PassProgress = {}, Cancellation = {});
    ~FileRenderer();
    FileRenderer (const FileRenderer&) = delete;
    FileRenderer& operator= (const FileRenderer&) = delete;

    double headroomDb() const; ///< on all pieces; 0 where it was not asked for

    /** Writes all pieces into a folder that is there. @returns them in the order given */
    std::vector<RenderedFile> write (const std::filesystem::path& folder);

private:
    struct Impl;
    std::unique_ptr<Impl> impl;
};
}
