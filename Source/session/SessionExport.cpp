// What is written to files is what is heard, from the take's start: the live settings, the take each version is derived
// from, one string alone, what is not playing and what follows the jack.
#include "render/JobPieces.h"
#include "session/Session.h"

namespace coldiron
{
RenderPlan Session::renderPlan (bool matched) const
{
    Snapshot now = *shared.snapshot();
    RenderPlan plan;
    if (now.job->takes.empty())
        return plan;
    if (takesFollow() && ! now.follows) // the source is live, where all go through the selected take's wiring
        for (const Option& option : now.job->options)
            if (const OptionId id = optionOf (option.letter); id != asRecorded)
                now.derivedFrom[indexOf (id)] = option.take;

    const Job& job = *now.job;
    for (now.take = 0; now.take < static_cast<int> (job.takes.size()); ++now.take)
    {
        plan.pieces.push_back (recordedPiece (job, now.take));
        plan.pieces.back().recorded = now.recordedConfig (asRecorded);
    }
    for (const Option& option : job.options)
        if (const OptionId id = optionOf (option.letter); id != asRecorded)
        {
            RenderPiece piece = optionPiece (job, option);
            piece.take = job.takes.at (static_cast<size_t> (now.takeFor (id))).file;
            piece.recorded = now.recordedConfig (id);
            piece.option = configOf (now, shared.live, id);
            plan.pieces.push_back (std::move (piece));
        }

    plan.kept = keptFiles (job, now.after.file);
    RenderSettings& settings = plan.settings;
    settings.matched = matched;
    if (humDb() > -79.9)
        settings.humDb = humDb();
    if (hissGainDb() >= 0.0)
        settings.hissDb = hissGainDb();
    settings.mainsHz = mainsHz();
    settings.facingDegrees = facingDegrees();
    settings.buzz = buzz();
    settings.after = now.after;
    settings.driveTake = job.takes.at (static_cast<size_t> (shared.snapshot()->take)).file;
    settings.headroom = headroomKept();
    return plan;
}
}
