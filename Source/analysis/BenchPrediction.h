#pragma once

#include "guitar/GuitarCircuit.h"

#include <string>
#include <vector>

namespace coldiron
{
/** What may be tapped, or have steel pulled away from it: a pickup, or one coil of it. */
struct StrikePlace
{
    std::string pickup, coil;  ///< coil empty: the pickup as a whole
    std::vector<size_t> coils; ///< those that are struck, in the order of the circuit
    double reference = 0.0;    ///< EMF of the strongest coil of the pickup, > 0; 0 of dummy coils alone
};

/** Of a harness as it should be: each pickup, and behind it each of its coils. */
std::vector<StrikePlace> strikePlaces (const Harness&);

/** What a bench finds at the jack of a harness at one setting: a meter's ohms, what a light tap with a screwdriver gives, and the
    kick of an analogue meter as steel is pulled away. */
struct BenchPrediction
{
    static constexpr double meterOhms = 50e3; ///< of an analogue meter, across the jack

    bool isActive = false; ///< a buffer drives the jack: no ohms
    double ohms = 0.0;     ///< 0: tip and sleeve are one; above 100M open

    /** How many per cent the ohms rise when the resistance of a part does by one: of each part in their order, then of each coil. */
    std::vector<double> shares;

    /** At each place, dB against the EMF of the strongest coil there; -300 where nothing comes. */
    std::vector<double> tapDb;

    /** At each place, in the same measure, signed: +1 is all of one coil's. Which way a needle goes depends on its probes and on
        the magnets, so only the signs of two kicks beside each other mean something. */
    std::vector<double> kicks;
};

/** @param places  of the harness as it should be, whatever is wrong with this one
    @param listening  what hangs on the jack as a tap is heard; a mono plug is in
    @throws HarnessError for a knob or position that does not exist */
BenchPrediction predictBench (const Harness&, const Setting&, const Load& listening, const std::vector<StrikePlace>& places);
}
