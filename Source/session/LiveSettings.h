#pragma once

#include "session/ControlMap.h"

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

    void load (const Job&, const ControlMap&);                                           ///< takes over the job's settings
    Setting setting (Tag, const Setting& base, const Harness&, const ControlMap&) const; ///< base for what has no place

    void setKnob (Tag, int place, float value);   ///< [any thread, wait-free]
    void setLever (Tag, int place, int position); ///< [any thread, wait-free]
    float knob (Tag t, int place) const { return knobs[at (t)][static_cast<size_t> (place)].load(); }
    int lever (Tag t, int place) const { return levers[at (t)][static_cast<size_t> (place)].load(); }
    uint32_t generation (Tag t) const { return generations[at (t)].load (std::memory_order_acquire); }

private:
    std::array<std::array<std::atomic<float>, numKnobs>, maxTag + 1> knobs;
    std::array<std::array<std::atomic<int>, numLevers>, maxTag + 1> levers;
    std::array<std::atomic<uint32_t>, maxTag + 1> generations;

    static size_t at (Tag t) { return static_cast<size_t> (t < 0 || t > maxTag ? 0 : t); }
    void load (Tag, const Setting&, const Harness&, const ControlMap&);
};
}
