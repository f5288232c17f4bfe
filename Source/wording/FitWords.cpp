#include "wording/FitWords.h"

#include "wording/Say.h"

namespace coldiron::wording
{
namespace
{
std::string seriesFault (SeriesFault fault, const std::string& lead)
{
    switch (fault)
    {
    case SeriesFault::noCoils: return say ("the pickup has no coils");
    case SeriesFault::severalJoints: return say ("{lead} has several joints inside", lead);
    case SeriesFault::noSuchLead: return say ("there is no lead {lead}", lead);
    case SeriesFault::backIntoSameCoil: return say ("the joints inside lead back into the same coil");
    case SeriesFault::notInSeries: return say ("the joints inside do not put all its coils in series between two leads");
    case SeriesFault::noInductance: break;
    }
    return say ("its coils in series have no inductance left");
}

std::string outlier (const FittedReading& reading)
{
    return say (
        "{row} reads {read} {unit}, but the pickup nearest to all readings gives {fitted} {unit}, {times} times the stated "
        "accuracy away; read it again, or leave the row out",
        rowOf (reading.quantity), significant (reading.read, 5), unitOf (reading.quantity), significant (reading.fitted, 5),
        decimals (reading.misfit, 0));
}
}

std::string fittedValue (CoilFit::Value value)
{
    switch (value)
    {
    case CoilFit::dcr: return say ("DC resistance at 20 C");
    case CoilFit::inductance: return say ("inductance");
    case CoilFit::capacitance: return say ("winding capacitance");
    case CoilFit::lossOhms: return say ("loss resistance");
    case CoilFit::lossHenries: break;
    }
    return say ("loss inductance");
}

std::string unitOf (CoilFit::Value value)
{
    switch (value)
    {
    case CoilFit::dcr:
    case CoilFit::lossOhms: return say ("ohm");
    case CoilFit::capacitance: return say ("F");
    case CoilFit::inductance:
    case CoilFit::lossHenries: break;
    }
    return say ("H");
}

std::string rowOf (FittedReading::Quantity quantity)
{
    using Quantity = FittedReading::Quantity;
    switch (quantity)
    {
    case Quantity::dcr: return "dcr";
    case Quantity::meterInductance:
    case Quantity::meterResistance: return "lcr";
    case Quantity::impedance:
    case Quantity::phase: return "impedance";
    case Quantity::resonance: return "resonance";
    case Quantity::response: break;
    }
    return "response";
}

std::string unitOf (FittedReading::Quantity quantity)
{
    using Quantity = FittedReading::Quantity;
    switch (quantity)
    {
    case Quantity::dcr:
    case Quantity::meterResistance:
    case Quantity::impedance: return say ("ohm");
    case Quantity::meterInductance: return say ("H");
    case Quantity::phase: return say ("deg");
    case Quantity::resonance: return say ("Hz");
    case Quantity::response: break;
    }
    return say ("dB");
}

std::string fitRefusal (const FitRefusal& refusal)
{
    using Reason = FitRefusal::Reason;
    switch (refusal.reason)
    {
    case Reason::noReadings: return say ("there are no readings; add at least one row like dcr,8.1k");
    case Reason::otherDcr:
        return say ("reads {read} ohm, but a pickup of this kind has about {expected}: is a k missing or too many, is a winding "
                    "open or shorted, or is it another kind of pickup?",
                    significant (refusal.found, 5), significant (refusal.expected, 5));
    case Reason::shortSweep:
        return say ("a response through one load needs at least {needed} rows, since only its shape counts; found {found}",
                    rounded (refusal.expected), rounded (refusal.found));
    case Reason::noSuchCoil: return say ("the pickup has no coil \"{coil}\" to drive", refusal.name);
    case Reason::notOnePickup:
        return say (
            "the readings do not belong to one pickup of this kind: typically {times} times the stated accuracy away from "
            "the nearest one; the farthest follow. Read them again, state the accuracy, or start from another kind",
            decimals (refusal.found, 1));
    case Reason::outlier: return outlier (refusal.reading);
    case Reason::otherInductance:
        return say ("the readings ask for {found} H, and the kind it starts from has {expected}; check units and mode, or start "
                    "from another kind",
                    significant (refusal.found, 4), significant (refusal.expected, 4));
    case Reason::otherCapacitance:
        return say (
            "the readings ask for {found} pF of winding capacitance, and a pickup of this kind has about {expected}: with "
            "this inductance no such resonance is possible; check the frequencies, and that the meter's cable is counted "
            "in the added capacitor",
            significant (refusal.found * 1e12, 3), decimals (refusal.expected * 1e12, 0));
    case Reason::nothingSaid: return say ("the readings say nothing of this pickup; start with its DC resistance, dcr,8.1k");
    case Reason::notInSeries:
        return say ("the pickup to start from cannot be read between two leads: {why}",
                    seriesFault (refusal.series, refusal.name));
    case Reason::failed: break;
    }
    return say ("no pickup can be fitted to these readings: {why}", refusal.name);
}

std::string fitNote (const FitNote& note)
{
    using Kind = FitNote::Kind;
    switch (note.kind)
    {
    case Kind::rival:
        return say ("another pickup fits these readings about as well, with {henries} H and {picofarads} pF: a reading with its "
                    "phase, or at one more frequency, would decide",
                    significant (note.first, 4), significant (note.second * 1e12, 3));
    case Kind::coilsInSeries:
        return say ("its {count} coils were read in series: they keep the generic pickup's proportions to each other and its "
                    "coupling of {coupling}, assumed",
                    rounded (note.first), significant (note.second, 2));
    case Kind::farFromGeneric:
        return say ("stays assumed: {times} times the DC resistance of the pickup it starts from, and beyond 20 % that is more "
                    "often another wire than as many more turns, so the inductance may be far off; start from a hotter or milder "
                    "kind, or read the inductance",
                    decimals (note.first, 2));
    case Kind::misfit:
        return say (
            "the readings lie {times} times their stated accuracy apart from the fit; the uncertainties were widened by as "
            "much",
            decimals (note.first, 1));
    case Kind::openCapacitance:
        return say ("the winding capacitance stays open: the impedance at or near the resonance, bare or with a small known "
                    "capacitor, or a sweep would tell it");
    case Kind::turns: break;
    }
    return say ("output and hum go with the turns, taken from the inductance; magnets are not measured");
}
}
