#include "session/Reporter.h"

#include "response/Band.h"
#include "response/TransferFunction.h"
#include "session/Matching.h"

#include <algorithm>
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
TakeChoice choiceOf (const Snapshot& snapshot, OptionId id)
{
    const Option* option = snapshot.option (id);
    if (option == nullptr || snapshot.job->takes.empty())
        return {};
    std::vector<CircuitConfig> takes;
    for (int take = 0; take < static_cast<int> (snapshot.job->takes.size()); ++take)
        takes.push_back (snapshot.job->recordedConfig (take));
    return nearestTake (takes, snapshot.job->optionConfig (*option), snapshot.takeFor (id));
}
}

std::vector<double> Reporter::curveHz()
{
    std::vector<double> hz;
    for (int i = 0; i <= 240; ++i)
        hz.push_back (20.0 * std::pow (1000.0, i / 240.0));
    return hz;
}

Reporter::Reporter (SharedState& workshop) : shared (workshop), thread ([this] { run(); }) {}

Reporter::~Reporter()
{
    {
        const std::scoped_lock lock (mutex);
        quit = true;
    }
    signal.notify_all();
    thread.join();
}

void Reporter::wake()
{
    {
        const std::scoped_lock lock (mutex);
        woken = true;
    }
    signal.notify_all();
}

