#include "analysis/FaultFinder.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <map>
#include <numeric>
#include <stdexcept>

namespace coldiron
{
namespace
{
constexpr double breakLeaksDb = -38.0; // of a broken winding: between what is heard as weak and what as none
constexpr double newJoint = 1.4;       // ln: what was soldered last is looked at first
constexpr double rankedWithin = 25.0;  // ln: worse than the best by more is no suspect

/** How often which is met at the bench, ln (common practice of the trade, no source): enough to put equals in order. */
double usual (Fault::Kind kind)
{
    switch (kind)
    {
    case Fault::Kind::none: return 0.0;
    case Fault::Kind::openLead:
    case Fault::Kind::openWire:
    case Fault::Kind::openJoint: return 0.0;
    case Fault::Kind::dryLug: return -0.4;
    case Fault::Kind::bridged:
    case Fault::Kind::swappedLeads: return -0.6;
    case Fault::Kind::swappedLugs:
    case Fault::Kind::deadCoil: return -0.8;
    case Fault::Kind::wrongPot: return -1.0;
    case Fault::Kind::shortedCoil: return -1.2;
    }
    return 0.0;
}

bool isNew (const Fault& fault, const std::vector<SolderPair>& made)
{
    return std::any_of (made.begin(), made.end(),
                        [&] (const SolderPair& pair)
                        {
                            const auto has = [&] (const std::string& point)
                            { return std::find (fault.points.begin(), fault.points.end(), point) != fault.points.end(); };
                            const bool isJoint = fault.kind == Fault::Kind::openLead || fault.kind == Fault::Kind::openWire
                                                 || fault.kind == Fault::Kind::openJoint;
                            return isJoint ? has (pair.first) && has (pair.second) : has (pair.first) || has (pair.second);
                        });
}

/** The same to more digits than any meter shows: one circuit by another name. */
std::string keyOf (const BenchPredictions& predictions)
{
    std::string key;
    char text[32];
    const auto add = [&] (double value)
    {
        std::snprintf (text, sizeof text, "%.5g ", value == 0.0 ? 0.0 : value);
        key += text;
    };
    for (const auto& prediction : predictions)
    {
        const auto kind = BenchLikelihood::kindOf (prediction->ohms);
        if (kind == OhmsNoted::Kind::number)
        {
            add (prediction->ohms);
            for (const double share : prediction->shares)
                add (std::round (share * 1e4));
        }
        else
            key += kind == OhmsNoted::Kind::open ? "open " : "short ";
        for (const double db : prediction->tapDb)
            add (std::round (std::max (db, -100.0) * 20.0));
        for (const double kick : prediction->kicks)
            add (std::round (kick * 1e4));
    }
    return key;
}

/** What a bench would find if nothing reached the jack: for circuits that have no single solution. */
BenchPrediction nothing (size_t shares, size_t places)
{
    BenchPrediction prediction;
    prediction.ohms = 1e12;
    prediction.shares.assign (shares, 0.0);
    prediction.tapDb.assign (places, -300.0);
    prediction.kicks.assign (places, 0.0);
    return prediction;
}

/** A break is rarely clean: a little leaks through the winding's own capacitance. */
void leak (BenchPrediction& prediction, const BenchPrediction& sound, const Fault& fault, const std::vector<StrikePlace>& places)
{
    const auto [pickup, terminal] = splitPoint (fault.points.front());
    for (size_t i = 0; i < places.size(); ++i)
        if (places[i].pickup == pickup && (places[i].coil.empty() || places[i].coil + ".start" == terminal))
            prediction.tapDb[i] = std::max (prediction.tapDb[i], sound.tapDb[i] + breakLeaksDb);
}

template <typename What>
bool allPass (const std::vector<StrikeVerdict<What>>& verdicts)
{
    return std::all_of (verdicts.begin(), verdicts.end(), [] (const auto& verdict) { return verdict.passes; });
}
}

bool ReadingVerdict::passes() const { return (! ohms || ohms->passes) && allPass (taps) && allPass (kicks); }

FaultFinder::FaultFinder (const Harness& sound, const BenchReadings& asked, const Load& listening,
                          const std::vector<SolderPair>& made)
    : harness (sound), weigh (sound, asked)
{
    const auto& places = weigh.places();
    const auto predict = [&] (const Harness& faulty)
    {
        BenchPredictions predictions;
        for (const auto& reading : asked.readings)
        {
            BenchPrediction prediction;
            try
            {
                prediction = predictBench (faulty, reading.setting, listening, places);
            }
            catch (const std::runtime_error&)
            {
                prediction = nothing (weigh.numShares(), places.size());
            }
            predictions.push_back (std::make_shared<const BenchPrediction> (std::move (prediction)));
        }
        return predictions;
    };

    std::map<std::string, size_t> known;
    const auto add = [&] (const Fault& fault, BenchPredictions predictions)
    {
        const double prior = usual (fault.kind) + (isNew (fault, made) ? newJoint : 0.0);
        const auto [place, isFirst] = known.try_emplace (keyOf (predictions), all.size());
        if (isFirst)
        {
            Suspect suspect;
            suspect.faults = { fault };
            suspect.prior = prior;
            suspect.typical = weigh.typical (predictions, asked);
            suspect.typicalLog = weigh.score (predictions, suspect.typical).log;
            suspect.predictions = std::move (predictions);
            all.push_back (std::move (suspect));
            return;
        }
        auto& suspect = all[place->second];
        const bool isLikelier = prior > suspect.prior && suspect.faults.front().kind != Fault::Kind::none;
        suspect.faults.insert (isLikelier ? suspect.faults.begin() : suspect.faults.end(), fault);
        if (isLikelier)
            suspect.prior = prior;
    };

    const auto asItShouldBe = predict (sound);
    add ({}, asItShouldBe);
    for (const auto& fault : singleFaults (sound))
    {
        auto predictions = predict (withFault (sound, fault));
        if (fault.kind == Fault::Kind::deadCoil)
            for (size_t i = 0; i < predictions.size(); ++i)
            {
                auto leaky = *predictions[i];
                leak (leaky, *asItShouldBe[i], fault, places);
                predictions[i] = std::make_shared<const BenchPrediction> (std::move (leaky));
            }
        add (fault, std::move (predictions));
    }
    for (const auto& reading : asked.readings)
        bounds.push_back (ohmReading (sound, reading.setting, reading.setting.knobs));
}

bool FaultFinder::tellsApart (const Suspect& a, const Suspect& b) const
{
    return b.typicalLog - weigh.score (a.predictions, b.typical).log > apart
           || a.typicalLog - weigh.score (b.predictions, a.typical).log > apart;
}

ReadingVerdict FaultFinder::judge (const BenchReadings& noted, size_t index, bool turned) const
{
    const auto& reading = noted.readings[index];
    const auto& sound = all.front();
    const auto& prediction = *sound.predictions[index];
    const auto& expected = sound.typical.readings[index];
    ReadingVerdict verdict;
    verdict.levers = bounds[index].levers;
    verdict.knobs = reading.setting.knobs;
    verdict.line = reading.line;
    if (reading.ohms && ! prediction.isActive)
    {
        OhmVerdict ohms;
        ohms.noted = *reading.ohms;
        ohms.expected = expected.ohms->kind;
        const double hand = weigh.isBetweenEnds (index) ? 0.5 : 0.0; // ln, both sides: two of the likelihood's
        ohms.lowOhms = bounds[index].lowOhms * (1.0 - noted.accuracy) * std::exp (-hand);
        ohms.highOhms = bounds[index].highOhms * (1.0 + noted.accuracy) * std::exp (hand);
        ohms.passes = BenchLikelihood::kindOf (*reading.ohms) == ohms.expected;
        if (reading.ohms->kind == OhmsNoted::Kind::number && ohms.expected == OhmsNoted::Kind::number)
            ohms.passes = reading.ohms->ohms + reading.ohms->halfStep >= ohms.lowOhms
                          && reading.ohms->ohms - reading.ohms->halfStep <= ohms.highOhms;
        verdict.ohms = ohms;
    }
    for (size_t k = 0; k < reading.taps.size(); ++k)
    {
        const double chance = BenchLikelihood::tapChance (reading.taps[k].what, prediction.tapDb[weigh.tapPlace (index, k)]);
        verdict.taps.push_back ({ reading.taps[k], expected.taps[k].what, chance >= BenchLikelihood::leastChance });
    }
    for (size_t k = 0; k < reading.kicks.size(); ++k)
    {
        const double kick = prediction.kicks[weigh.kickPlace (index, k)] * (turned ? -1.0 : 1.0);
        auto way = expected.kicks[k].what;
        if (turned && way != Kick::none)
            way = way == Kick::up ? Kick::down : Kick::up;
        verdict.kicks.push_back (
            { reading.kicks[k], way, BenchLikelihood::kickChance (reading.kicks[k].what, kick) >= BenchLikelihood::leastChance });
    }
    return verdict;
}

std::vector<FaultGroup> FaultFinder::groups (const BenchReadings& noted, const std::vector<BenchScore>& scores) const
{
    std::vector<size_t> order;
    for (size_t i = 0; i < all.size(); ++i)
        if (scores[i].of > 0)
            order.push_back (i);
    const auto likely = [&] (size_t i) { return scores[i].log + all[i].prior; };
    std::stable_sort (order.begin(), order.end(), [&] (size_t a, size_t b) { return likely (a) > likely (b); });

    std::vector<FaultGroup> found;
    std::vector<size_t> leaders;
    std::vector<bool> isTaken (all.size(), false);
    for (const auto leader : order)
    {
        if (isTaken[leader])
            continue;
        if (found.size() == mostSuspects || likely (order.front()) - likely (leader) > rankedWithin)
            break;
        FaultGroup group;
        group.log = likely (leader);
        group.fits = scores[leader].fits;
        group.of = scores[leader].of;
        for (const auto i : order)
            if (! isTaken[i] && (i == leader || ! tellsApart (all[leader], all[i])))
            {
                isTaken[i] = true;
                group.alike.insert (group.alike.end(), all[i].faults.begin(), all[i].faults.end());
            }
        for (const auto& fault : group.alike)
            if (group.lookFirst.empty())
                group.lookFirst = placesOf (fault, harness);
        found.push_back (std::move (group));
    }
    return found;
}

BenchVerdict FaultFinder::verdict (const BenchReadings& noted) const
{
    std::vector<BenchScore> scores (all.size());
    double best = -1e300;
    for (size_t i = 0; i < all.size(); ++i)
        if (i == 0 || weigh.mostLog (all[i].predictions, noted) + all[i].prior > best - rankedWithin)
        {
            scores[i] = weigh.score (all[i].predictions, noted);
            best = std::max (best, scores[i].log + all[i].prior);
        }

    BenchVerdict verdict;
    for (size_t i = 0; i < noted.readings.size(); ++i)
    {
        verdict.readings.push_back (judge (noted, i, scores[0].turned));
        verdict.eachPasses = verdict.eachPasses && verdict.readings.back().passes();
    }
    verdict.passes = verdict.eachPasses && best - scores[0].log - all[0].prior <= tooFar;
    for (const auto& suspect : all)
        if (&suspect == &all.front() || ! tellsApart (all.front(), suspect))
            std::copy_if (suspect.faults.begin(), suspect.faults.end(), std::back_inserter (verdict.unseen),
                          [] (const Fault& fault) { return fault.kind != Fault::Kind::none; });
    if (! verdict.passes)
        verdict.suspects = groups (noted, scores);
    return verdict;
}

BenchVerdict checkReadings (const Job& job, const BenchReadings& noted)
{
    const auto* option = noted.option.empty() ? nullptr : job.find (noted.option);
    const auto& harness = measuredHarness (job, noted.option);
    std::vector<SolderPair> made;
    if (option != nullptr)
        for (const auto& joint : changesBetween (option->guitar.harness, harness).made)
            made.push_back (joint.pair);
    return FaultFinder (harness, noted, option != nullptr ? option->listening : job.listening, made).verdict (noted);
}
}
