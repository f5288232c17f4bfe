#pragma once

#include "guitar/Coil.h"

#include <array>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace coldiron
{
/** A meter's DC resistance across the pickup's two leads, all its coils in series. */
struct OhmsReading
{
    double ohms = 0.0; ///< > 0
};

/** An LCR meter's reading: what the meter shows, not what the coil has. Below resonance only. */
struct MeterReading
{
    bool parallel = false;      ///< the meter's mode: L and R in series, or L and R in parallel
    double hz = 0.0;            ///< > 0
    double henries = 0.0;       ///< > 0
    std::optional<double> ohms; ///< the resistance shown beside it, > 0
    double addedFarads = 0.0;   ///< a known capacitor across the leads, the meter's cable included, >= 0
};

struct ImpedanceReading
{
    double hz = 0.0;               ///< > 0
    double ohms = 0.0;             ///< magnitude, > 0
    std::optional<double> degrees; ///< -90 to 90
    double addedFarads = 0.0;      ///< >= 0
};

/** The frequency at which the impedance across the leads is highest. */
struct ResonanceReading
{
    double hz = 0.0;          ///< > 0
    double addedFarads = 0.0; ///< >= 0
};

/** A point of a swept response: the level across a load while a small coil drives the pickup. Levels are relative: only
    the shape of a sweep counts. */
struct ResponseReading
{
    double hz = 0.0; ///< > 0
    double db = 0.0;
    int sweep = 0; ///< index into PickupReadings::sweeps
};

struct ResponseSweep
{
    double loadOhms = 1e6;       ///< > 0
    double loadFarads = 500e-12; ///< >= 0, cable and input
    bool rising = false;         ///< the EMF rises with frequency (constant current in the drive coil); else it is flat
    std::string coil;            ///< the one coil that is driven; empty: all, as a string drives them
};

struct Reading
{
    std::variant<OhmsReading, MeterReading, ImpedanceReading, ResonanceReading, ResponseReading> kind;
    int line = 0; ///< for messages

    template <typename T>
    const T* as() const
    {
        return std::get_if<T> (&kind);
    }
};

/** One standard deviation of each kind of reading. */
struct ReadingAccuracy
{
    double dcr = 0.005;       ///< share
    double inductance = 0.01; ///< share
    double meterOhms = 0.05;  ///< share, of the resistance beside an inductance
    double impedance = 0.02;  ///< share
    double degrees = 1.0;     ///< degrees
    double resonance = 0.01;  ///< share
    double responseDb = 0.2;  ///< dB
};

struct PickupReadings
{
    double celsius = 20.0; ///< of the coil while it was read
    ReadingAccuracy accuracy;
    std::vector<ResponseSweep> sweeps;
    std::vector<Reading> readings;
};

/** Whether the readings say a value: within a stated limit; only roughly; not at all, so that the generic pickup's,
    scaled, was kept. */
enum class Found { measured, roughly, assumed };

/** A value as the pickup's two leads show it. */
struct FittedValue
{
    double value = 0.0;       ///< in the unit of its CoilFit::Value
    double uncertainty = 0.0; ///< one standard deviation, as a share of the value
    Found found = Found::assumed;
};

struct FittedReading
{
    enum class Quantity {
        dcr,             ///< ohms
        meterInductance, ///< H, of an LCR meter
        meterResistance, ///< ohms, beside that inductance
        impedance,       ///< ohms, magnitude
        phase,           ///< degrees, of an impedance
        resonance,       ///< Hz
        response         ///< dB
    };
    int line = 0;
    Quantity quantity = Quantity::dcr;
    double read = 0.0, fitted = 0.0;
    double misfit = 0.0; ///< in standard deviations of that kind of reading
};

/** Why a pickup's coils cannot be read in series between two leads. */
enum class SeriesFault { noCoils, severalJoints, noSuchLead, backIntoSameCoil, notInSeries, noInductance };

/** Why a fit is not to be used. */
struct FitRefusal
{
    enum class Reason {
        noReadings,
        otherDcr,         ///< `found` is no such pickup's DC resistance, which is about `expected` [ohms]
        shortSweep,       ///< `found` rows through one load, and at least `expected` are needed
        noSuchCoil,       ///< a sweep drives the coil `name`
        notOnePickup,     ///< all readings lie `found` times their stated accuracy away from the nearest pickup
        outlier,          ///< so does the one `reading`
        otherInductance,  ///< `found` against `expected` of the kind it starts from [H]
        otherCapacitance, ///< the same [F]
        nothingSaid,      ///< the readings decide no value
        notInSeries,      ///< the pickup to start from, by `series` at the lead `name`
        failed            ///< the fit itself, with `name` as its message
    };
    Reason reason = Reason::noReadings;
    int line = 0; ///< 0: the readings as a whole
    double found = 0.0, expected = 0.0;
    std::string name;
    FittedReading reading;
    SeriesFault series = SeriesFault::noCoils;
};

/** What to know about a fit that can be used. */
struct FitNote
{
    enum class Kind {
        rival,           ///< another pickup fits about as well: `first` [H], `second` [F]
        coilsInSeries,   ///< `first` coils were read as one; `second` is the coupling assumed
        farFromGeneric,  ///< `first` times the generic pickup's DC resistance: stays assumed
        misfit,          ///< the readings lie `first` times their stated accuracy from the fit
        openCapacitance, ///< the winding capacitance was not found
        turns            ///< output and hum go with the inductance
    };
    Kind kind = Kind::turns;
    double first = 0.0, second = 0.0;
};

struct CoilFit
{
    enum Value { dcr, inductance, capacitance, lossOhms, lossHenries }; ///< ohms at 20 C, H, F, ohms, H

    Pickup pickup; ///< the generic one with its values replaced, `known` set
    std::array<FittedValue, 5> values;
    double resonanceHz = 0.0; ///< of the bare pickup with nothing across it; 0: none below 200 kHz
    double misfit = 0.0;      ///< rms in standard deviations, for the degrees of freedom that are left; about 1 when all is well
    std::vector<FittedReading> readings;
    std::vector<FitNote> notes;
    std::vector<FitRefusal> refusals; ///< not empty: the fit is not to be used

    bool accepted() const { return refusals.empty(); }
};

/** Fits a pickup to bench readings, starting from a generic pickup of its kind.

    Five values are sought for the pickup as a whole: DC resistance at 20 C, low-frequency inductance, winding
    capacitance, and the resistance and the share of its eddy-current loss; the coils keep the generic pickup's
    proportions and coupling. What the readings leave open is kept: turns go as DC resistance (same wire, same bobbin),
    inductance and loss resistance as turns squared, output and hum as turns; the winding capacitance and the share
    of the loss stay. Every reading is compared with the whole coil's impedance, so an inductance raised by the winding capacitance
    or lowered by the loss is taken for what it is.

    Least squares in logarithms with wide priors, from several fixed starts: the same readings give the same fit.
    Never throws for bad readings: see refusals. */
CoilFit fitCoil (const Pickup& generic, const PickupReadings&);
}
