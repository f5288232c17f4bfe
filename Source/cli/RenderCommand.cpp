#include "audition/HeardLevel.h"
#include "audition/Loudness.h"
#include "cli/PieceRender.h"
#include "cli/Sources.h"
#include "cli/Targets.h"
#include "job/RegularFile.h"

#include <CLI/CLI.hpp>
#include <cmath>
#include <iostream>
#include <set>

namespace coldiron::cli
{
namespace
{
struct Asked
{
    std::string job, out, onlyString;
    std::vector<std::string> options;
    Sounding sounding;
    std::optional<std::string> after;
    std::optional<double> driveDb;
    bool headroom = false;
};

std::vector<Piece> piecesOf (const Job& job, const Asked& asked)
{
    std::vector<Piece> pieces;
    const auto addTakes = [&]
    {
        for (int take = 0; take < static_cast<int> (job.takes.size()); ++take)
            pieces.push_back ({ take == 0 ? "now.wav" : format ("now-%d.wav", take + 1), "as recorded", nullptr, take });
    };
    const auto add = [&] (const Option& option) { pieces.push_back ({ option.letter + ".wav", option.name, &option, option.take }); };
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

/** Writes and says what was written. 24 bits hold up to one step below full scale. */
void write (const Rendered& rendered, const std::filesystem::path& path, double sampleRate, const std::string& what)
{
    const bool asFloat = rendered.peak > 1.0 - 0x1.0p-23;
    TakeWriter writer (path, sampleRate, static_cast<int> (rendered.channels.size()), asFloat);
    writer.write (rendered.channels);
    writer.finish();
    std::string line = path.filename().string() + "  " + what;
    if (asFloat)
        line += format ("; %.1f dB over full scale, so written as 32-bit float: nothing is clipped", std::max (0.0, rendered.peakDb()));
    else if (rendered.peak > 0.7 && truePeakDb (rendered.channels, sampleRate) > 0.0)
        line += format ("; peak %.1f dBFS, true peak %.1f dBTP: 24-bit holds it, a lossy copy may not", rendered.peakDb(),
                        truePeakDb (rendered.channels, sampleRate));
    else
        line += format ("; peak %.1f dBFS, 24-bit", rendered.peakDb());
    std::cout << line << "\n";
}

/** Nothing is written before all that can be known to go wrong has been asked. */
void makeReady (const std::string& out, const Job& job, const std::vector<Piece>& pieces, const AfterJackChoice& after)
{
    std::vector<std::string> names;
    std::set<int> takes;
    for (const auto& piece : pieces)
    {
        names.push_back (piece.fileName);
        takes.insert (piece.take);
    }
    checkTakeTargets (out, names, keptFiles (job, after.file));
    checkSources (job, takes, after);
    std::error_code error;
    std::filesystem::create_directories (out, error);
    if (! isFolder (out))
        throw JobFault ((out.empty() ? "\"\"" : out) + ": no folder to write into, and it could not be made");
}

int render (const Asked& asked, const Common& common)
{
    auto job = openJob (asked.job, common);
    askOnly (job, asked.onlyString);
    const auto pieces = piecesOf (job, asked);
    if (job.takes.empty())
        throw JobFault (job.file.string() + ": has no take to render; expected \"takes\": [ { \"file\": \"...\" } ], record one and name it there");
    Sounding sounding = asked.sounding;
    sounding.after = afterJackFor (job, asked.after, asked.driveDb);
    if (asked.driveDb.value_or (0.0) > 0.0 && sounding.after.sound == AfterSound::none)
        throw UsageFault ("--drive: nothing is heard after the jack that could be driven; add --after amplifier or a file");
    makeReady (asked.out, job, pieces, sounding.after);
    PieceRenderer renderer (job, sounding);
    if (sounding.after.sound == AfterSound::amplifier)
        std::cout << "after the jack: a generic small amplifier and loudspeaker, the same for all\n";
    if (sounding.after.sound == AfterSound::file)
        std::cout << "after the jack: " << sounding.after.file.filename().string() << ", the same for all\n";

    double gain = 1.0;
    if (asked.headroom) // all are rendered twice: their peaks say what all must come down by
    {
        double most = -300.0;
        std::string ignored;
        for (const auto& piece : pieces)
            most = std::max (most, truePeakDb (renderer.render (piece, 1.0, ignored).channels, renderer.take (piece).audio.sampleRate));
        const double db = headroomDb (std::pow (10.0, most / 20.0));
        gain = std::pow (10.0, db / 20.0);
        std::cout << (db < 0.0 ? format ("%.1f dB on all, for headroom\n", db) : std::string ("0 dB on all: none passes full scale\n"));
    }
    for (const auto& piece : pieces)
    {
        std::string what = piece.title;
        if (piece.option != nullptr && job.takes.size() > 1)
            what += ", " + job.takeChoice (*piece.option).words;
        if (piece.option != nullptr && job.onlyString >= 0)
            what += ", as the " + asked.onlyString + " string alone would change";
        const auto rendered = renderer.render (piece, gain, what);
        write (rendered, std::filesystem::path (asked.out) / piece.fileName, renderer.take (piece).audio.sampleRate, what);
    }
    return fine;
}
}

void addRender (CLI::App& app, Common& common, Action& action)
{
    auto* command = app.add_subcommand ("render", "The take through each option, as WAV files: now.wav, A.wav, B.wav ...");
    auto asked = std::make_shared<Asked>();
    command->add_option ("JOB", asked->job, "The job's file")->required();
    command->add_option ("--out", asked->out, "Folder for the files; made where missing")->required()->type_name ("DIR");
    command->add_option ("--option", asked->options, "Letter, or `recorded`; may be repeated; all when left out")
        ->expected (1)
        ->multi_option_policy (CLI::MultiOptionPolicy::TakeAll);
    command->add_option ("--string", asked->onlyString, "The change of this string alone, E2 say: an estimate differs from string to string")->type_name ("NAME");
    command->add_flag ("--matched", asked->sounding.matched, "As loud as the take (ITU-R BS.1770) as heard after the jack, the gain said");
    command->add_option ("--hum", asked->sounding.humDb, "Add mains hum: that of one coil, dB against the take's loudness")->check (CLI::Range (-120.0, 40.0));
    command->add_option ("--mains", asked->sounding.mainsHz, "Mains frequency, 50 or 60 [Hz]")->check (CLI::IsMember ({ 50.0, 60.0 }))->capture_default_str();
    command->add_option ("--facing", asked->sounding.facingDegrees, "The coils' axis from the mains field [degrees]: 0 faces it, 90 is across it and hums not at all")
        ->check (CLI::Range (0.0, 90.0))
        ->capture_default_str();
    command->add_option ("--buzz", asked->sounding.buzz, "Pulses of rectifiers and dimmers on top of the hum, 0 to 1")->check (CLI::Range (0.0, 1.0))->capture_default_str();
    command->add_option ("--hiss", asked->sounding.hissDb, "Add the harness's thermal noise, lifted over the playing by an amplifier's gain [dB]; playing counts as 0.1 V")
        ->check (CLI::Range (0.0, 120.0));
    command->add_option ("--after", asked->after, "What is heard after the jack: `none`, `amplifier` (a generic small one of our own) or an impulse response, WAV up to 2 s; as the job says when left out")
        ->type_name ("SOUND");
    command->add_option ("--drive", asked->driveDb, "How hard the sound after the jack is driven [dB], 0 is not")->check (CLI::Range (0.0, 24.0));
    command->add_flag ("--headroom", asked->headroom, "One gain for all, so that none passes full scale between samples either; said");
    addPresetFolders (*command, common);
    command->callback ([asked, &common, &action] { action = [asked, &common] { return render (*asked, common); }; });
}
}
