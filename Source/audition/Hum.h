#pragma once

#include "audition/Voice.h"

#include <vector>

namespace coldiron
{
/** The mains field that the coils stand in. Magnetic hum only: touch and shield noise is not wiring's to cure. */
struct MainsField
{
    double hz = 50.0;        ///< 50 or 60
    double facing = 1.0;     ///< -1..1, cosine of the coils' axis to the field
    double buzz = 0.0;       ///< 0..1: current pulses of rectifiers and dimmers on top, a plausible spectrum of our own
};

struct Harmonic
{
    int number = 1;          ///< times the mains frequency
    double share = 1.0;      ///< of the EMF's rms; the squares of all shares sum to 1
};

/** The cosine for coils whose axis stands this far from the field [degrees]: 0 faces it and hums most, 90 is across it
    and hums not at all. Clamped to 0..90. */
double facingOf (double degrees);

/** The frequency of mains of 50 or 60 Hz at a time [s]: within 0.05 Hz, wandering over some seconds. Networks allow a
    hundredth of it (EN 50160: +/-1 % for 99.5 % of a year). */
double mainsHzAt (double hz, double seconds);

/** The EMF of a coil in the field: voltage harmonics of supply networks at their limits (EN 50160: 3rd 5, 5th 6, 7th 5,
    9th 1.5, 11th 3.5, 13th 3 %), each counted by its number since induction grows with frequency. */
std::vector<Harmonic> humSpectrum (const MainsField&);

/** Hum at the input, rms, per volt rms of hum EMF of one 5000-turn coil.
    @param mismatch  random share of turns between the coils of a pair, as no two coils are wound alike; 0: as the data says */
double humRms (const Voice&, const MainsField&, double mismatch = 0.0);

/** Hum of a voice in volts where one 5000-turn coil's hum EMF has emfRms; per harmonic from the voice's own responses.
    The mains' phase drifts slowly as in real networks. The same samples on every run. */
std::vector<float> synthesizeHum (const Voice&, const MainsField&, double emfRms, double sampleRate, size_t frames);

/** The rms EMF of one coil that is `db` against a take of this loudness: 0 dB is a 997 Hz sine as loud as the take
    (dual mono: rms [dBFS] = LUFS - 3.01). */
double humEmfFor (double takeLufs, double db);
}
