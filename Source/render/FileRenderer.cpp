#include "render/FileRenderer.h"

#include "engine/HeardLevel.h"
#include "metering/Loudness.h"
#include "metering/Peak.h"
#include "render/RenderWork.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
using render::Take;
using render::Work;

namespace
{
double linear (double db) { return std::pow (10.0, db / 20.0); }

constexpr double longestWav = 4294967295.0 - 1000.0; ///< [bytes] sizes are of 32 bits
constexpr double most24 = 1.0 - 0x1.0p-23;           ///< 24 bits hold up to one step below full scale
}

double RenderedFile::peakDb() const { return peak > 1e-15 ? 20.0 * std::log10 (peak) : -300.0; }

struct FileRenderer::Impl : render::Passes
{
    using Passes::Passes;

    double headroom = 0.0; ///< [dB]

    RenderSpec specOf (const Work& work) const
    {
        RenderSpec spec = dryOf (work);
        spec.design.gain = linear (work.file.matchDb);
        spec.humGain = settings.humDb ? linear (*settings.humDb) : 0.0;
        spec.hissGain = settings.hissDb ? linear (*settings.hissDb) : 0.0;
        spec.trim = linear (headroom);
        return spec;
    }

    /** Rounds of listening, all options of the take in each until none is left; the take behind the chain in the first. */
    void match (Take& take)
    {
        std::vector<std::pair<Work*, LevelMatch>> open;
        if (! settings.matched || std::none_of (take.works.begin(), take.works.end(), [] (const Work* w) { return w->isOption; }))
            return;
        const double wanted = hasChain() ? loudness (take, { asRecorded (take) }).front() : take.lufs;
        for (Work* work : take.works)
            if (work->isOption)
                open.emplace_back (work, LevelMatch (wanted, settings.outputChain.isDriven()));
        while (! open.empty())
        {
            std::vector<RenderSpec> specs;
            for (const auto& [work, level] : open)
            {
                specs.push_back (dryOf (*work));
                specs.back().design.gain = linear (level.db());
            }
            const auto lufs = loudness (take, specs);
            for (size_t i = 0; i < open.size(); ++i)
            {
                open[i].second.heard (lufs[i]);
                open[i].first->file.matchDb = open[i].second.db();
            }
            std::erase_if (open, [] (const auto& one) { return one.second.isDone(); });
        }
    }

    /** Renders all once more to find their true peaks, and from them the gain that keeps every piece below full scale. */
    void findHeadroom()
    {
        double most = -300.0;
        for (Take& take : takes)
        {
            std::vector<TruePeak> peaks;
            for (size_t i = 0; i < take.works.size(); ++i)
                peaks.emplace_back (take.info.sampleRate, take.info.channels, -0.1);
            render (
                take, take.works, [&] (const Work& work) { return specOf (work); },
                [&] (size_t i, Work& work, const Channels& sound)
                {
                    work.file.peak = std::max (work.file.peak, static_cast<double> (peakOf (sound)));
                    peaks[i].add (sound);
                });
            for (const TruePeak& peak : peaks)
                most = std::max (most, peak.db());
        }
        headroom = coldiron::headroomDb (linear (most));
        for (Take& take : takes)
            for (Work* work : take.works)
                work->file.asFloat = work->file.peak * linear (headroom) > 1.0001;
    }

    /** 24 bits where they hold it, which is known at the end only: what passes them is left, and returned to be begun again as
        float. @param works  no more than fit into one pass */
    std::vector<Work*> write (const Take& take, const std::vector<Work*>& pieces, const std::filesystem::path& folder)
    {
        struct Writing
        {
            std::unique_ptr<TakeWriter> writer;
            TruePeak truePeak;
        };
        std::vector<Writing> writing;
        for (Work* work : pieces)
        {
            const auto& info = take.info;
            if (static_cast<double> (info.frames) * info.channels * (work->file.asFloat ? 4.0 : 3.0) > longestWav)
                throw TakeError ((folder / work->file.fileName).string()
                                 + ": would be over 4 GB, which is more than a WAV holds; cut the take");
            writing.push_back (
                { std::make_unique<TakeWriter> (folder / work->file.fileName, info.sampleRate, info.channels, work->file.asFloat),
                  TruePeak (info.sampleRate, info.channels, -0.1) });
            work->file.peak = 0.0;
        }
        const auto hear = [&] (size_t i, Work& work, const Channels& sound)
        {
            auto& [writer, truePeak] = writing[i];
            if (writer == nullptr)
                return;
            const auto peak = static_cast<double> (peakOf (sound));
            if (! std::isfinite (peak))
                throw TakeError ((folder / work.file.fileName).string()
                                 + ": some samples would be no numbers, so it is not written; is the take in order?");
            work.file.peak = std::max (work.file.peak, peak);
            if (! work.file.asFloat && work.file.peak > most24)
                return writer.reset();
            truePeak.add (sound);
            writer->write (sound);
        };
        render (
            take, pieces, [&] (const Work& work) { return specOf (work); }, hear);

        std::vector<Work*> again;
        pool.run (pieces.size(),
                  [&] (size_t i) // waits until it is on the disk
                  {
                      isUnwanted.check();
                      if (writing[i].writer != nullptr)
                          writing[i].writer->finish();
                  });
        for (size_t i = 0; i < pieces.size(); ++i)
        {
            pieces[i]->file.truePeakDb = writing[i].truePeak.db();
            if (writing[i].writer != nullptr)
                continue;
            pieces[i]->file.asFloat = true;
            again.push_back (pieces[i]);
        }
        return again;
    }
};

FileRenderer::FileRenderer (RenderPlan plan, PassProgress progress, Cancellation isUnwanted)
    : impl (std::make_unique<Impl> (std::move (plan), std::move (progress), std::move (isUnwanted)))
{
    for (Take& take : impl->takes)
        impl->match (take);
    if (impl->settings.headroom)
        impl->findHeadroom();
}

FileRenderer::~FileRenderer() = default;

double FileRenderer::headroomDb() const { return impl->headroom; }

std::vector<RenderedFile> FileRenderer::write (const std::filesystem::path& folder)
{
    for (const auto& work : impl->works) // before the first is written
        if (const auto why = whyKept (folder / work->file.fileName, impl->kept); ! why.empty())
            throw TakeError (work->file.fileName + ": " + why);
    const size_t most = impl->piecesAtOnce();
    for (const Take& take : impl->takes)
        for (size_t from = 0; from < take.works.size(); from += most)
        {
            const auto first = take.works.begin() + static_cast<std::ptrdiff_t> (from);
            const auto again = impl->write (
                take, { first, first + static_cast<std::ptrdiff_t> (std::min (most, take.works.size() - from)) }, folder);
            if (! again.empty())
                impl->write (take, again, folder);
        }
    std::vector<RenderedFile> files;
    for (const auto& work : impl->works)
        files.push_back (work->file);
    return files;
}
}