void Reporter::wantSweep (OptionId id, const std::string& knob)
{
    {
        const std::scoped_lock lock (mutex);
        wanted = { id, knob, wanted.number + 1 };
        swept.clear();
        woken = true;
    }
    signal.notify_all();
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

bool Reporter::waitFor (double seconds, const std::function<bool()>& holds)
{
    const auto until = std::chrono::steady_clock::now() + std::chrono::duration<double> (seconds);
    while (! holds())
    {
        if (std::chrono::steady_clock::now() >= until)
            return false;
        wake();
        std::this_thread::sleep_for (std::chrono::milliseconds (1));
    }
    return true;
}

bool Reporter::waitUntilIdle (OptionId id, double seconds)
{
    return waitFor (seconds, [&] { return ! isWorking (id); });
}

bool Reporter::waitUntilIdle (double seconds)
{
    std::optional<uint32_t> restsThen;
    return waitFor (seconds,
                    [&]
                    {
                        for (const OptionId id : versionIds)
                            if (isWorking (id))
                            {
                                restsThen.reset();
                                return false;
                            }
                        if (! restsThen)
                            restsThen = rests.load();
                        return rests.load() - *restsThen >= 2; // one of them began after the last was told
                    });
}

/** The chain after the jack at the take's rate, and the take behind it. */
void Reporter::followAfter (const Snapshot& snapshot, const TakeMaterial& take)
{
    const auto after = shared.after();
    // Driven by the take selected, whatever take an option is derived from: what follows the jack is the same for all.
    const double driveLufs = snapshot.materialFor (asRecorded).lufs;
    if (chainOf != nullptr && after == chainOf && take.audio == chainTake && driveLufs == heardSpec.driveLufs)
        return;
    chainOf = after;
    chainTake = take.audio;
    const double rate = chainTake ? chainTake->sampleRate : std::max (44100.0, shared.sampleRate.load());
    heardSpec = {};
    heardSpec.design.filter = ModalFilter::unity (rate);
    heardSpec.after = after->choice;
    heardSpec.impulse = after->impulse ? after->impulse->at (rate) : std::vector<float>();
    heardSpec.driveLufs = driveLufs;
    heardCurve = OutputChain (heardSpec.after, heardSpec.impulse, rate, driveLufs).curve();
    heardTakeLufs = take.lufs;
    if (chainTake && heardSpec.after.sound != OutputSound::none && chainTake->frames() < longestRendered * rate)
        heardTakeLufs = soundLevel (chainTake->channels, heardSpec, notLookedAt).lufs;
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

std::shared_ptr<Report> Reporter::compute (const Snapshot& snapshot, OptionId id, bool complete)
{
    auto report = std::make_shared<Report>();
    report->option = id;
    const CircuitConfig recordedConfig = snapshot.recordedConfig (id), optionConfig = configOf (snapshot, shared.live, id);
    const TakeMaterial& take = snapshot.materialFor (id);
    followAfter (snapshot, take);
    const GuitarResponse recorded = recordedConfig.response(), option = optionConfig.response();
    const TransferFunction transfer (recorded, option);
    report->setting = optionConfig.setting;
    report->silent = option.isSilent();
    report->curve.hz = curveHz();
    fillCurve (transfer, report->curve.hz, report->curve.changeDb, report->curve.circuitDb);
    report->figures.confidence = transfer.confidence();
    report->figures.silent = report->silent;
    report->matchDb = id == asRecorded ? 0.0 : matchDb (transfer, heardCurve.heard (take.spectrum));
    if (! complete)
        return report;

    const Band band = computeBand (recordedConfig, optionConfig, report->curve.hz);
    report->curve.lowDb = band.lowDb;
    report->curve.highDb = band.highDb;
    report->figures = computeFigures (recordedConfig, optionConfig, take.spectrum);

    const double rate = take.audio ? take.audio->sampleRate : std::max (44100.0, shared.sampleRate.load());
    const ModalFilter filter =
        id == asRecorded ? ModalFilter::unity (rate) : designFilter (transfer, *FilterDesigner::shared (rate));
    report->filterErrorDb = filter.worstErrorDb;
    if (take.audio && take.audio->frames() < longestRendered * rate)
    {
        RenderSpec spec = heardSpec;
        spec.design.filter = filter;
        const SoundLevel dry = soundLevel (take.audio->channels, spec.dry(), notLookedAt);
        report->heard = heardLevel (take.audio->channels, spec, heardTakeLufs);
        report->matchDb = id == asRecorded ? 0.0 : report->heard->matchDb;
        report->peakDb = inDb (dry.peak);
        if (std::isfinite (dry.lufs) && std::isfinite (take.lufs))
            report->figures.loudnessLu = dry.lufs - take.lufs;
    }
    report->figures.trust = judgeNoise (take.noise, recordedConfig, transfer);
    report->choice = choiceOf (snapshot, id);
    const double emf = humEmfFor (take.lufs, 0.0);
    report->coilHums = coilHums (option);
    report->otherCoils = otherCoils (optionConfig);
    report->humPeak = mostHum (option, heardCurve, 0.0, emf);
    report->buzzPeak = mostHum (option, heardCurve, 1.0, emf);
    report->hissPeak = 5.0 * report->figures.hissUv * hissScaleFor (take.lufs, 0.0)
                       * (heardCurve.gains.empty() ? 1.0 : *std::max_element (heardCurve.gains.begin(), heardCurve.gains.end()));
    report->complete = true;
    return report;
}

bool Reporter::doSweep()
{
    Wanted want;
    {
        const std::scoped_lock lock (mutex);
        want = wanted;
    }
    const auto snapshot = shared.snapshot();
    if (want.knob.empty() || (want.option != asRecorded && snapshot->option (want.option) == nullptr))
        return false;
    const uint32_t generation = shared.live.generation (want.option) + snapshot->revision * 1000003u;
    {
        const std::scoped_lock lock (mutex);
        if (sweptNumber == want.number && sweptSetting == generation)
            return false;
    }

    std::vector<SweepCurve> curves;
    CircuitConfig config = configOf (*snapshot, shared.live, want.option);
    const GuitarResponse recorded = snapshot->recordedConfig (want.option).response();
    if (config.setting.knobs.count (want.knob) != 0)
        for (double knob : { 8.0, 6.0, 4.0, 2.0, 0.0 })
        {
            config.setting.knobs[want.knob] = knob;
            const GuitarResponse response = config.response();
            SweepCurve curve { knob, curveHz(), {}, {} };
            fillCurve (TransferFunction (recorded, response), curve.hz, curve.changeDb, curve.circuitDb);
            curves.push_back (std::move (curve));
        }
    {
        const std::scoped_lock lock (mutex);
        sweptNumber = want.number;
        sweptSetting = generation;
        if (wanted.number == want.number)
            swept = std::move (curves);
    }
    shared.reportsRevision.fetch_add (1);
    return true;
}

bool Reporter::doNext()
{
    const auto snapshot = shared.snapshot();
    std::vector<OptionId> order { shared.heard.load() };
    for (const OptionId id : versionIds)
        if (id != order.front())
            order.push_back (id);

    for (const bool complete : { false, true })
        for (OptionId id : order)
        {
            if (id != asRecorded && snapshot->option (id) == nullptr)
                continue;
            const SharedState::Origin now = shared.origin (id);
            if (now.snapshot != snapshot->revision)
                return true; // the job has changed meanwhile
            const auto fresh = shared.freshReport (id);
            if (fresh != nullptr && (fresh->complete || ! complete))
                continue;

            std::shared_ptr<Report> report;
            try
            {
                report = compute (*snapshot, id, complete);
            }
            catch (const std::exception&)
            {
                report = std::make_shared<Report>();
                report->option = id;
                report->silent = report->figures.silent = report->complete = true;
                report->curve.hz = curveHz();
                report->curve.changeDb.assign (report->curve.hz.size(), silentDb);
                report->curve.circuitDb = report->curve.changeDb;
            }
            shared.put (std::move (report), now);
            return true;
        }
    return false;
}

void Reporter::run()
{
    for (;;)
    {
        {
            std::unique_lock lock (mutex);
            if (quit)
                return;
        }
        bool busy = false;
        try
        {
            busy = doSweep() || doNext();
            keepHeadroom();
        }
        catch (const std::exception&)
        {
            // A sweep of a circuit without a solution: nothing to draw.
        }
        if (busy)
            continue;
        rests.fetch_add (1);
        std::unique_lock lock (mutex);
        signal.wait_for (lock, std::chrono::milliseconds (30), [this] { return quit || woken; });
        woken = false;
    }
}
}
