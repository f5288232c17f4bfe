#pragma once

#include "job/Job.h"
#include "offer/OfferRefusal.h"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace coldiron
{
/** What an option of a starter set must do better than the guitar as it is, by its figures. */
enum class StarterProof {
    none,
    quieter, ///< hum against playing at least 1 dB lower, or 20 dB below one coil's
    brighter, ///< clarity (response/Clarity) at least 1 dB higher, or the -3 dB point a third of an octave higher and clarity no 1 dB lower
    clearWhenTurnedDown, ///< turned down, clarity at least 1 dB closer to the guitar's own with the knobs at 10
    anotherVoice,        ///< at least 1 dB rms, level taken out, from every position the guitar has
    independent          ///< no volume at 0 mutes another pickup
};

/** A rewire of a candidate, names not filled in yet. */
struct StarterRewire
{
    std::string preset;
    std::vector<std::pair<std::string, std::string>> arguments;
};

/** One way to answer the wish, for any guitar that takes it. */
struct StarterCandidate
{
    std::string name;                                      ///< may name asks: "{pickup}, coils in parallel"
    std::vector<std::pair<std::string, std::string>> asks; ///< name, kind: those of rewires, and "volume", "tone"
    std::vector<StarterRewire> rewires;
    std::vector<std::pair<std::string, std::string>> setting; ///< control, knob or position; both may name asks
    std::vector<std::string> hear;                            ///< pickups that are to be on, and no other; empty: as they stand
};

/** A wish and what may answer it, best first. */
struct Starter
{
    std::string preset, name, wish, says; ///< `says`: how a player would say it
    StarterProof proof = StarterProof::none;
    std::vector<StarterCandidate> candidates;
};

/** @returns nothing after a fault, which says file and line */
std::optional<Starter> readStarter (const std::string& preset, const PresetFolders&, Diagnostics&);

/** An option ready to be put into a job. */
struct StarterOption
{
    std::string name;
    std::vector<std::pair<std::string, std::map<std::string, std::string>>> rewires; ///< preset, arguments
    Setting setting; ///< what differs from the setting it starts from
};

struct StarterOffer
{
    std::vector<StarterOption> options;                             ///< at most as many as asked for
    std::vector<std::pair<StarterCandidate, OfferRefusal>> refused; ///< and why this guitar does not take it
};

/** Tries the candidates in their order on a guitar, each filled with the parts that suit it best.
    @param from  the setting that options start from, a take's or none
    @param most  how many options to find at most; candidates after the last one found are not tried */
StarterOffer offerStarter (const Starter&, const Guitar&, const Setting& from, const Load&, const PresetFolders&,
                           size_t most = 3);

/** Why an option does not prove what its set promises; none where it does. `now` is the guitar as it stands. */
std::optional<OfferRefusal> whyNotProved (StarterProof, const CircuitConfig& now, const CircuitConfig& option,
                                          const Setting& ownSetting);
}
