// Options that hear the strings elsewhere than the take did, against the truth of synthesized takes: the same modes
// of the same strings at the coils of the option, through the option's circuit by ngspice.
// The bars are ours, from a study of 96 such takes. All figures are "on synthesized takes".

#include "Study.h"

#include "support/PluckedStringPhrases.h"

#include <catch2/catch.hpp>

#include <cstdio>

namespace studyTest
{
using namespace coldiron;
using namespace coldiron::support;

namespace
{
// Recorded on one pickup (PICK), heard on that one split, on the other, on both, and on both out of phase.
const std::string guitarJob = R"({ "coldiron": "job 1", "title": "Study", "guitar": "two-humbuckers-four-knobs",
  "takes": [ { "file": "TAKE", "setting": { "selector": "PICK" }, "strings": STRINGS } ],
  "options": {
    "A": { "name": "split", "rewires": [ { "use": "split-shorted", "pickup": "PICK", "pot": "PICK-volume" } ],
           "setting": { "PICK-volume-pull": "up" } },
    "B": { "name": "split", "rewires": [ { "use": "split-open", "pickup": "PICK", "pot": "PICK-volume" } ],
           "setting": { "PICK-volume-pull": "up" } },
    "C": { "name": "other", "setting": { "selector": "REST" } },
    "D": { "name": "other", "rewires": [ { "use": "series-parallel", "pickup": "REST", "pot": "REST-volume" } ],
           "setting": { "selector": "REST", "REST-volume-pull": "up" } },
    "E": { "name": "other", "setting": { "selector": "both" } },
    "F": { "name": "out of phase", "rewires": [ { "use": "phase", "pickup": "bridge" } ], "setting": { "selector": "both" } } } })";

// Two single coils on a long scale; round numbers of the trade, nobody's data.
const std::string bassJob = R"({ "coldiron": "job 1", "title": "Study",
  "guitar": { "coldiron": "guitar 1", "name": "Bass, two single coils", "scale_mm": 863.6,
    "strings": ["E1", "A1", "D2", "G2"],
    "parts": {
      "neck": { "pickup": { "coldiron": "pickup 1", "name": "Bass, neck", "coils": { "coil": {
          "dcr": "7.5k", "inductance": 3.2, "capacitance": "120p", "loss": [ { "inductance": 0.6, "resistance": "50k" } ],
          "magnet": "north", "wound": "clockwise" } } }, "bridge_mm": 165 },
      "bridge": { "pickup": { "coldiron": "pickup 1", "name": "Bass, bridge", "coils": { "coil": {
          "dcr": "7.8k", "inductance": 3.4, "capacitance": "120p", "loss": [ { "inductance": 0.6, "resistance": "50k" } ],
          "magnet": "south", "wound": "counter-clockwise" } } }, "bridge_mm": 72 },
      "selector": { "switch": "toggle-3" },
      "volume": { "pot": "250k", "taper": "log-15" }, "tone": { "pot": "250k", "taper": "log-15" },
      "cap": { "capacitor": "47n" }, "jack": { "jack": "mono" } },
    "wires": [ ["neck.coil.start", "selector.neck"], ["bridge.coil.start", "selector.bridge"],
      ["neck.coil.finish", "volume.case", "ground"], ["bridge.coil.finish", "volume.case"],
      ["selector.out", "volume.3", "tone.1"], ["volume.1", "volume.case"], ["volume.2", "jack.tip"],
      ["tone.2", "cap.1"], ["cap.2", "ground"] ] },
  "takes": [ { "file": "TAKE", "setting": { "selector": "PICK" }, "strings": STRINGS } ],
  "options": {
    "C": { "name": "other", "setting": { "selector": "REST" } },
    "E": { "name": "other", "setting": { "selector": "both" } },
    "F": { "name": "out of phase", "rewires": [ { "use": "phase", "pickup": "bridge" } ], "setting": { "selector": "both" } } } })";

std::string recordedOn (std::string job, const std::string& pick)
{
    const std::string rest = pick == "bridge" ? "neck" : "bridge";
    for (const auto& [word, with] : { std::pair { std::string ("PICK"), pick }, { std::string ("REST"), rest } })
        for (size_t at = job.find (word); at != std::string::npos; at = job.find (word, at))
            job.replace (at, word.size(), with);
    return job;
}

void print (const char* what, const Pooled& p, double bar)
{
    std::printf ("on synthesized takes, %-28s %2d options of takes: third octaves %.2f dB rms (bar %.1f), band holds %.1f %%, "
                 "loudness %.2f LU rms, worst %.2f, as near as marked in %.0f %%\n",
                 what, p.takes, p.rmsDb, bar, 100.0 * p.heldShare, p.loudnessRmsLu, p.loudnessWorstLu, 100.0 * p.withinPromise);
}
}

TEST_CASE ("Options heard at another place, against the truth of synthesized takes", "[study]")
{
    std::vector<Miss> misses;
    const auto add = [&] (const std::string& job, const PluckedInstrument& instrument, const std::vector<Phrase>& phrases)
    {
        // Every other take is recorded on the other pickup.
        for (size_t i = 0; i < phrases.size(); ++i)
            for (auto& miss : missesOf (recordedOn (job, i % 2 == 0 ? "bridge" : "neck"), instrument, phrases[i]))
                misses.push_back (std::move (miss));
    };
    REQUIRE (guitarPhrases().size() >= 8);
    REQUIRE (bassPhrases().size() >= 4);
    add (guitarJob, pluckedGuitar (628.65), guitarPhrases());
    add (bassJob, pluckedBass (863.6), bassPhrases());

    int held = 0, bands = 0;
    for (const auto& miss : misses)
    {
        held += miss.held;
        bands += static_cast<int> (miss.thirdOctaveDb.size());
    }

    const std::pair<const char*, double> bars[] = { { "split", 1.8 }, { "other", 2.7 }, { "out of phase", 3.6 } };
    for (const auto& [option, bar] : bars)
    {
        const Pooled pooled = pool (misses, option);
        print (option, pooled, bar);
        CHECK (pooled.rmsDb <= bar);
        // A mark's loudness is what the study found typical.
        CHECK (pooled.withinPromise >= 0.68);
    }
    const double share = static_cast<double> (held) / bands;
    std::printf ("on synthesized takes, the band holds the truth in %.1f %% of %d third octaves (bar 85 %%)\n", 100.0 * share,
                 bands);
    CHECK (share >= 0.85);
}
}
