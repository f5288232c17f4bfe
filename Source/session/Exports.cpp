#include "session/Exports.h"

#include "wording/OhmWords.h"

#include "analysis/OhmTable.h"
#include "files/WriteFile.h"
#include "job/KeptFiles.h"
#include "paper/DrawingSvg.h"
#include "paper/Spice.h"
#include "paper/TakeCard.h"
#include "render/JobPieces.h"
#include "session/JobEditor.h"
#include "session/TakeExport.h"
#include "session/Takes.h"

#include <sstream>

namespace coldiron
{
namespace
{
std::string quoted (const std::string& text) { return "\"" + text + "\""; }

/** The ohm table for a spreadsheet. */
std::string ohmsCsv (const Harness& harness)
{
    std::ostringstream csv;
    bool headed = false;
    for (const auto& row : ohmTable (harness))
    {
        if (! std::exchange (headed, true))
        {
            for (const auto& [lever, position] : row.levers)
                csv << quoted (lever) << ",";
            csv << "ohms,low,high,volume_at_5,remark\n";
        }
        for (const auto& [lever, position] : row.levers)
            csv << quoted (position) << ",";
        if (row.isNumber())
            csv << row.ohms << "," << row.lowOhms << "," << row.highOhms << "," << row.volumeDownOhms << ",\n";
        else
            csv << ",,,," << quoted (wording::noOhms (row)) << "\n";
    }
    return csv.str();
}

std::string shownName (OptionId id) { return id == asRecorded ? "as it is" : letterOf (id); }
}

Exports::Exports (SharedState& s, const JobEditor& e, const Takes& t) : shared (s), editor (e), takes (t) {}

Exports::~Exports() = default;

/** The title as the name of a file, with what it is of. */
std::string Exports::fileName (const std::string& what, const std::string& ending) const
{
    std::string title;
    for (const char c : editor.job()->title)
        if ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == ' ' || c == '-')
            title += c;
    title.erase (0, title.find_first_not_of (' '));
    title.erase (title.find_last_not_of (' ') + 1);
    return (title.empty() ? "job" : title) + ", " + what + ending;
}

/** With the controls as they stand at this moment. */
std::shared_ptr<const Job> Exports::jobNow() const
{
    Diagnostics ignored;
    const auto presets = editor.presets();
    auto job = readJobText (editor.text(), editor.folder(), presets, ignored);
    return job ? std::make_shared<const Job> (std::move (*job)) : editor.job();
}

TextExport Exports::drawing (OptionId id) const
{
    return { fileName (shownName (id) + " wiring", ".svg"),
             [job = editor.job(), id] { return drawingSvg (drawWiring (harnessBefore (*job, id), harnessOf (*job, id))); } };
}

TextExport Exports::ohmTable (OptionId id) const
{
    return { fileName (shownName (id) + " ohms", ".csv"), [job = jobNow(), id] { return ohmsCsv (harnessOf (*job, id)); } };
}

TextExport Exports::netlist (OptionId id) const
{
    return { fileName (shownName (id), ".cir"),
             [job = jobNow(), id] { return spiceNetlist (*job, id == asRecorded ? nullptr : job->find (letterOf (id))); } };
}

TextExport Exports::takeCard() const
{
    return { fileName ("take card", ".html"),
             [job = editor.job()] { return takeCardHtml (job->guitar, job->title, job->wish); } };
}

void Exports::write (const std::filesystem::path& target, const TextExport& text) const
{
    if (const auto why = whyKept (target, keptFiles (*editor.job())); ! why.empty())
        throw WriteError (target.filename().string() + ": " + why);
    writeFile (target, text.make());
}

/** What is heard, from the take's start: the live settings, the take each version is derived from, one string alone, what is
    not playing and what follows the jack. */
RenderPlan Exports::renderPlan (bool matched) const
{
    Snapshot now = *shared.snapshot();
    RenderPlan plan;
    if (now.job->takes.empty())
        return plan;
    if (takes.follows() && ! now.follows) // the source is live, where all go through the selected take's wiring
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
    if (shared.humDb.load() > -79.9)
        settings.humDb = shared.humDb.load();
    if (shared.hissGainDb.load() >= 0.0)
        settings.hissDb = shared.hissGainDb.load();
    settings.mainsHz = shared.mainsHz.load();
    settings.facingDegrees = shared.facingDegrees.load();
    settings.buzz = shared.buzz.load();
    settings.outputChain = now.after;
    settings.driveTake = job.takes.at (static_cast<size_t> (shared.snapshot()->take)).file;
    settings.headroom = shared.headroomKept.load();
    return plan;
}

void Exports::endRendering() { running.reset(); }

void Exports::startRendering (bool levelsMatched, const std::filesystem::path& folder)
{
    running = std::make_unique<TakeExport> (renderPlan (levelsMatched), folder);
}
}
