#include "cli/CompareTable.h"

#include "job/Quantity.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace coldiron::cli
{
namespace
{
constexpr int labelWidth = 34, cellWidth = 12;

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
    if (! reading.words().empty())
        return reading.isActive ? "buffer" : reading.words();
    return reading.ohms >= 1e6 ? format ("%.2f M", reading.ohms / 1e6) : format ("%.2f k", reading.ohms / 1e3);
}

const VolumeFigures* heardVolume (const Compared& c)
{
    for (const auto& volume : c.figures.volumes)
        if (volume.heard)
            return &volume;
    return nullptr;
}

std::string trebleCell (const Compared& c, size_t step)
{
    const auto* volume = heardVolume (c);
    return c.figures.silent || volume == nullptr || step >= volume->steps.size() ? "-" : format ("%.1f", volume->steps[step].trebleDb);
}

std::string numbers (const std::vector<Compared>& all)
{
    std::string table = row (all, "", [] (const Compared& c) { return c.letter; });
    table += row (all, "level [dB]", [] (const Compared& c) { return unlessSilent (c, format ("%+.1f", c.figures.levelDb)); });
    table += row (all, "loudness [LU]", [] (const Compared& c)
                  { return c.figures.loudnessLu ? format ("%+.1f", *c.figures.loudnessLu) : std::string (c.figures.silent ? "silent" : "-"); });
    table += row (all, "  plus/minus [LU]", [] (const Compared& c)
                  { return c.letter == "now" ? std::string ("-") : format ("%.1f", c.figures.sureness.loudnessDb()); });
    table += row (all, "resonance [Hz]", [] (const Compared& c)
                  { return unlessSilent (c, c.figures.peakHz ? format ("%.0f", *c.figures.peakHz) : "none"); });
    table += row (all, "  its height [dB re 100 Hz]", [] (const Compared& c)
                  { return unlessSilent (c, c.figures.peakHz ? format ("%.1f", c.figures.peakDb) : "-"); });
    table += row (all, "-3 dB point [Hz]", [] (const Compared& c)
                  { return unlessSilent (c, c.figures.cornerHz ? format ("%.0f", *c.figures.cornerHz) : "> 40000"); });
    constexpr int knobs[] = { 10, 8, 6, 4, 2 };
    for (size_t i = 0; i < 5; ++i)
        table += row (all, (i == 0 ? "treble, volume at 10 [dB]" : format ("        volume at %d", knobs[i])),
                      [i] (const Compared& c) { return trebleCell (c, i); });
    table += row (all, "hum at the jack [dB re now]", [] (const Compared& c)
                  { return c.figures.silent ? "silent" : c.figures.humByMismatch ? "see below" : format ("%+.1f", c.figures.humJackDb); });
    table += row (all, "hum against playing [dB re now]", [] (const Compared& c)
                  { return c.figures.silent ? "silent" : c.figures.humByMismatch ? "see below" : format ("%+.1f", c.figures.humAgainstPlayingDb); });
    table += row (all, "hiss [uV, 20 Hz to 20 kHz]", [] (const Compared& c) { return format ("%.2f", c.figures.hissUv); });
    table += row (all, "output impedance at 1 kHz [kohm]", [] (const Compared& c) { return format ("%.2f", c.figures.outputOhms / 1e3); });
    table += row (all, "a metre more of cable [dB at 5k]", [] (const Compared& c) { return unlessSilent (c, format ("%.2f", c.figures.dbPerMetre)); });
    table += row (all, "ohms at the jack, knobs at 10", [] (const Compared& c) { return ohmCell (c.ohms); });
    if (std::any_of (all.begin(), all.end(), [] (const Compared& c) { return c.take > 0; }))
        table += row (all, "level and curve against take", [] (const Compared& c) { return format ("%d", c.take + 1); });
    if (std::any_of (all.begin(), all.end(), [] (const Compared& c) { return c.figures.trust.trustedToHz.has_value(); }))
        table += row (all, "to be trusted up to [Hz]", [] (const Compared& c)
                      { return c.figures.trust.trustedToHz ? format ("%.0f", *c.figures.trust.trustedToHz) : std::string ("all"); });
    table += row (all, "how sure: the playing", [] (const Compared& c) { return c.figures.sureness.playingWord(); });
    table += row (all, "          the guitar", [] (const Compared& c) { return c.figures.sureness.guitarWord(); });
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
    return counted == 0 ? "" : format ("band +/-%.1f dB on average from 100 Hz to 5 kHz, widest +/-%.1f dB at %.0f Hz", sum / counted, widest, at);
}

std::string words (const Compared& c)
{
    const auto& f = c.figures;
    std::string text = c.letter + "  " + c.name + "\n";
    if (f.silent)
        return text + "   silent at this setting\n";
    if (! c.stillAtRest.empty())
        text += "   sounds like as recorded until " + listed (c.stillAtRest) + (c.stillAtRest.size() == 1 ? " is" : " are") + " pulled or thrown\n";
    if (c.letter != "now")
    {
        const double change = f.loudnessLu.value_or (f.levelDb);
        text += format ("   level: %s; %+.0f dB, +/-%.1f\n", levelWords (change).c_str(), change, f.sureness.loudnessDb());
    }
    text += "   hum: " + f.humWords + (f.humByMismatch && f.humOneCoilDb < -20.0 ? " (for coils of nearly equal turns)" : "") + "\n";
    for (const auto& choice : c.otherCoils)
        text += "   hum: " + choice.words() + "\n";
    for (const auto& volume : f.volumes)
    {
        if (volume.mutesOthers)
            text += "   " + volume.knob + (*volume.mutesOthers ? " at 0 mutes the other pickup too" : " at 0 leaves the other pickup sounding") + "\n";
        if (volume.heard && volume.steps.size() > 2)
            text += format ("   %s at 6: %+.1f dB in level, treble %+.1f dB against 10\n", volume.knob.c_str(), volume.steps[2].levelDb,
                            volume.steps[2].trebleDb - volume.steps[0].trebleDb);
    }
    if (c.letter != "now")
    {
        text += "   how sure: " + f.sureness.playingWord() + ", " + f.sureness.guitarWord() + "; " + bandWords (c.band) + ".\n";
        if (! c.choice.words.empty())
            text += "   " + c.choice.words + (c.choice.isOwn ? " (as the option asks)" : "") + (c.choice.suggestion.empty() ? "" : "; " + c.choice.suggestion) + "\n";
        if (f.trust.trustedToHz)
            text += "   noise: " + f.trust.words() + "\n";
    }
    return text;
}
}

