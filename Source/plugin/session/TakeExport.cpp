#include "plugin/session/TakeExport.h"

#include "audition/Change.h"
#include "audition/Loudness.h"
#include "audition/Renderer.h"
#include "filter/FilterDesigner.h"
#include "job/KeptFiles.h"
#include "job/TakeFile.h"

#include <cmath>
#include <map>

namespace coldiron
{
namespace
{
struct Piece
{
    std::string name;
    const Option* option = nullptr; ///< nullptr: as recorded
    int take = 0;
};

struct Heard
{
    TakeAudio audio;
    double lufs = 0.0;
};

std::vector<Piece> piecesOf (const Job& job)
{
    std::vector<Piece> pieces;
    for (int take = 0; take < static_cast<int> (job.takes.size()); ++take)
        pieces.push_back ({ take == 0 ? "now.wav" : "now-" + std::to_string (take + 1) + ".wav", nullptr, take });
    for (const auto& option : job.options)
        pieces.push_back ({ option.letter + ".wav", &option, option.take });
    return pieces;
}

/** Before the first is written: none takes the place of a take. */
void checkTargets (const Job& job, const std::filesystem::path& folder, const std::vector<Piece>& pieces)
{
    for (const auto& piece : pieces)
        if (const auto why = whyKept (folder / piece.name, keptFiles (job)); ! why.empty())
            throw TakeError (piece.name + ": " + why);
}

double gainTo (const Rendered& rendered, const Heard& take)
{
    const double lufs = loudnessOf (rendered.channels, take.audio.sampleRate);
    return std::isfinite (lufs) && std::isfinite (take.lufs) ? std::pow (10.0, (take.lufs - lufs) / 20.0) : 1.0;
}
}

TakeExport::TakeExport (std::shared_ptr<const Job> j, std::filesystem::path f, bool m)
    : job (std::move (j)), folder (std::move (f)), matched (m), thread ([this] { run(); }) {}

TakeExport::~TakeExport()
{
    stops = true;
    thread.join();
}

std::vector<std::string> TakeExport::written() const
{
    const std::scoped_lock lock (mutex);
    return names;
}

std::string TakeExport::fault() const
{
    const std::scoped_lock lock (mutex);
    return why;
}

void TakeExport::run()
{
    try
    {
        std::filesystem::create_directories (folder);
        const auto pieces = piecesOf (*job);
        if (job->takes.empty())
            throw TakeError ("the job has no take to render");
        checkTargets (*job, folder, pieces);
        std::map<int, Heard> takes;
        for (size_t i = 0; i < pieces.size() && ! stops; ++i)
        {
            const auto& piece = pieces[i];
            auto found = takes.find (piece.take);
            if (found == takes.end())
            {
                Heard heard { readTake (job->takes.at (static_cast<size_t> (piece.take)).file) };
                heard.lufs = loudnessOf (heard.audio.channels, heard.audio.sampleRate);
                found = takes.emplace (piece.take, std::move (heard)).first;
            }
            const auto& take = found->second;
            const double rate = take.audio.sampleRate;
            const auto filter = piece.option == nullptr ? ModalFilter::unity (rate)
                                                        : designFilter (Change (job->recordedSide (piece.take).voice(), job->optionSide (*piece.option).voice()), *FilterDesigner::shared (rate));
            auto rendered = renderTake (take.audio.channels, filter, 1.0, [&] (double part) { share = (static_cast<double> (i) + part) / static_cast<double> (pieces.size()); });
            if (matched && piece.option != nullptr)
            {
                const double gain = gainTo (rendered, take);
                for (auto& channel : rendered.channels)
                    for (auto& sample : channel)
                        sample = static_cast<float> (sample * gain);
                rendered.peak *= gain;
            }
            TakeWriter writer (folder / piece.name, rate, static_cast<int> (rendered.channels.size()), rendered.peak > 1.0 - 0x1.0p-23);
            writer.write (rendered.channels);
            writer.finish();
            const std::scoped_lock lock (mutex);
            names.push_back (piece.name);
        }
        share = 1.0;
    }
    catch (const std::exception& fault)
    {
        const std::scoped_lock lock (mutex);
        why = fault.what();
    }
    done = true;
}
}
