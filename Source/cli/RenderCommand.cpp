#include "audition/Hiss.h"
#include "audition/Hum.h"
#include "audition/Loudness.h"
#include "cli/Progress.h"
#include "cli/TakeRender.h"

#include <CLI/CLI.hpp>
#include <cmath>
#include <iostream>

namespace coldiron::cli
{
namespace
{
struct Asked
{
    std::string job, out, onlyString;
    std::vector<std::string> options;
    bool matched = false;
    std::optional<double> humDb;
    double mainsHz = 50.0, facingDegrees = 0.0, buzz = 0.0;
    std::optional<double> hissDb;
};

/** One file to write: an option, or a take as recorded. */
struct Piece
{
    std::string fileName, title;
    const Option* option = nullptr; ///< nullptr: as recorded
    int take = 0;
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

/** What is not playing, the same on all channels: hum of the coils, hiss of the harness. @param gain  the option's, linear */
void addNoises (Rendered& rendered, const Voice& voice, const Asked& asked, const LoadedTake& take, double gain)
{
    const double rate = take.audio.sampleRate;
    const auto frames = static_cast<size_t> (take.audio.frames());
    const auto add = [&] (const std::vector<float>& noise)
    {
        rendered.peak = 0.0;
        for (auto& channel : rendered.channels)
            for (size_t i = 0; i < channel.size(); ++i)
            {
                channel[i] += noise[i];
                rendered.peak = std::max (rendered.peak, static_cast<double> (std::abs (channel[i])));
            }
    };
    const MainsField field { asked.mainsHz, facingOf (asked.facingDegrees), asked.buzz };
    if (asked.humDb)
        add (synthesizeHum (voice, field, gain * humEmfFor (take.lufs(), *asked.humDb), rate, frames));
    if (asked.hissDb)
        add (synthesizeHiss (voice, gain * hissScaleFor (take.lufs(), *asked.hissDb), rate, frames));
}

/** Loudness matched to the take: the gain, constant over the whole piece [linear]. */
double matchingGain (const Rendered& rendered, const LoadedTake& take)
{
    const double lufs = loudnessOf (rendered.channels, take.audio.sampleRate);
    return std::isfinite (lufs) && std::isfinite (take.lufs()) ? std::pow (10.0, (take.lufs() - lufs) / 20.0) : 1.0;
}

void scale (Rendered& rendered, double gain)
{
    for (auto& channel : rendered.channels)
        for (auto& sample : channel)
            sample = static_cast<float> (sample * gain);
    rendered.peak *= gain;
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

int render (const Asked& asked, const Common& common)
{
    auto job = openJob (asked.job, common);
    askOnly (job, asked.onlyString);
    const auto pieces = piecesOf (job, asked);
    if (job.takes.empty())
        throw JobFault (job.file.string() + ": has no take to render; expected \"takes\": [ { \"file\": \"...\" } ], record one and name it there");
    std::error_code error;
    std::filesystem::create_directories (asked.out, error);
    if (! std::filesystem::is_directory (asked.out))
        throw JobFault (asked.out + ": no folder to write into, and it could not be made");

    LoadedTakes takes (job);
    for (const auto& piece : pieces)
    {
        const auto& take = takes.get (piece.take);
        if ((asked.humDb || asked.hissDb) && ! std::isfinite (take.lufs()))
            throw JobFault (job.takes[static_cast<size_t> (piece.take)].file.string() + ": the take is silent or shorter than 0.4 s, so hum and hiss have nothing to stand against; leave --hum and --hiss away");
        const double rate = take.audio.sampleRate;
        const auto filter = piece.option != nullptr ? filterFor (job, *piece.option, rate) : ModalFilter::unity (rate);
        Progress progress (piece.fileName);
        auto rendered = renderTake (take.audio.channels, filter, 1.0, [&] (double share) { progress.show (share); });
        std::string what = piece.title;
        if (piece.option != nullptr && job.takes.size() > 1)
            what += ", " + job.takeChoice (*piece.option).words;
        if (piece.option != nullptr && job.onlyString >= 0)
            what += ", as the " + asked.onlyString + " string alone would change";
        double gain = 1.0;
        if (asked.matched && piece.option != nullptr)
        {
            gain = matchingGain (rendered, take);
            scale (rendered, gain);
            what += format (", matched by %+.1f dB", 20.0 * std::log10 (gain));
        }
        if (asked.humDb || asked.hissDb)
            addNoises (rendered, (piece.option != nullptr ? job.optionSide (*piece.option) : job.recordedSide (piece.take)).voice(), asked, take, gain);
        if (rendered.peak == 0.0)
            what += ", silent";
        if (filter.capped)
            what += ", boost held below 24 dB";
        write (rendered, std::filesystem::path (asked.out) / piece.fileName, rate, what);
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
    command->add_flag ("--matched", asked->matched, "As loud as the take (ITU-R BS.1770), the gain said");
    command->add_option ("--hum", asked->humDb, "Add mains hum: that of one coil, dB against the take's loudness")->check (CLI::Range (-120.0, 40.0));
    command->add_option ("--mains", asked->mainsHz, "Mains frequency, 50 or 60 [Hz]")->check (CLI::IsMember ({ 50.0, 60.0 }))->capture_default_str();
    command->add_option ("--facing", asked->facingDegrees, "The coils' axis from the mains field [degrees]: 0 faces it, 90 is across it and hums not at all")
        ->check (CLI::Range (0.0, 90.0))
        ->capture_default_str();
    command->add_option ("--buzz", asked->buzz, "Pulses of rectifiers and dimmers on top of the hum, 0 to 1")->check (CLI::Range (0.0, 1.0))->capture_default_str();
    command->add_option ("--hiss", asked->hissDb, "Add the harness's thermal noise, lifted over the playing by an amplifier's gain [dB]; playing counts as 0.1 V")
        ->check (CLI::Range (0.0, 120.0));
    addPresetFolders (*command, common);
    command->callback ([asked, &common, &action] { action = [asked, &common] { return render (*asked, common); }; });
}
}