namespace
{
std::string takeWords (const std::vector<TakeRemarks>& takes)
{
    std::string text;
    for (size_t t = 0; t < takes.size(); ++t)
    {
        const auto& take = takes[t];
        text += format ("take %zu  %s: ", t + 1, take.name.c_str());
        text += take.noise.isKnown ? format ("noise in its pauses %.0f dB under the playing\n", -take.noise.noiseDb())
                : take.noise.isSilent ? "its pauses are exact silence, so its noise cannot be told\n" : "no pause, so its noise cannot be told; leave a few seconds of nothing\n";
        for (const auto& fault : take.faults)
            text += "   " + fault.words + ". " + fault.cost + "\n";
    }
    return text.empty() ? text : text + "\n";
}
}

namespace
{
/** What the marks of this table mean, each pair of them once. */
std::string sureLegend (const std::vector<Compared>& all)
{
    std::string text;
    std::set<std::string> told;
    for (const auto& compared : all)
    {
        const auto& sure = compared.figures.sureness;
        const auto marks = sure.playingWord() + ", " + sure.guitarWord();
        if (compared.letter != "now" && ! compared.figures.silent && told.insert (marks).second)
            text += "   " + marks + ": " + sure.explanation() + "\n";
    }
    return text.empty() ? text : "How sure, in words\n" + text + "\n";
}
}

std::string compareTable (const Job& job, const std::vector<Compared>& all, const std::vector<TakeRemarks>& takes)
{
    std::string text = job.title + "\n";
    if (job.takes.empty())
        text += "No take: levels are over 80 Hz to 5 kHz, the same in every octave.\n";
    text += "\n" + numbers (all) + "\n";
    for (const auto& compared : all)
        text += words (compared) + "\n";
    text += sureLegend (all) + takeWords (takes);
    for (const auto& result : job.blind)
        text += "blind" + (result.date.empty() ? "" : ", " + result.date) + ": " + result.words() + "\n";
    return text + "Treble is 5 kHz re 500 Hz. Magnetic hum only; touch and shield noise is not wiring's to cure.\n";
}
}
