#include "cli/Command.h"
#include "cli/Progress.h"
#include "cli/Sources.h"
#include "cli/Targets.h"
#include "files/RegularFile.h"
#include "job/Fields.h"
#include "render/JobPieces.h"
#include "wording/TakeWords.h"

#include <CLI/CLI.hpp>
#include <iostream>
#include <set>

namespace coldiron::cli
{
namespace
{
struct RenderArguments
{
    std::string job, out, onlyString;
    std::vector<std::string> options;
    RenderSettings settings;
    std::optional<std::string> after;
    std::optional<double> driveDb;
};

/** A file to write, and what it is for people. */
struct Piece
{
    RenderPiece file;
    std::string what;
    int take = 0; ///< index
};

std::vector<Piece> piecesOf (const Job& job, const RenderArguments& asked)
{
    std::vector<Piece> pieces;
    const auto addTakes = [&]
    {
        for (int take = 0; take < static_cast<int> (job.takes.size()); ++take)
            pieces.push_back ({ recordedPiece (job, take), "as recorded", take });
    };
    const auto add = [&] (const Option& option)
    {
        std::string what = option.name;
        if (job.takes.size() > 1)
            what += ", " + wording::derivedFrom (job.takeChoice (option));
        if (job.onlyString >= 0)
            what += ", as the " + asked.onlyString + " string alone would change";
        pieces.push_back ({ optionPiece (job, option), what, option.take });
    };
    if (asked.options.empty())
    {
        addTakes();
        for (const auto& option : job.options)
            add (option);
    }
    for (const auto& letter : asked.options)
        if (isRecorded (letter))
            addTakes();
        else
            add (optionOf (job, letter));
    return pieces;
}

/** What --after and --drive ask for; where they are left away, what the job says, or nothing. */
OutputChainChoice outputChainFor (const Job& job, const RenderArguments& asked)
{
    OutputChainChoice choice = job.outputChain.value_or (OutputChainChoice {});
    if (asked.after)
    {
        choice.sound = *asked.after == "none"        ? OutputSound::none
                       : *asked.after == "amplifier" ? OutputSound::amplifier
                                                     : OutputSound::file;
        if (asked.after->empty())
            throw UsageError ("--after: found nothing, expected none, amplifier or the name of an impulse response");
        choice.file = choice.sound == OutputSound::file ? inFolder ({}, *asked.after) : std::filesystem::path();
    }
    if (asked.driveDb)
        choice.driveDb = *asked.driveDb;
    if (asked.driveDb.value_or (0.0) > 0.0 && choice.sound == OutputSound::none)
        throw UsageError ("--drive: nothing is heard after the jack that could be driven; add --after amplifier or a file");
    return choice;
}

std::string lineOf (const RenderedFile& file, bool isMatched, const std::string& what)
{
    std::string line = file.fileName + "  " + what;
    if (isMatched)
        line += format (", matched by %+.1f dB", file.matchDb);
    if (file.peak == 0.0)
        line += ", silent";
    if (file.isCapped)
        line += ", boost held below 24 dB";
    if (file.asFloat)
        return line
               + format ("; %.1f dB over full scale, so written as 32-bit float: nothing is clipped",
                         std::max (0.0, file.peakDb()));
    if (file.peak > 0.7 && file.truePeakDb > 0.0)
        return line
               + format ("; peak %.1f dBFS, true peak %.1f dBTP: 24-bit holds it, a lossy copy may not", file.peakDb(),
                         file.truePeakDb);
    return line + format ("; peak %.1f dBFS, 24-bit", file.peakDb());
}

/** Nothing is written before all that can be known to go wrong has been asked. */
void makeReady (const std::string& out, const Job& job, const std::vector<Piece>& pieces, const OutputChainChoice& after)
{
    std::vector<std::string> names;
    std::set<int> takes;
    for (const auto& piece : pieces)
    {
        names.push_back (piece.file.fileName);
        takes.insert (piece.take);
    }
    checkTakeTargets (out, names, keptFiles (job, after.file));
    checkSources (job, takes, after);
    std::error_code error;
    std::filesystem::create_directories (out, error);
    if (! isFolder (out))
        throw JobDiagnostic ((out.empty() ? "\"\"" : out) + ": no folder to write into, and it could not be made");
}

int render (const RenderArguments& asked, const Common& common)
{
    auto job = openJob (asked.job, common);
    askOnly (job, asked.onlyString);
    const auto pieces = piecesOf (job, asked);
    if (job.takes.empty())
        throw JobDiagnostic (
            job.file.string()
            + ": has no take to render; expected \"takes\": [ { \"file\": \"...\" } ], record one and name it there");
    RenderPlan plan { asked.settings, {}, {} }; // its targets are checked below
    plan.settings.outputChain = outputChainFor (job, asked);
    plan.settings.driveTake = job.takes.front().file; // what follows the jack is the same for all
    makeReady (asked.out, job, pieces, plan.settings.outputChain);
    for (const auto& piece : pieces)
        plan.pieces.push_back (piece.file);
    const RenderSettings settings = plan.settings;
    Progress progress ("rendering");
    FileRenderer renderer (std::move (plan), [&] (double share) { progress.show (share); });
    const auto written = renderer.write (asked.out);
    progress.clear();

    if (settings.outputChain.sound == OutputSound::amplifier)
        std::cout << "after the jack: a generic small amplifier and loudspeaker, the same for all\n";
    if (settings.outputChain.sound == OutputSound::file)
        std::cout << "after the jack: " << settings.outputChain.file.filename().string() << ", the same for all\n";
    if (const double db = renderer.headroomDb(); settings.headroom)
        std::cout << (db < 0.0 ? format ("%.1f dB on all, for headroom\n", db)
                               : std::string ("0 dB on all: none passes full scale\n"));
    for (size_t i = 0; i < pieces.size(); ++i)
        std::cout << lineOf (written[i], settings.matched && pieces[i].file.option, pieces[i].what) << "\n";
    return exitOk;
}
}

void addRender (CLI::App& app, Common& common, Action& action)
{
    auto* command = app.add_subcommand ("render", "The take through each option, as WAV files: now.wav, A.wav, B.wav ...");
    auto asked = std::make_shared<RenderArguments>();
    command->add_option ("JOB", asked->job, "The job's file")->required();
    command->add_option ("--out", asked->out, "Folder for the files; made where missing")->required()->type_name ("DIR");
    command->add_option ("--option", asked->options, "Letter, or `recorded`; may be repeated; all when left out")
        ->expected (1)
        ->multi_option_policy (CLI::MultiOptionPolicy::TakeAll);
    command
        ->add_option ("--string", asked->onlyString,
                      "The change of this string alone, E2 say: an estimate differs from string to string")
        ->type_name ("NAME");
    command->add_flag ("--matched", asked->settings.matched,
                       "As loud as the take (ITU-R BS.1770) as heard after the jack, the gain said");
    command->add_option ("--hum", asked->settings.humDb, "Add mains hum: that of one coil, dB against the take's loudness")
        ->check (CLI::Range (-120.0, 40.0));
    command->add_option ("--mains", asked->settings.mainsHz, "Mains frequency, 50 or 60 [Hz]")
        ->check (CLI::IsMember ({ 50.0, 60.0 }))
        ->capture_default_str();
    command
        ->add_option ("--facing", asked->settings.facingDegrees,
                      "The coils' axis from the mains field [degrees]: 0 faces it, 90 is across it and hums not at all")
        ->check (CLI::Range (fields::facing.least, fields::facing.most))
        ->capture_default_str();
    command->add_option ("--buzz", asked->settings.buzz, "Pulses of rectifiers and dimmers on top of the hum, 0 to 1")
        ->check (CLI::Range (fields::buzz.least, fields::buzz.most))
        ->capture_default_str();
    command
        ->add_option (
            "--hiss", asked->settings.hissDb,
            "Add the harness's thermal noise, lifted over the playing by an amplifier's gain [dB]; playing counts as 0.1 V")
        ->check (CLI::Range (0.0, 120.0));
    command
        ->add_option ("--after", asked->after,
                      "What is heard after the jack: `none`, `amplifier` (a generic small one of our own) or an impulse "
                      "response, WAV up to 2 s; as the job says when left out")
        ->type_name ("SOUND");
    command->add_option ("--drive", asked->driveDb, "How hard the sound after the jack is driven [dB], 0 is not")
        ->check (CLI::Range (fields::drive.least, fields::drive.most));
    command->add_flag ("--headroom", asked->settings.headroom,
                       "One gain for all, so that none passes full scale between samples either; said");
    addPresetFolders (*command, common);
    command->callback ([asked, &common, &action] { action = [asked, &common] { return render (*asked, common); }; });
}
}
