#pragma once

#include "session/ControlMap.h"
#include "session/OptionId.h"

#include <array>
#include <atomic>

namespace coldiron
{
/** Where every knob and lever of every option stands right now. Plain atomics by place, so that a host may move them
    on the audio thread; names come in through the map. */
class LiveSettings
{
public:
    LiveSettings();

    void load (const Job&, const ControlMap&);                                                ///< takes over the job's settings
    Setting setting (OptionId, const Setting& base, const Harness&, const ControlMap&) const; ///< base for what has no place

    bool setKnob (OptionId, int place, float value);   ///< [any thread, wait-free] @return whether it moved
    bool setLever (OptionId, int place, int position); ///< likewise
    float knob (OptionId t, int place) const { return knobs[at (t)][static_cast<size_t> (place)].load(); }
    int lever (OptionId t, int place) const { return levers[at (t)][static_cast<size_t> (place)].load(); }
    uint32_t generation (OptionId t) const { return generations[at (t)].load (std::memory_order_acquire); }

private:
    std::array<std::array<std::atomic<float>, numKnobs>, numVersions> knobs;
    std::array<std::array<std::atomic<int>, numLevers>, numVersions> levers;
    std::array<std::atomic<uint32_t>, numVersions> generations;

    static size_t at (OptionId t) { return indexOf (t); }
    void load (OptionId, const Setting&, const Harness&, const ControlMap&);
};
}
