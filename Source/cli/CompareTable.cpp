#include "cli/CompareTable.h"

#include "files/Quantity.h"
#include "wording/ConfidenceWords.h"
#include "wording/FigureWords.h"
#include "wording/ListeningWords.h"
#include "wording/OhmWords.h"
#include "wording/TakeWords.h"

#include <algorithm>
#include <cmath>

namespace coldiron::cli
{
namespace
{
constexpr int labelWidth = 36, cellWidth = 12;

using Cell = std::function<std::string (const Compared&)>;

std::string row (const std::vector<Compared>& columns, const std::string& label, const Cell& cell)
{
    std::string line = format ("%-*s", labelWidth, label.c_str());
    for (const auto& column : columns)
        line += format ("%*s", cellWidth, cell (column).c_str());
    return line + "\n";
}

std::string unlessSilent (const Compared& c, const std::string& text) { return c.figures.silent ? "silent" : text; }

std::string ohmCell (const OhmReading& reading)
{
    if (! reading.isNumber())
        return reading.kind == OhmReading::Kind::buffered ? "buffer" : wording::noOhms (reading);
    return reading.ohms >= 1e6 ? format ("%.2f M", reading.ohms / 1e6) : format ("%.2f k", reading.ohms / 1e3);
}

/** The volumes that are heard in any column, by name, in their order. */
std::vector<std::string> volumesHeard (const std::vector<Compared>& all)
{
    std::vector<std::string> names;
    for (const auto& c : all)
        for (const auto& volume : c.figures.volumes)
            if (volume.heard && std::find (names.begin(), names.end(), volume.knob) == names.end())
                names.push_back (volume.knob);
    return names;
}

std::string signedCell (const std::optional<double>& db) { return db ? format ("%+.1f", *db) : std::string ("-"); }

/** One step of one volume in a column; "-" where it is not heard there. */
std::string stepCell (const Compared& c, const std::string& knob, size_t step)
{
    for (const auto& volume : c.figures.volumes)
        if (volume.knob == knob && volume.heard && ! c.figures.silent && step < volume.steps.size())
            return signedCell (volume.steps[step].clarityDb);
    return "-";
}

std::string peakCells (const Compared& c, bool height)
{
    const auto& r = c.figures.resonance;
    if (! height)
        return unlessSilent (c, r.peakHz ? format ("%.0f", *r.peakHz) : "none");
    return unlessSilent (c, signedCell (r.peakDb));
}

std::string cornerCell (const Compared& c)
{
    const auto& r = c.figures.resonance;
    return unlessSilent (c, r.cornerHz ? format ("%.0f", *r.cornerHz) : r.passbandDb ? "> 40000" : "-");
}

/** "~" where most of it is the assumed mismatch. */
std::string humCell (const Compared& c, double db)
{
    return unlessSilent (c, (c.figures.hum.assumed ? "~" : "") + format ("%+.0f", db));
}

std::string numbers (const std::vector<Compared>& all)
{
    std::string table = row (all, "", [] (const Compared& c) { return c.letter; });
    table += row (all, "level [dB]", [] (const Compared& c) { return unlessSilent (c, format ("%+.1f", c.figures.levelDb)); });
    table += row (all, "loudness [LU]",
                  [] (const Compared& c) {
                      return c.figures.loudnessLu ? format ("%+.1f", *c.figures.loudnessLu)
                                                  : std::string (c.figures.silent ? "silent" : "-");
                  });
    table += row (all, "  plus/minus [LU]",
                  [] (const Compared& c)
                  { return c.letter == "now" ? std::string ("-") : format ("%.1f", c.figures.confidence.loudnessDb()); });
    table += row (all, "resonance [Hz]", [] (const Compared& c) { return peakCells (c, false); });
    table += row (all, "  peak above the low end [dB]", [] (const Compared& c) { return peakCells (c, true); });
    table += row (all, "-3 dB point [Hz]", cornerCell);
    table +=
        row (all, "clarity [dB re now]", [] (const Compared& c) { return unlessSilent (c, signedCell (c.figures.clarityDb)); });
    constexpr int knobs[] = { 10, 8, 6, 4, 2 };
    for (const auto& knob : volumesHeard (all))
        for (size_t i = 1; i < 5; ++i)
            table += row (all,
                          (i == 1 ? "  " + knob + format (" at %d [dB re 10]", knobs[i])
                                  : std::string (knob.size() + 2, ' ') + format (" at %d", knobs[i])),
                          [&knob, i] (const Compared& c) { return stepCell (c, knob, i); });
    table +=
        row (all, "hum at the jack [dB re single coil]", [] (const Compared& c) { return humCell (c, c.figures.hum.jackDb); });
    table += row (all, "hum against playing [the same]", [] (const Compared& c) { return humCell (c, c.figures.hum.playingDb); });
    table += row (all, "hiss [uV, 20 Hz to 20 kHz]", [] (const Compared& c) { return format ("%.2f", c.figures.hissUv); });
    table += row (all, "output impedance at 1 kHz [kohm]",
                  [] (const Compared& c) { return format ("%.2f", c.figures.outputOhms / 1e3); });
    table += row (all, "a metre more of cable [dB at 5k]",
                  [] (const Compared& c) { return unlessSilent (c, format ("%.2f", c.figures.dbPerMetre)); });
    table += row (all, "ohms at the jack, knobs at 10", [] (const Compared& c) { return ohmCell (c.ohms); });
    if (std::any_of (all.begin(), all.end(), [] (const Compared& c) { return c.take > 0; }))
        table += row (all, "level and curve against take", [] (const Compared& c) { return format ("%d", c.take + 1); });
    if (std::any_of (all.begin(), all.end(), [] (const Compared& c) { return c.figures.trust.trustedToHz.has_value(); }))
        table +=
            row (all, "to be trusted up to [Hz]",
                 [] (const Compared& c)
                 { return c.figures.trust.trustedToHz ? format ("%.0f", *c.figures.trust.trustedToHz) : std::string ("all"); });
    table +=
        row (all, "how sure: the playing", [] (const Compared& c) { return wording::similarity (c.figures.confidence.playing); });
    table +=
        row (all, "          the guitar", [] (const Compared& c) { return wording::provenance (c.figures.confidence.guitar); });
    return table;
}

std::string bandWords (const Band& band)
{
    double sum = 0.0, widest = 0.0, at = 0.0;
    int counted = 0;
    for (size_t i = 0; i < band.hz.size(); ++i)
        if (band.hz[i] >= 90.0 && band.hz[i] <= 5500.0)
        {
            const double half = 0.5 * (band.highDb[i] - band.lowDb[i]);
            sum += half;
            ++counted;
            if (half > widest)
            {
                widest = half;
                at = band.hz[i];
            }
        }
    if (widest < 0.05)
        return "no band: whatever the parts are, it stays the same";
    return counted == 0 ? ""
                        : format ("band +/-%.1f dB on average from 100 Hz to 5 kHz, widest +/-%.1f dB at %.0f Hz", sum / counted,
                                  widest, at);
}

std::string words (const Compared& c)
{
    const auto& f = c.figures;
    std::string text = c.letter + "  " + c.name + "\n";
    if (f.silent)
        return text + "   silent at this setting\n";
    if (! c.stillAtRest.empty())
        text += "   sounds like as recorded until " + listed (c.stillAtRest) + (c.stillAtRest.size() == 1 ? " is" : " are")
                + " pulled or thrown\n";
    if (c.letter != "now")
    {
        const double change = f.loudnessLu.value_or (f.levelDb);
        text += format ("   level: %s; %+.0f dB, +/-%.1f\n", wording::levelChange (change).c_str(), change,
                        f.confidence.loudnessDb());
    }
    text += "   hum: " + wording::hum (f)
            + (f.hum.assumed ? format (", about %.0f dB re a single coil at the jack, coils 2 %% unlike", f.hum.jackDb) : "")
            + "\n";
    for (const auto& choice : c.otherCoils)
        text += "   hum: " + wording::otherCoil (choice) + "\n";
    for (const auto& volume : f.volumes)
        if (volume.mutesOthers)
            text += "   " + wording::mutesOthers (volume) + "\n";
    if (c.letter != "now")
    {
        text += "   how sure: " + wording::similarity (f.confidence.playing) + ", " + wording::provenance (f.confidence.guitar)
                + "; " + bandWords (c.band) + ".\n";
        const auto surer = wording::surerTake (c.choice);
        if (c.choice.take >= 0)
            text += "   " + wording::derivedFrom (c.choice) + (c.choice.isOwn ? " (as the option asks)" : "")
                    + (surer.empty() ? "" : "; " + surer) + "\n";
        if (f.trust.trustedToHz)
            text += "   noise: " + wording::noiseTrust (f.trust) + "\n";
    }
    return text;
}
}

namespace
{
/** What the words of the table mean, once for all columns. */
std::string legend (const std::vector<Compared>& all)
{
    const auto bands = clarityBands (all.front().strings);
    std::string text = format (
        "Clarity: power of the playing in %.3g to %.3g kHz over that in %.0f to %.0f Hz; 1 dB is heard. Below 0 is duller.\n",
        bands.clearLow / 1e3, bands.clearHigh / 1e3, bands.fullLow, bands.fullHigh);
    text += "Hum: magnetic, against a single coil of 8000 turns; ~ where most of it is what coils 2 % unlike leave.\n"
            "   Buzz that falls or rises when the strings are touched is not wiring's to cure, but for a broken string ground.\n";
    std::vector<std::string> said;
    for (const auto& c : all)
        if (c.letter != "now" && ! c.figures.silent)
            for (const auto& [mark, sentence] : wording::markMeanings (c.figures.confidence))
                if (const auto line = mark + ": " + sentence; std::find (said.begin(), said.end(), line) == said.end())
                    said.push_back (line);
    for (const auto& meaning : said)
        text += meaning + "\n";
    return text;
}

std::string takeWords (const std::vector<TakeRemarks>& takes)
{
    std::string text;
    for (size_t t = 0; t < takes.size(); ++t)
    {
        const auto& take = takes[t];
        text += format ("take %zu  %s: ", t + 1, take.name.c_str());
        text += take.noise.isKnown    ? format ("noise in its pauses %.0f dB under the playing\n", -take.noise.noiseDb())
                : take.noise.isSilent ? "its pauses are exact silence, so its noise cannot be told\n"
                                      : "no pause, so its noise cannot be told; leave a few seconds of nothing\n";
        for (const auto& fault : take.faults)
            text += "   " + wording::takeFault (fault) + ". " + wording::takeFaultCost (fault) + "\n";
    }
    return text.empty() ? text : text + "\n";
}
}

std::string compareTable (const Job& job, const std::vector<Compared>& all, const std::vector<TakeRemarks>& takes)
{
    std::string text = job.title + "\n";
    if (job.takes.empty())
        text += "No take: levels are over 80 Hz to 5 kHz, the same in every octave; clarity is that of pink strings.\n";
    text += "\n" + numbers (all) + "\n";
    for (const auto& compared : all)
        text += words (compared) + "\n";
    text += takeWords (takes);
    for (const auto& result : job.blind)
        text += "blind" + (result.date.empty() ? "" : ", " + result.date) + ": " + wording::blindResult (result) + "\n";
    return text + legend (all);
}
}
