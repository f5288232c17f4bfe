#include "cli/PieceRender.h"

#include "audition/HeardLevel.h"
#include "audition/Hiss.h"
#include "audition/Loudness.h"
#include "cli/Progress.h"
#include "job/RegularFile.h"

#include <cmath>

namespace coldiron::cli
{
namespace
{
void scale (Rendered& rendered, double gain)
{
    for (auto& channel : rendered.channels)
        for (auto& sample : channel)
            sample = static_cast<float> (sample * gain);
}

void findPeak (Rendered& rendered)
{
    rendered.peak = 0.0;
    for (const auto& channel : rendered.channels)
        for (const float sample : channel)
            rendered.peak = std::max (rendered.peak, static_cast<double> (std::abs (sample)));
}
}

AfterJackChoice afterJackFor (const Job& job, const std::optional<std::string>& after, const std::optional<double>& driveDb)
{
    AfterJackChoice choice = job.afterJack.value_or (AfterJackChoice {});
    if (after)
    {
        choice.sound = *after == "none" ? AfterSound::none : *after == "amplifier" ? AfterSound::amplifier : AfterSound::file;
        if (after->empty())
            throw UsageFault ("--after: found nothing, expected none, amplifier or the name of an impulse response");
        choice.file = choice.sound == AfterSound::file ? inFolder ({}, *after) : std::filesystem::path();
    }
    if (driveDb)
        choice.driveDb = *driveDb;
    return choice;
}

PieceRenderer::PieceRenderer (const Job& j, Sounding s) : job (j), sounding (std::move (s)), takes (j)
{
    if (sounding.after.sound != AfterSound::file)
        return;
    try
    {
        impulse = readImpulse (sounding.after.file);
    }
    catch (const TakeError& fault)
    {
        throw JobFault (fault.what());
    }
}

void PieceRenderer::followTake (const Piece& piece)
{
    if (chain && chainTake == piece.take)
        return;
    const LoadedTake& take = takes.get (piece.take);
    const double rate = take.audio.sampleRate;
    chain.emplace (sounding.after, impulse ? impulse->at (rate) : std::vector<float>(), rate, take.lufs());
    chainTake = piece.take;
    heardTakeLufs = take.lufs();
    if (sounding.matched && ! chain->isNone())
    {
        auto heard = take.audio.channels;
        chain->run (heard);
        heardTakeLufs = loudnessOf (heard, rate);
    }
}

/** Loudness matched to the take as both are heard behind the chain: the gain before it, constant over the whole piece [linear]. */
double PieceRenderer::matchingGain (const Rendered& rendered, const LoadedTake& take)
{
    const double rate = take.audio.sampleRate;
    if (! chain->isNone())
        return std::pow (10.0, heardLevel (rendered.channels, rate, *chain, heardTakeLufs).matchDb / 20.0);
    const double lufs = loudnessOf (rendered.channels, rate);
    return std::isfinite (lufs) && std::isfinite (take.lufs()) ? std::pow (10.0, (take.lufs() - lufs) / 20.0) : 1.0;
}

/** What is not playing, the same on all channels: hum of the coils, hiss of the harness. @param gain  the option's, linear */
void PieceRenderer::addNoises (Rendered& rendered, const Voice& voice, const LoadedTake& take, double gain) const
{
    const double rate = take.audio.sampleRate;
    const auto frames = static_cast<size_t> (take.audio.frames());
    const auto add = [&] (const std::vector<float>& noise)
    {
        for (auto& channel : rendered.channels)
            for (size_t i = 0; i < channel.size(); ++i)
                channel[i] += noise[i];
    };
    const MainsField field { sounding.mainsHz, facingOf (sounding.facingDegrees), sounding.buzz };
    if (sounding.humDb)
        add (synthesizeHum (voice, field, gain * humEmfFor (take.lufs(), *sounding.humDb), rate, frames));
    if (sounding.hissDb)
        add (synthesizeHiss (voice, gain * hissScaleFor (take.lufs(), *sounding.hissDb), rate, frames));
}

Rendered PieceRenderer::render (const Piece& piece, double gain, std::string& what)
{
    const auto& take = takes.get (piece.take);
    if (sounding.hasNoises() && ! std::isfinite (take.lufs()))
        throw JobFault (job.takes[static_cast<size_t> (piece.take)].file.string() + ": the take is silent or shorter than 0.4 s, so hum and hiss have nothing to stand against; leave --hum and --hiss away");
    followTake (piece);
    const double rate = take.audio.sampleRate;
    const auto filter = piece.option != nullptr ? filterFor (job, *piece.option, rate) : ModalFilter::unity (rate);
    Progress progress (piece.fileName);
    auto rendered = renderTake (take.audio.channels, filter, 1.0, [&] (double share) { progress.show (share); });
    double matching = 1.0;
    if (sounding.matched && piece.option != nullptr)
    {
        matching = matchingGain (rendered, take);
        scale (rendered, matching);
        what += format (", matched by %+.1f dB", 20.0 * std::log10 (matching));
    }
    if (sounding.hasNoises())
        addNoises (rendered, (piece.option != nullptr ? job.optionSide (*piece.option) : job.recordedSide (piece.take)).voice(), take, matching);
    chain->run (rendered.channels);
    if (gain != 1.0)
        scale (rendered, gain);
    if (sounding.matched || sounding.hasNoises() || ! chain->isNone() || gain != 1.0)
        findPeak (rendered);
    if (rendered.peak == 0.0)
        what += ", silent";
    if (filter.capped)
        what += ", boost held below 24 dB";
    return rendered;
}
}
