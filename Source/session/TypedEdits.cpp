// What a typed value does to the job: ranges in words, then the edit.

#include "analysis/JackReading.h"
#include "files/Quantity.h"
#include "job/Readers.h"
#include "session/GuitarEdits.h"
#include "session/GuitarValues.h"
#include "session/JobEditor.h"
#include "session/TypedOhms.h"
#include "wording/OhmWords.h"

#include <algorithm>

namespace coldiron
{
using Kind = GuitarValue::Kind;

namespace
{
struct Range
{
    const char* key;
    const char* unit;
    double low, high;
    const char* example;
};

/** The ranges of the readers of jobs and guitars. */
Range rangeOf (Kind kind)
{
    switch (kind)
    {
    case Kind::pickupOhms: return { "", "ohm", 10.0, 1e6, "8.1k" };
    case Kind::jackOhms: return { "", "ohm", 1.0, 1e8, "8.1k" };
    case Kind::pot: return { "pot", "ohm", 100.0, 1e8, "500k" };
    case Kind::capacitor: return { "capacitor", "F", 1e-13, 1e-3, "22n" };
    case Kind::resistor: return { "resistor", "ohm", 1e-3, 1e10, "150k" };
    case Kind::inductor: return { "inductor", "H", 1e-6, 1e3, "1.5" };
    case Kind::bridgeMm: return { "bridge_mm", "mm", 1.0, 2000.0, "44" };
    case Kind::scaleMm: return { "scale_mm", "mm", 100.0, 3000.0, "648" };
    case Kind::cable: return { "cable", "F", 0.0, 1e-6, "500p" };
    case Kind::inputOhms: return { "resistance", "ohm", 100.0, 1e12, "1M" };
    case Kind::inputFarads: return { "capacitance", "F", 0.0, 1e-6, "20p" };
    }
    return {};
}

std::string outside (const Range& range, double value)
{
    const std::string unit = std::string (" ") + range.unit;
    std::string text =
        quantityText (value) + unit + " is outside " + quantityText (range.low) + " to " + quantityText (range.high) + unit + ".";
    return text + " Write it like " + range.example + ".";
}

/** Empty: nothing was said of the taper. @returns false for a word that is none */
bool taperOf (const JobEditor& editor, std::string words, const std::string& now, std::string& taper)
{
    words.erase (std::remove (words.begin(), words.end(), ' '), words.end());
    taper = words;
    if (words.empty())
        return true;
    if (words == "lin")
        taper = "linear";
    else if (words == "log" || words == "audio")
        taper = now.rfind ("log", 0) == 0 ? now : "log-15";
    else if (words == "revlog" || words == "reverse-log" || words == "rev" || words == "reverse")
        taper = now.rfind ("reverse-log", 0) == 0 ? now : "reverse-log-15";
    const auto names = editor.presets().list ("tapers");
    return taperByName (taper).has_value() || std::find (names.begin(), names.end(), taper) != names.end();
}

JobTree quantityTree (double value) { return JobTree (quantityText (value)); }

/** Keys left out of a load of its own are not those of the recording: it is written whole. */
JobEdit loadEdit (const JobEditor& editor, const GuitarValue& value, double number)
{
    const auto job = editor.job();
    const bool listening = value.side == GuitarValue::Side::listening;
    Load load = listening ? job->listening : job->recording;
    (value.kind == Kind::cable ? load.cableFarads : value.kind == Kind::inputOhms ? load.inputOhms : load.inputFarads) = number;
    JobTree tree;
    tree["cable"] = quantityTree (load.cableFarads);
    tree["input"]["resistance"] = quantityTree (load.inputOhms);
    tree["input"]["capacitance"] = quantityTree (load.inputFarads);
    return { listening ? "/listening" : "/recording",
             tree.dump(),
             (listening ? "Listening " : "Recording ") + std::string (value.kind == Kind::cable ? "cable" : "input"),
             {},
             {} };
}

/** The pots across the jack are taken out first. */
JobEdit jackEdit (const JobEditor& editor, const std::string& pickup, double ohms)
{
    const auto job = editor.job();
    const auto setting = aloneAtJack (job->guitar.harness, pickup);
    if (! setting)
        return refused ("No switch position leaves this pickup alone: read it at its own leads.");
    const auto reading = leadsFromJack (job->guitar.harness, *setting, pickup, ohms);
    if (reading.refusal != LeadsReading::Refusal::none)
        return refused (wording::jackRefusal (reading, pickup));
    auto edit = ohmsEdit (editor, pickup, reading.ohms);
    const auto shown = [] (double value) { return quantityText (std::round (value)); };
    edit.note = shown (reading.ohms) + " ohm at its leads; pots within their tolerance leave it between "
                + shown (reading.lowOhms) + " and " + shown (reading.highOhms) + ".";
    return edit;
}

/** "686 to 648" spreads evenly over the strings. */
JobEdit scaleEdit (const JobEditor& editor, const std::string& typed)
{
    const auto range = rangeOf (Kind::scaleMm);
    auto dividing = typed.find ("to");
    const auto low = typedQuantity (typed.substr (0, dividing));
    const auto high = dividing == std::string::npos ? low : typedQuantity (typed.substr (dividing + 2));
    if (! low || ! high)
        return refused ("\"" + typed + "\" is no length. Write it like 648, or low to high like 686 to 648.");
    for (const double mm : { *low, *high })
        if (mm < range.low || mm > range.high)
            return refused (outside (range, mm));
    const auto count = editor.job()->guitar.strings.size();
    JobTree tree = *low;
    if (*high != *low && count > 1)
    {
        tree = JobTree::array();
        for (size_t i = 0; i < count; ++i)
            tree.push_back (
                std::round ((*low + (*high - *low) * static_cast<double> (i) / static_cast<double> (count - 1)) * 10.0) / 10.0);
    }
    return guitarEdit (editor.text(), { { "/scale_mm", tree } }, "Scale");
}
}

JobEdit typedEdit (const JobEditor& editor, const GuitarValue& value, const std::string& typedRaw)
{
    std::string typed = typedRaw;
    typed.erase (0, std::min (typed.size(), typed.find_first_not_of (" \t")));
    if (typed.empty())
        return refused (typingHint (value) + ".");
    if (value.kind == Kind::scaleMm)
        return scaleEdit (editor, typed);
    const auto range = rangeOf (value.kind);
    std::string taper;
    auto number = typedQuantity (typed);
    if (value.kind == Kind::pot && ! number)
    {
        // "500 kohm log-15": the taper begins at one of the spaces; or it stands alone.
        for (size_t at = typed.find (' '); at != std::string::npos && ! number; at = typed.find (' ', at + 1))
            if (taperOf (editor, typed.substr (at), value.taper, taper))
                number = typedQuantity (typed.substr (0, at));
        if (! number && taperOf (editor, typed, value.taper, taper))
            number = value.number;
        if (const auto space = typed.find (' ');
            ! number && space != std::string::npos && typedQuantity (typed.substr (0, space)))
            return refused ("There is no taper \"" + typed.substr (space + 1) + "\". Write log, linear or reverse-log.");
    }
    if (! number)
        return refused ("\"" + typed + "\" is no value. Write it like " + range.example + ".");
    if (*number < range.low || *number > range.high)
        return refused (outside (range, *number));
    const std::string at = "/parts/" + value.part + "/";
    switch (value.kind)
    {
    case Kind::pickupOhms: return ohmsEdit (editor, value.part, *number);
    case Kind::jackOhms: return jackEdit (editor, value.part, *number);
    case Kind::cable:
    case Kind::inputOhms:
    case Kind::inputFarads: return loadEdit (editor, value, *number);
    case Kind::bridgeMm:
        for (const auto& string : editor.job()->guitar.strings)
            if (*number >= string.scaleMm)
                return refused ("The scale ends at " + quantityText (string.scaleMm)
                                + " mm. Measure from the bridge to the pickup's middle.");
        return guitarEdit (editor.text(), { { at + "bridge_mm", *number } }, value.part + " distance");
    case Kind::pot:
    {
        std::vector<std::pair<std::string, JobTree>> changes { { at + range.key, quantityTree (*number) } };
        if (! taper.empty())
            changes.push_back ({ at + "taper", taper });
        return guitarEdit (editor.text(), changes, value.part + " value");
    }
    default: return guitarEdit (editor.text(), { { at + range.key, quantityTree (*number) } }, value.part + " value");
    }
}
}
