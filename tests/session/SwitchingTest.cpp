// A minute of switching through eight options, one every 100 ms, under a 1 kHz sine. Bars of our own, as of one switch:
// at most -55 dB near the tone and -95 dB above 2.5 kHz.
#include "Sessions.h"

#include "support/Fft.h"

#include <catch2/catch.hpp>

#include <complex>
#include <cstdio>

namespace switchingTest
{
using namespace coldiron;
using namespace sessions;

namespace
{
constexpr double rate = 48000.0;

std::string eightOptions()
{
    std::string options;
    const char* const settings[] = { R"("selector": "bridge")",
                                     R"("selector": "neck")",
                                     R"("selector": "both")",
                                     R"("selector": "bridge", "bridge-tone": 0)",
                                     R"("selector": "bridge", "bridge-volume": 6)",
                                     R"("selector": "neck", "neck-tone": 3)",
                                     R"("selector": "both", "neck-volume": 7)" };
    for (int i = 0; i < 7; ++i)
        options +=
            std::string ("\"") + static_cast<char> ('A' + i) + "\": { \"name\": \"One\", \"setting\": { " + settings[i] + " } },";
    return R"({ "coldiron": "job 1", "title": "Eight", "guitar": "two-humbuckers-four-knobs", "options": { )" + options
           + R"("H": { "name": "Bridge in parallel", "rewires": [ { "use": "series-parallel", "pickup": "bridge", "pot": "bridge-volume" } ],
             "setting": { "selector": "bridge", "bridge-volume-pull": "up" } } } })";
}

double besselZero (double x) // power series
{
    double sum = 1.0, term = 1.0;
    for (int k = 1; k < 80; ++k)
        sum += term *= (x / (2.0 * k)) * (x / (2.0 * k));
    return sum;
}

struct Click
{
    double near = -300.0, above = -300.0; ///< dB re the tone: 250 Hz and more from it, and above 2.5 kHz
};

/** The worst of many short spectra, Kaiser windows with beta 16 (side lobes below -120 dB). */
Click clickOf (const std::vector<float>& y)
{
    constexpr size_t n = 2048;
    std::vector<double> window (n), x (n);
    for (size_t i = 0; i < n; ++i)
    {
        const double u = 2.0 * static_cast<double> (i) / (n - 1) - 1.0;
        window[i] = besselZero (16.0 * std::sqrt (1.0 - u * u)) / besselZero (16.0);
    }
    Click click;
    for (size_t start = 0; start + n <= y.size(); start += 256)
    {
        for (size_t i = 0; i < n; ++i)
            x[i] = y[start + i] * window[i];
        const auto bins = coldiron::support::spectrumOf (x, n);
        double tone = 0.0;
        for (const auto& bin : bins)
            tone = std::max (tone, std::abs (bin));
        for (size_t k = 1; k < bins.size(); ++k)
        {
            const double f = static_cast<double> (k) * rate / n, db = 20.0 * std::log10 (std::abs (bins[k]) / tone + 1e-18);
            if (std::abs (f - 1000.0) > 250.0)
                click.near = std::max (click.near, db);
            if (f >= 2500.0)
                click.above = std::max (click.above, db);
        }
    }
    return click;
}

std::vector<float> aMinute (Session& session, int block)
{
    std::vector<float> x (static_cast<size_t> (60 * rate));
    for (size_t i = 0; i < x.size(); ++i)
        x[i] = static_cast<float> (0.25 * std::sin (2.0 * M_PI * 1000.0 * static_cast<double> (i) / rate));
    size_t next = 0;
    int turn = 0;
    for (size_t at = 0; at < x.size(); at += static_cast<size_t> (block))
    {
        if (at >= next)
        {
            session.monitor.hear (optionAt (1 + 3 * turn++ % 8)); // 3 and 8 have no factor in common: all of them, far apart
            REQUIRE (session.waitUntilIdle (5.0));
            next += static_cast<size_t> (0.1 * rate);
        }
        float* channel = x.data() + at;
        session.audio.process (&channel, 1, static_cast<int> (std::min (x.size() - at, static_cast<size_t> (block))), false);
    }
    CHECK (turn >= 590);
    return x;
}
}

TEST_CASE ("a minute of switching among eight options does not click")
{
    Session session (shippedPresets());
    REQUIRE (session.jobEditor.setText (eightOptions()));
    REQUIRE (session.options.ids().size() == 8);
    for (const auto sound : { OutputSound::none, OutputSound::amplifier })
        for (const bool matched : { false, true })
        {
            REQUIRE (session.output.setChain ({ sound, {}, 0.0 }));
            session.monitor.setLevelMatched (matched);
            session.audio.prepare (rate);
            REQUIRE (session.waitUntilReported (60.0));
            auto y = aMinute (session, 96);
            const Click click = clickOf ({ y.begin() + 24000, y.end() });
            std::printf ("600 switches, %s%s: near %.1f dB, above 2.5 kHz %.1f dB\n",
                         sound == OutputSound::none ? "direct" : "amplifier", matched ? ", matched" : "", click.near,
                         click.above);
            CHECK (click.near < -55.0);
            CHECK (click.above < -95.0);

            // The check hears a click where there is one.
            y.resize (96000);
            for (size_t i = 50000; i < y.size(); ++i)
                y[i] *= 0.7f;
            CHECK (clickOf ({ y.begin() + 24000, y.end() }).above > -95.0);
        }
}
}
