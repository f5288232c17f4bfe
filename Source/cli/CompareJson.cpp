#include "cli/CompareTable.h"

#include "files/Json.h"
#include "wording/ConfidenceWords.h"
#include "wording/FigureWords.h"
#include "wording/ListeningWords.h"
#include "wording/OhmWords.h"
#include "wording/TakeWords.h"

namespace coldiron::cli
{
namespace
{
Json orNull (const std::optional<double>& value) { return value ? Json (*value) : Json(); }
Json unless (bool meaningless, double value) { return meaningless ? Json() : Json (value); }

Json volumes (const Figures& figures)
{
    Json list = Json::list();
    for (const auto& volume : figures.volumes)
    {
        Json entry, steps = Json::list();
        for (const auto& step : volume.steps)
            steps.add (Json::object ({ { "knob", step.knob },
                                       { "level_db_re_knob_10", step.levelDb },
                                       { "clarity_db_re_knob_10", orNull (step.clarityDb) } }));
        entry["volume"] = volume.knob;
        entry["heard"] = volume.heard;
        entry["mutes_others"] = volume.mutesOthers ? Json (*volume.mutesOthers) : Json();
        entry["steps"] = steps;
        list.add (entry);
    }
    return list;
}

Json column (const Job& job, const Compared& c)
{
    const auto& f = c.figures;
    Json entry;
    entry["option"] = c.letter;
    entry["name"] = c.name;
    entry["take"] = c.take < 0 ? Json() : Json (job.takes[static_cast<size_t> (c.take)].file.filename().string());
    entry["silent"] = f.silent;
    entry["level_db"] = unless (f.silent, f.levelDb);
    entry["loudness_lu"] = orNull (f.loudnessLu);
    entry["loudness_words"] = wording::levelChange (f.loudnessLu.value_or (f.levelDb));
    entry["clarity_db"] = orNull (f.clarityDb);
    entry["peak_hz"] = orNull (f.resonance.peakHz);
    entry["peak_db_above_low_end"] = orNull (f.resonance.peakDb);
    entry["corner_hz"] = orNull (f.resonance.cornerHz);
    entry["has_passband"] = f.resonance.passbandDb.has_value();
    entry["volumes"] = volumes (f);
    entry["hum_jack_db"] = unless (f.silent, f.humJackDb);
    entry["hum_against_playing_db"] = unless (f.silent, f.humAgainstPlayingDb);
    entry["hum_jack_db_re_single_coil"] = unless (f.silent, f.hum.jackDb);
    entry["hum_against_playing_db_re_single_coil"] = unless (f.silent, f.hum.playingDb);
    entry["hum_words"] = wording::hum (f);
    entry["hum_by_assumed_mismatch"] = f.humByMismatch;
    Json coils = Json::list();
    for (const auto& choice : c.otherCoils)
        coils.add (Json::object ({ { "lever", choice.lever },
                                   { "position", choice.position },
                                   { "pickup", choice.pickup },
                                   { "kept", choice.kept },
                                   { "other", choice.other },
                                   { "hum_db_re_one_coil", choice.humDb },
                                   { "hum_db_with_other", choice.otherHumDb } }));
    entry["other_coils"] = coils;
    entry["hiss_uv"] = f.hissUv;
    entry["output_ohms_1_khz"] = f.outputOhms;
    entry["cable_db_per_metre_5_khz"] = unless (f.silent, f.dbPerMetre);
    const bool noReading = ! c.ohms.isNumber();
    entry["ohms"] = Json::object ({ { "reads", noReading ? wording::noOhms (c.ohms) : "ohms" },
                                    { "ohms", unless (noReading, c.ohms.ohms) },
                                    { "low_ohms", unless (noReading, c.ohms.lowOhms) },
                                    { "high_ohms", unless (noReading, c.ohms.highOhms) } });
    const auto& sure = f.confidence;
    entry["sure"] = Json::object ({ { "playing", wording::similarity (sure.playing) },
                                    { "guitar", wording::provenance (sure.guitar) },
                                    { "pill", wording::weakerMark (sure) },
                                    { "loudness_plus_minus_lu", sure.loudnessDb() },
                                    { "third_octave_typical_db", sure.thirdOctaveTypicalDb() },
                                    { "third_octave_nine_in_ten_db", sure.thirdOctaveNineInTenDb() },
                                    { "words", wording::explanation (sure) } });
    if (c.choice.take >= 0)
    {
        entry["take_number"] = c.choice.take + 1;
        entry["take_words"] = wording::derivedFrom (c.choice);
    }
    if (const auto surer = wording::surerTake (c.choice); ! surer.empty())
        entry["better_take"] = surer;
    if (! c.stillAtRest.empty())
        entry["as_recorded_until_thrown"] = c.stillAtRest;
    entry["trusted_to_hz"] = orNull (f.trust.trustedToHz);
    if (f.trust.trustedToHz)
        entry["noise"] = Json::object (
            { { "lifted_by_db", f.trust.liftDb }, { "at_hz", f.trust.liftHz }, { "words", wording::noiseTrust (f.trust) } });
    Json band = Json::list();
    for (size_t i = 0; i < c.band.hz.size(); ++i)
        band.add (Json::object ({ { "hz", c.band.hz[i] }, { "low_db", c.band.lowDb[i] }, { "high_db", c.band.highDb[i] } }));
    entry["band"] = band;
    return entry;
}
}

std::string compareJson (const Job& job, const std::vector<Compared>& all, const std::vector<TakeRemarks>& takes)
{
    Json document;
    document["job"] = job.title;
    document["takes"] = Json::list();
    for (const auto& take : takes)
    {
        auto entry = Json::object ({ { "file", take.name },
                                     { "noise_db_re_playing", unless (! take.noise.isKnown, take.noise.noiseDb()) },
                                     { "pause_seconds", take.noise.pauseSeconds },
                                     { "faults", Json::list() } });
        for (const auto& fault : take.faults)
            entry["faults"].add (
                Json::object ({ { "words", wording::takeFault (fault) }, { "cost", wording::takeFaultCost (fault) } }));
        document["takes"].add (entry);
    }
    document["blind"] = Json::list();
    for (const auto& result : job.blind)
        document["blind"].add (Json::object ({ { "words", wording::blindResult (result) }, { "date", result.date } }));
    document["columns"] = Json::list();
    for (const auto& compared : all)
        document["columns"].add (column (job, compared));
    return document.write (2) + "\n";
}
}
