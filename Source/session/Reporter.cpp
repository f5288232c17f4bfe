#include "session/Reporter.h"

#include "files/Log.h"
#include "response/Band.h"
#include "response/Hiss.h"
#include "response/TransferFunction.h"
#include "session/Matching.h"

#include <algorithm>
#include <chrono>
#include <cmath>

namespace coldiron
{
namespace
{
constexpr double silentDb = -300.0;
constexpr double notLookedAt = 200.0;     ///< [dBTP] peaks under this are not asked for
constexpr double longestRendered = 180.0; ///< [s] longer takes are matched by their spectrum alone

double inDb (double gain) { return gain > 1e-15 ? 20.0 * std::log10 (gain) : silentDb; }

void fillCurve (const TransferFunction& transfer, const std::vector<double>& hz, std::vector<double>& changeDb,
                std::vector<double>& circuitDb)
{
    changeDb = transfer.gains (hz);
    for (double& value : changeDb)
        value = inDb (value);
    circuitDb.clear();
    for (double f : hz)
        circuitDb.push_back (inDb (std::abs (transfer.optionResponse().unisonResponse (f))));
}
}

namespace
{
/** From which take, as things are: one selected by hand holds as if the option had asked for it. */
TakeChoice choiceOf (const Snapshot& snapshot, OptionId id, const Cancellation& isUnwanted)
{
    const Option* option = snapshot.option (id);
    if (option == nullptr || snapshot.job->takes.empty())
        return {};
    std::vector<CircuitConfig> takes;
    for (int take = 0; take < static_cast<int> (snapshot.job->takes.size()); ++take)
        takes.push_back (snapshot.job->recordedConfig (take));
    return nearestTake (takes, snapshot.job->optionConfig (*option), snapshot.takeFor (id), isUnwanted);
}
}

std::vector<double> Reporter::curveHz()
{
    std::vector<double> hz;
    for (int i = 0; i <= 240; ++i)
        hz.push_back (20.0 * std::pow (1000.0, i / 240.0));
    return hz;
}

Reporter::Reporter (SharedState& state)
    : shared (state),
      worker (
          "coldiron-report", state.changes, [this] (const Cancellation& stop) { return turn (stop); },
          [this] (const std::string& words) { shared.tellFault ("reports", "curves and figures cannot be told: " + words); })
{
}

void Reporter::wantSweep (OptionId id, const std::string& knob)
{
    {
        const std::scoped_lock lock (mutex);
        wanted = { id, knob, wanted.number + 1 };
        swept.clear();
    }
    wake();
}

std::vector<SweepCurve> Reporter::sweep() const
{
    const std::scoped_lock lock (mutex);
    return swept;
}

bool Reporter::isWorking (OptionId id) const
{
    const auto snapshot = shared.snapshot();
    if (id != asRecorded && snapshot->option (id) == nullptr)
        return false;
    const auto report = shared.freshReport (id);
    return report == nullptr || ! report->complete;
}

bool Reporter::waitUntilIdle (OptionId id, double seconds)
{
    return worker.waitFor (seconds, [&] { return ! isWorking (id); });
}

bool Reporter::waitUntilIdle (double seconds)
{
    const auto until = std::chrono::steady_clock::now() + std::chrono::duration<double> (seconds);
    const auto left = [&]
    { return std::max (0.0, std::chrono::duration<double> (until - std::chrono::steady_clock::now()).count()); };
    const auto areTold = [this]
    {
        for (const OptionId id : versionIds)
            if (isWorking (id))
                return false;
        return true;
    };
    return worker.waitFor (seconds, areTold) && worker.waitUntilIdle (left()) && areTold();
}

/** The chain after the jack at the take's rate, and the take behind it. */
void Reporter::followAfter (const Snapshot& snapshot, const TakeMaterial& take, const Cancellation& isUnwanted)
{
    const auto after = shared.after();
    // Driven by the take selected, whatever take an option is derived from: what follows the jack is the same for all.
    const double driveLufs = snapshot.materialFor (asRecorded).lufs;
    if (chainOf != nullptr && after == chainOf && take.audio == chainTake && driveLufs == heardSpec.driveLufs)
        return;
    chainOf = nullptr; // until all of it is there
    chainTake = take.audio;
    const double rate = chainTake ? chainTake->sampleRate : std::max (44100.0, shared.sampleRate.load());
    heardSpec = {};
    heardSpec.design.filter = ModalFilter::unity (rate);
    heardSpec.after = after->choice;
    heardSpec.impulse = after->impulse ? after->impulse->at (rate, isUnwanted) : std::vector<float>();
    heardSpec.driveLufs = driveLufs;
    heardCurve = OutputChain (heardSpec.after, heardSpec.impulse, rate, driveLufs).curve();
    heardTakeLufs.reset();
    chainOf = after;
}

/** As recorded, behind the chain that followAfter() took up. */
double Reporter::takeLufsBehindChain (const TakeMaterial& take, const Cancellation& isUnwanted)
{
    if (! heardTakeLufs)
        heardTakeLufs = heardSpec.after.sound == OutputSound::none
                            ? take.lufs
                            : soundLevel (take.audio->channels, heardSpec, notLookedAt, isUnwanted).lufs;
    return *heardTakeLufs;
}

/** One gain for all: it goes down when any of them asks for it, and up only with another job, take or level, so that
    nothing pumps while a knob is turned. */
void Reporter::keepHeadroom()
{
    const auto snapshot = shared.snapshot();
    const bool matched = shared.matched.load();
    const double hum =
        shared.humDb.load() > -79.9 ? std::pow (10.0, shared.humDb.load() / 20.0) * facingOf (shared.facingDegrees.load()) : 0.0;
    const double hiss = shared.hissGainDb.load() >= 0.0 ? std::pow (10.0, shared.hissGainDb.load() / 20.0) : 0.0;
    bool all = true;
    double most = 0.0;
    for (const OptionId id : versionIds)
    {
        if (id != asRecorded && snapshot->option (id) == nullptr)
            continue;
        const auto report = shared.freshReport (id);
        all = all && report != nullptr && report->complete;
        if (report == nullptr || ! report->heard)
            continue;
        const double gain = matched ? std::pow (10.0, report->matchDb / 20.0) : 1.0;
        const double noises = hum * std::max (report->humPeak, report->buzzPeak) + hiss * report->hissPeak;
        most = std::max (most, std::pow (10.0, (matched ? report->heard->matchedTruePeakDb : report->heard->truePeakDb) / 20.0)
                                   + gain * noises);
    }
    const std::pair now { snapshot->revision, matched };
    const double before = shared.headroomDb.load(), wanted = headroomDb (most);
    const bool mayRise = all && headroomFor != now;
    if (mayRise)
        headroomFor = now;
    if (wanted < before || (mayRise && wanted != before))
    {
        shared.headroomDb = wanted;
        shared.heardRevision.fetch_add (1);
    }
}

std::shared_ptr<Report> Reporter::compute (const Snapshot& snapshot, OptionId id, bool complete, const Cancellation& isUnwanted)
{
    auto report = std::make_shared<Report>();
    report->option = id;
    const CircuitConfig optionConfig = configOf (snapshot, shared.live, id);
    const TakeMaterial& take = snapshot.materialFor (id);
    followAfter (snapshot, take, isUnwanted);
    const GuitarResponse recorded = snapshot.recordedConfig (id).response(), option = optionConfig.response();
    const TransferFunction transfer (recorded, option);
    report->setting = optionConfig.setting;
    report->silent = option.isSilent();
    report->curve.hz = curveHz();
    fillCurve (transfer, report->curve.hz, report->curve.changeDb, report->curve.circuitDb);
    report->figures.confidence = transfer.confidence();
    report->figures.silent = report->silent;
    report->matchDb = id == asRecorded ? 0.0 : matchDb (transfer, heardCurve.heard (take.spectrum));
    if (complete)
        completeReport (*report, snapshot, optionConfig, transfer, isUnwanted);
    return report;
}

/** What takes its time: bands, figures, levels. */
void Reporter::completeReport (Report& report, const Snapshot& snapshot, const CircuitConfig& optionConfig,
                               const TransferFunction& transfer, const Cancellation& isUnwanted)
{
    const OptionId id = report.option;
    const CircuitConfig recordedConfig = snapshot.recordedConfig (id);
    const TakeMaterial& take = snapshot.materialFor (id);
    const GuitarResponse& option = transfer.optionResponse();
    const Band band = computeBand (recordedConfig, optionConfig, report.curve.hz, isUnwanted);
    report.curve.lowDb = band.lowDb;
    report.curve.highDb = band.highDb;
    report.figures = computeFigures (recordedConfig, optionConfig, take.spectrum, isUnwanted);

    const double rate = take.audio ? take.audio->sampleRate : std::max (44100.0, shared.sampleRate.load());
    isUnwanted.check();
    const ModalFilter filter =
        id == asRecorded ? ModalFilter::unity (rate) : designFilter (transfer, *FilterDesigner::shared (rate));
    report.filterErrorDb = filter.worstErrorDb;
    if (take.audio && take.audio->frames() < longestRendered * rate)
    {
        RenderSpec spec = heardSpec;
        spec.design.filter = filter;
        const SoundLevel dry = soundLevel (take.audio->channels, spec.dry(), notLookedAt, isUnwanted);
        report.heard = heardLevel (take.audio->channels, spec, takeLufsBehindChain (take, isUnwanted), isUnwanted);
        report.matchDb = id == asRecorded ? 0.0 : report.heard->matchDb;
        report.peakDb = inDb (dry.peak);
        if (std::isfinite (dry.lufs) && std::isfinite (take.lufs))
            report.figures.loudnessLu = dry.lufs - take.lufs;
    }
    isUnwanted.check();
    report.figures.trust = judgeNoise (take.noise, recordedConfig, transfer);
    report.choice = choiceOf (snapshot, id, isUnwanted);
    const double emf = humEmfFor (take.lufs, 0.0);
    report.coilHums = coilHums (option);
    isUnwanted.check();
    report.otherCoils = otherCoils (optionConfig, isUnwanted);
    report.humPeak = mostHum (option, heardCurve, 0.0, emf);
    report.buzzPeak = mostHum (option, heardCurve, 1.0, emf);
    report.hissPeak = 5.0 * report.figures.hissUv * hissScaleFor (take.lufs, 0.0)
                      * (heardCurve.gains.empty() ? 1.0 : *std::max_element (heardCurve.gains.begin(), heardCurve.gains.end()));
    report.complete = true;
}

/** What a sweep depends on, as one number. */
uint32_t Reporter::sweepSetting (const Wanted& want, const Snapshot& snapshot) const
{
    return shared.live.generation (want.option) + snapshot.revision * 1000003u;
}

bool Reporter::isSweepWanted (const Snapshot& snapshot) const
{
    const std::scoped_lock lock (mutex);
    if (wanted.knob.empty() || (wanted.option != asRecorded && snapshot.option (wanted.option) == nullptr))
        return false;
    return sweptNumber != wanted.number || sweptSetting != sweepSetting (wanted, snapshot);
}

std::vector<SweepCurve> Reporter::computeSweep (const Wanted& want, const Snapshot& snapshot, const Cancellation& isUnwanted)
{
    std::vector<SweepCurve> curves;
    CircuitConfig config = configOf (snapshot, shared.live, want.option);
    const GuitarResponse recorded = snapshot.recordedConfig (want.option).response();
    if (config.setting.knobs.count (want.knob) != 0)
        for (double knob : { 8.0, 6.0, 4.0, 2.0, 0.0 })
        {
            isUnwanted.check();
            config.setting.knobs[want.knob] = knob;
            const GuitarResponse response = config.response();
            SweepCurve curve { knob, curveHz(), {}, {} };
            fillCurve (TransferFunction (recorded, response), curve.hz, curve.changeDb, curve.circuitDb);
            curves.push_back (std::move (curve));
        }
    return curves;
}

bool Reporter::doSweep (const Cancellation& stop)
{
    const auto snapshot = shared.snapshot();
    if (! isSweepWanted (*snapshot))
        return false;
    Wanted want;
    {
        const std::scoped_lock lock (mutex);
        want = wanted;
    }
    const uint32_t setting = sweepSetting (want, *snapshot);
    std::vector<SweepCurve> curves;
    std::string fault;
    try
    {
        curves = computeSweep (want, *snapshot, stop);
    }
    catch (const std::exception& thrown)
    {
        fault = want.knob + " of " + nameOf (want.option) + " cannot be drawn at other places: " + thrown.what();
    }
    shared.tellFault ("sweep", fault);
    {
        const std::scoped_lock lock (mutex);
        sweptNumber = want.number;
        sweptSetting = setting;
        if (wanted.number == want.number)
            swept = std::move (curves);
    }
    shared.reportsRevision.fetch_add (1);
    return true;
}

/** The most urgent report that is to be told: every curve before the rest, the heard option first. */
std::optional<Reporter::Piece> Reporter::nextPiece (const Snapshot& snapshot) const
{
    const OptionId heard = shared.heard.load();
    std::optional<Piece> next;
    for (const OptionId id : versionIds)
    {
        if (id != asRecorded && snapshot.option (id) == nullptr)
            continue;
        const SharedState::Origin origin = shared.origin (id);
        const auto fresh = shared.freshReport (id);
        if (fresh != nullptr && fresh->complete)
            continue;
        const Piece piece { id, fresh != nullptr, origin };
        if (! next || (next->complete && ! piece.complete) || (next->complete == piece.complete && id == heard))
            next = piece;
    }
    return next;
}

std::shared_ptr<Report> Reporter::silentReport (OptionId id)
{
    auto report = std::make_shared<Report>();
    report->option = id;
    report->silent = report->figures.silent = report->complete = true;
    report->curve.hz = curveHz();
    report->curve.changeDb.assign (report->curve.hz.size(), silentDb);
    report->curve.circuitDb = report->curve.changeDb;
    return report;
}

bool Reporter::doNext (const Cancellation& stop)
{
    const auto snapshot = shared.snapshot();
    const auto piece = nextPiece (*snapshot);
    if (! piece)
        return false;
    if (piece->origin.snapshot != snapshot->revision)
        return true; // the job has changed meanwhile

    // A curve that has begun is told, so that those of a knob that never rests are seen moving.
    const Cancellation isUnwanted (
        [&] { return stop.isRequested() || (piece->complete && (isSweepWanted (*snapshot) || nextPiece (*snapshot) != piece)); });
    std::shared_ptr<Report> report;
    try
    {
        // No guitar yet, as before the first job and where no presets are installed: nothing to compute, and no fault.
        report = snapshot->job->guitar.harness.parts().empty() ? silentReport (piece->option)
                                                               : compute (*snapshot, piece->option, piece->complete, isUnwanted);
    }
    catch (const std::exception& thrown)
    {
        report = silentReport (piece->option);
        report->fault = nameOf (piece->option) + " cannot be computed: " + thrown.what();
        logFault (report->fault);
    }
    shared.put (std::move (report), piece->origin);
    return true;
}

bool Reporter::turn (const Cancellation& stop)
{
    const bool isBusy = doSweep (stop) || doNext (stop);
    keepHeadroom();
    return isBusy;
}
}
