#include "render/RenderWork.h"

#include "metering/Loudness.h"
#include "takes/TakeReader.h"

#include <algorithm>
#include <cmath>

namespace coldiron::render
{
Passes::Passes (RenderPlan plan, PassProgress p, Cancellation c)
    : settings (std::move (plan.settings)), kept (std::move (plan.kept)), isUnwanted (std::move (c)), progress (std::move (p))
{
    std::optional<ImpulseResponse> impulse;
    if (settings.outputChain.sound == OutputSound::file)
        impulse = readImpulse (settings.outputChain.file);
    for (const auto& piece : plan.pieces)
    {
        auto take = std::find_if (takes.begin(), takes.end(), [&] (const Take& t) { return t.path == piece.take; });
        if (take == takes.end())
        {
            takes.push_back ({ piece.take, takeInfo (piece.take), 0.0, {}, {} });
            take = takes.end() - 1;
            if (impulse)
                take->impulse = impulse->at (take->info.sampleRate, isUnwanted);
        }
        works.push_back (std::make_unique<Work>());
        works.back()->take = static_cast<size_t> (take - takes.begin());
        take->works.push_back (works.back().get());
    }
    expect();
    measureTakes();
    for (size_t i = 0; i < works.size(); ++i)
    {
        isUnwanted.check();
        design (plan.pieces[i], *works[i]);
    }
}

void Passes::measureTakes()
{
    for (Take& take : takes)
    {
        if (settings.matched || settings.hasNoises() || settings.outputChain.isDriven())
            take.lufs = loudness (take, {}).front();
        if (settings.hasNoises() && ! std::isfinite (take.lufs))
            throw TakeError (
                take.path.string()
                + ": the take is silent or shorter than 0.4 s, so hum and hiss have nothing to stand against; leave them away");
    }
    if (! settings.outputChain.isDriven() || settings.driveTake.empty())
        return;
    const auto known = std::find_if (takes.begin(), takes.end(), [&] (const Take& t) { return t.path == settings.driveTake; });
    driveLufs = known != takes.end() ? known->lufs
                                     : loudness ({ settings.driveTake, takeInfo (settings.driveTake), 0.0, {}, {} }, {}).front();
}

void Passes::design (const RenderPiece& piece, Work& work) const
{
    const Take& take = takes[work.take];
    const MainsField field { settings.mainsHz, facingOf (settings.facingDegrees), settings.buzz };
    const double rate = take.info.sampleRate;
    const bool hisses = settings.hissDb.has_value();
    work.isOption = piece.option.has_value();
    work.file.fileName = piece.fileName;
    const GuitarResponse recorded = piece.recorded.response();
    if (piece.option)
    {
        const GuitarResponse heard = piece.option->response();
        const TransferFunction transfer (recorded, heard);
        work.design = EngineDesign::of (&transfer, heard, field, take.lufs, rate, hisses);
    }
    else
        work.design = EngineDesign::of (nullptr, recorded, field, take.lufs, rate, hisses);
    work.file.isCapped = work.design.filter.capped;
}

RenderSpec Passes::asRecorded (const Take& take) const
{
    RenderSpec spec;
    spec.design.filter = ModalFilter::unity (take.info.sampleRate);
    spec.after = settings.outputChain;
    spec.impulse = take.impulse;
    spec.driveLufs = driveLufs.value_or (take.lufs);
    return spec;
}

RenderSpec Passes::dryOf (const Work& work) const
{
    RenderSpec spec = asRecorded (takes[work.take]);
    spec.design = work.design;
    return spec;
}

/** A guess of the passes to come; a drive is matched in up to seven rounds. */
void Passes::expect()
{
    for (const Take& take : takes)
    {
        const bool matches = settings.matched;
        const double rounds =
            (matches ? (settings.outputChain.isDriven() ? 4.0 : 1.0) : 0.0) + (settings.headroom ? 1.0 : 0.0) + 1.0;
        const double batches = std::ceil (static_cast<double> (take.works.size()) / static_cast<double> (piecesAtOnce()));
        const double once = (matches || settings.hasNoises() || settings.outputChain.isDriven() ? 1.0 : 0.0)
                            + (matches && hasChain() ? 1.0 : 0.0);
        framesExpected += static_cast<double> (take.info.frames) * (rounds * batches + once);
    }
}

/** A convolver of two seconds takes megabytes; everything else little. */
size_t Passes::piecesAtOnce() const
{
    return settings.outputChain.sound == OutputSound::file ? std::max<size_t> (2, pool.numThreads()) : 16;
}

void Passes::pass (const Take& take, const std::vector<BlockListener>& listeners)
{
    const auto frames = static_cast<double> (take.info.frames);
    const auto tell = [&] (double share)
    {
        if (progress)
            progress (std::min (1.0, (framesDone + share * frames) / framesExpected));
    };
    runPass (blocksOf (take.path), listeners, pool, frames, tell, isUnwanted);
    framesDone += frames;
}

void Passes::each (const Take& take, size_t count, const std::function<BlockListener (size_t)>& listener)
{
    for (size_t from = 0; from < count; from += piecesAtOnce())
    {
        std::vector<BlockListener> listeners;
        for (size_t i = from; i < std::min (count, from + piecesAtOnce()); ++i)
            listeners.push_back (listener (i));
        pass (take, listeners);
    }
}

std::vector<double> Passes::loudness (const Take& take, const std::vector<RenderSpec>& specs)
{
    std::vector<std::unique_ptr<Loudness>> meters;
    const auto add = [&]
    { return (meters.push_back (std::make_unique<Loudness> (take.info.sampleRate, take.info.channels)), meters.back().get()); };
    if (specs.empty())
        pass (take, { [meter = add()] (const Channels& block) { meter->add (block); } });
    each (take, specs.size(),
          [&] (size_t i)
          {
              return [meter = add(), renderer = std::make_shared<OfflineRenderer> (specs[i])] (const Channels& block)
              { meter->add (renderer->process (block)); };
          });
    std::vector<double> lufs;
    for (const auto& meter : meters)
        lufs.push_back (meter->integratedLufs());
    return lufs;
}

void Passes::render (const Take& take, const std::vector<Work*>& pieces, const std::function<RenderSpec (const Work&)>& specOf,
                     const std::function<void (size_t, Work&, const Channels&)>& hear)
{
    each (take, pieces.size(),
          [&] (size_t i)
          {
              return [&hear, i, &work = *pieces[i], renderer = std::make_shared<OfflineRenderer> (specOf (*pieces[i]))] (
                         const Channels& block) { hear (i, work, renderer->process (block)); };
          });
}
}
