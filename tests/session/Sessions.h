#pragma once

#include "session/Session.h"
#include "support/WholeRender.h"

#include <cmath>
#include <string>
#include <vector>

/** What the tests of sessions share. */
namespace sessions
{
inline const char* twoOptions = R"({
  "coldiron": "job 1", // two options with a gap between the letters
  "title": "Two options",
  "guitar": "two-humbuckers-four-knobs",
  "options": {
    "A": { "name": "Bridge", "setting": { "selector": "bridge", "bridge-tone": 10 } },
    "C": { "name": "Bridge in parallel",
           "rewires": [ { "use": "series-parallel", "pickup": "bridge", "pot": "bridge-volume" } ],
           "setting": { "selector": "bridge", "bridge-volume-pull": "up" } } } }
)";

inline coldiron::PresetFolders shippedPresets()
{
    return coldiron::PresetFolders ({ std::filesystem::path (COLDIRON_SOURCE) / "presets" });
}

inline std::vector<float> noise (size_t frames)
{
    uint64_t state = 88172645463325252ull;
    std::vector<float> x (frames);
    for (float& sample : x)
    {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        sample = static_cast<float> (static_cast<double> (state >> 11) / 9007199254740992.0 - 0.5) * 0.25f;
    }
    return x;
}

inline std::vector<float> played (coldiron::Session& session, std::vector<float> x, int block = 128)
{
    for (size_t at = 0; at < x.size(); at += static_cast<size_t> (block))
    {
        float* channel = x.data() + at;
        session.audio.process (&channel, 1, static_cast<int> (std::min (static_cast<size_t> (block), x.size() - at)), false);
    }
    return x;
}

/** The same by the functions that the command uses, not by the session. */
inline std::vector<float> offline (const coldiron::Session& session, coldiron::OptionId id, double rate,
                                   const std::vector<float>& x)
{
    using namespace coldiron;
    const auto job = session.jobEditor.job();
    const GuitarResponse recorded = job->recordedConfig (job->takes.empty() ? -1 : 0).response();
    CircuitConfig config = job->optionConfig (*job->find (letterOf (id)));
    config.setting = session.controls.setting (id);
    const GuitarResponse option = config.response();
    return renderTake ({ x }, designFilter (TransferFunction (recorded, option), *FilterDesigner::shared (rate))).channels[0];
}

/** Energy of the difference re the second [dB]. */
inline double residualDb (const std::vector<float>& a, const std::vector<float>& b)
{
    double difference = 0.0, whole = 0.0;
    for (size_t i = 0; i < b.size(); ++i)
    {
        difference += std::pow (static_cast<double> (a[i]) - b[i], 2.0);
        whole += std::pow (static_cast<double> (b[i]), 2.0);
    }
    return 10.0 * std::log10 (difference / whole + 1e-30);
}
}
