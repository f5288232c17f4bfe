#include "Stopwatch.h"

#include "filter/FilterRunner.h"
#include "response/Responses.h"

#include <cstdio>

namespace coldiron::support
{
namespace
{
/** The neck pickup where one is, so that going there from the bridge has to be estimated. */
Harness twoHumbuckers()
{
    auto harness = fourKnobs();
    auto neck = humbucker ("neck");
    neck.as<PickupPart>()->bridgeMm = 152.0;
    harness.replacePart ("neck", neck, {});
    return harness;
}

constexpr int turns = 60; ///< as many places of one knob, none twice: no design is remembered

/** One knob of a two-humbucker guitar turned place by place: what each step to coefficients takes. */
void turnKnob (const char* what, double rate, const std::string& from, const std::string& to)
{
    const auto harness = twoHumbuckers();
    const auto designer = FilterDesigner::shared (rate);
    Setting recorded, option;
    recorded.levers["selector"] = from;
    option.levers["selector"] = to;
    const GuitarResponse before = voiceOf (harness, recorded);
    std::vector<Setting> places (turns, option);
    for (int i = 0; i < turns; ++i)
        places[static_cast<size_t> (i)].knobs[to == "neck" ? "neck-volume" : "bridge-volume"] = 9.9 - 0.15 * i;
    designFilter (TransferFunction (before, voiceOf (harness, option)), *designer); // what strings weigh is kept between designs

    const auto whole = timed (turns,
                              [&] (int i)
                              {
                                  const GuitarResponse after = voiceOf (harness, places[static_cast<size_t> (i)]);
                                  designFilter (TransferFunction (before, after), *designer);
                              });
    const auto circuit = timed (turns, [&] (int i) { voiceOf (harness, places[static_cast<size_t> (i)]); });
    double worst = 0.0;
    size_t poles = 0;
    std::vector<std::vector<double>> targets;
    bool estimated = false;
    for (const auto& place : places)
    {
        const GuitarResponse after = voiceOf (harness, place);
        const TransferFunction transfer (before, after);
        estimated = transfer.confidence().isEstimated();
        targets.push_back (transfer.gains (designer->gridHz()));
        const auto filter = designFilter (transfer, *designer);
        worst = std::max (worst, filter.worstErrorDb);
        poles = std::max (poles, filter.poles.size());
    }
    const auto design = timed (turns, [&] (int i) { designer->design (targets[static_cast<size_t> (i)], estimated); });
    std::printf (
        "  %-34s %6.1f kHz  whole %.2f (%.2f) ms, circuit %.3f, filter %.2f (%.2f); at most %zu poles or pairs, %.4f dB off\n",
        what, rate / 1e3, whole.best * 1e3, whole.median * 1e3, circuit.best * 1e3, design.best * 1e3, design.median * 1e3, poles,
        worst);
}

/** A filter of so many pairs; what it does to a sound does not matter here. */
ModalFilter ofPairs (int pairs)
{
    ModalFilter filter;
    filter.sampleRate = 48000.0;
    for (int p = 0; p < pairs; ++p)
    {
        filter.poles.push_back (std::polar (0.98, 0.05 + 0.2 * p));
        filter.residues.emplace_back (0.01, -0.003 * p);
    }
    return filter;
}

/** The plain loop that FilterRunner is to beat, one channel. */
void plainLoop (const ModalFilter& filter, std::vector<std::complex<double>>& states, const float* in, float* out, int frames)
{
    for (int n = 0; n < frames; ++n)
    {
        double y = filter.direct * in[n];
        for (size_t p = 0; p < states.size(); ++p)
        {
            const double re = states[p].real(), im = states[p].imag();
            const auto pole = filter.poles[p], residue = filter.residues[p];
            y += 2.0 * (residue.real() * re - residue.imag() * im);
            states[p] = { pole.real() * re - pole.imag() * im + in[n], pole.real() * im + pole.imag() * re };
        }
        out[n] = static_cast<float> (y);
    }
}
}

void benchDesigns()
{
    std::puts ("\nFrom a turned knob to coefficients, two humbuckers, four knobs (aim 0.3 ms, at most 1):");
    for (const double rate : { 44100.0, 48000.0, 96000.0, 192000.0 })
    {
        turnKnob ("same coils, bridge, order 10", rate, "bridge", "bridge");
        turnKnob ("other pickup, estimated, order 20", rate, "bridge", "neck");
    }
    for (const double rate : { 48000.0, 192000.0 })
        std::printf ("  a designer for a new rate, once: %.1f ms at %.0f Hz\n",
                     timed (3, [&] (int) { FilterDesigner designer (rate); }).best * 1e3, rate);
}

void benchRunning()
{
    std::puts ("\nRunning a filter, blocks of 256 (stereo order 10: aim 6 ns a frame, at most 10):");
    constexpr int block = 256, blocks = 400;
    std::vector<float> in (block), out (block);
    for (int n = 0; n < block; ++n)
        in[static_cast<size_t> (n)] = static_cast<float> (std::sin (0.05 * n));
    const auto perFrame = [] (const Timing& t)
    { std::printf ("%.2f (%.2f) ns a frame\n", t.best * 1e9 / (block * blocks), t.median * 1e9 / (block * blocks)); };

    for (const int order : { 10, 20, 28 })
    {
        const auto filter = ofPairs (order / 2);
        for (const int channels : { 1, 2 })
        {
            FilterRunner runner;
            runner.use (filter);
            const auto t = timed (40,
                                  [&] (int)
                                  {
                                      for (int b = 0; b < blocks; ++b)
                                          for (int c = 0; c < channels; ++c)
                                              runner.process (c, in.data(), out.data(), block);
                                  });
            std::printf ("  order %d, %s: ", order, channels == 1 ? "mono  " : "stereo");
            perFrame (t);
        }
        std::vector<std::complex<double>> states (filter.poles.size());
        const auto plain = timed (40,
                                  [&] (int)
                                  {
                                      for (int b = 0; b < blocks; ++b)
                                          plainLoop (filter, states, in.data(), out.data(), block);
                                  });
        std::printf ("  order %d, a plain scalar loop, mono: ", order);
        perFrame (plain);
    }

    // Silence after sound must not cost more than sound.
    FilterRunner runner;
    runner.use (ofPairs (5));
    std::vector<float> silence (block, 0.0f);
    runner.process (0, in.data(), out.data(), block);
    std::printf ("  order 10, mono, dying away to silence: ");
    perFrame (timed (40,
                     [&] (int)
                     {
                         for (int b = 0; b < blocks; ++b)
                             runner.process (0, silence.data(), out.data(), block);
                     }));
}
}
