#pragma once

#include "response/GuitarResponse.h"

#include <vector>

namespace coldiron
{
/** A single coil of the trade, to tell hum by: 8000 turns, those of the shipped pickup `single-coil` (a test holds the two
    together). Its string EMF is turns/5000 too, so that hum against playing is the same for any coil that is heard alone. */
constexpr double singleCoilTurns = 8000.0;

/** Of turns, between two coils meant to be equal: no two are wound alike. Common practice of the trade, no source. */
constexpr double assumedMismatch = 0.02;

/** The mains field that the coils stand in. Magnetic hum only: touch and shield noise is not wiring's to cure. */
struct MainsField
{
    double hz = 50.0;    ///< 50 or 60
    double facing = 1.0; ///< -1..1, cosine of the coils' axis to the field
    double buzz = 0.0;   ///< 0..1: current pulses of rectifiers and dimmers on top, a plausible spectrum of our own
};

struct Harmonic
{
    int number = 1;     ///< times the mains frequency
    double share = 1.0; ///< of the EMF's rms; the squares of all shares sum to 1
};

/** The cosine for coils whose axis stands this far from the field [degrees]: 0 faces it and hums most, 90 is across it
    and hums not at all. Clamped to 0..90. */
double facingOf (double degrees);

/** The frequency of mains of 50 or 60 Hz at a time [s]: within 0.05 Hz, drifting over some seconds. Networks allow a
    hundredth of it (EN 50160: +/-1 % for 99.5 % of a year). */
double mainsHzAt (double hz, double seconds);

/** What the drift has added until then [cycles], from 0.048 on. */
double mainsDrift (double seconds);

/** The EMF of a coil in the field: voltage harmonics of supply networks at their limits (EN 50160: 3rd 5, 5th 6, 7th 5,
    9th 1.5, 11th 3.5, 13th 3 %), each counted by its number since induction grows with frequency. */
std::vector<Harmonic> humSpectrum (const MainsField&);

/** Hum of all coils in the field as it is heard: V at the input per volt of hum EMF of one 5000-turn coil. Coils whose turns
    the data gives as equal differ by the mismatch, in power on average over such pairs, so a humbucker is quiet and not
    dead. Coils given with unequal turns have been measured, and hum as they say.
    @param mismatch  share of turns; 0: as the data says, GuitarResponse::hum() */
std::complex<double> heardHum (const GuitarResponse&, double hz, double facing = 1.0, double mismatch = assumedMismatch);

/** heardHum() over the spectrum of the field, rms. */
double humRms (const GuitarResponse&, const MainsField&, double mismatch = assumedMismatch);

/** The hum of a response against a single coil of the trade; 50 Hz, facing the field. -300 where it is silent. */
struct HumFigures
{
    double jackDb = -300.0;    ///< at the jack re a single coil's hum EMF
    double playingDb = -300.0; ///< the same against the playing, 200 to 800 Hz: what is left when both are made as loud
    bool assumed = false;      ///< more of it comes from the assumed mismatch than from the data
};

HumFigures humFigures (const GuitarResponse&);

/** In steps: what a client hears of it. */
enum class HumKind { quiet, less, like, more };
HumKind humKind (double playingDb);

/** The rms EMF of one coil that is `db` against a take of this loudness: 0 dB is a 997 Hz sine as loud as the take
    (dual mono: rms [dBFS] = LUFS - 3.01). */
double humEmfFor (double takeLufs, double db);
}
