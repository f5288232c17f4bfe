// Bench readings: plain rows of commas, read into what a fit needs.

#include "job/Readings.h"

#include "files/Limits.h"
#include "files/Quantity.h"
#include "job/Readers.h"

#include <algorithm>
#include <map>
#include <sstream>

namespace coldiron
{
namespace
{
constexpr size_t mostReadings = 4000;

std::string trimmed (const std::string& text)
{
    const auto first = text.find_first_not_of (" \t\r"), last = text.find_last_not_of (" \t\r");
    return first == std::string::npos ? "" : text.substr (first, last - first + 1);
}

/** One row's columns, asked for in turn; every fault is noted, so a row reports all of its own. */
class Row
{
public:
    Row (const std::string& text, const std::string& f, int l, Diagnostics& list) : file (f), line (l), diagnostics (list)
    {
        std::stringstream cells (text);
        for (std::string cell; std::getline (cells, cell, ',');)
            columns.push_back (trimmed (cell));
    }

    const std::string& key() const { return columns.front(); }
    void fault (const std::string& message)
    {
        addDiagnostic (diagnostics, file, line, key() + ": " + message);
        sound = false;
    }

    std::string text (const std::string& what)
    {
        if (next < columns.size() && ! columns[next].empty())
            return columns[next++];
        ++next;
        fault ("there is no " + what + "; expected " + form);
        return {};
    }

    std::string textOrNone() { return next < columns.size() ? columns[next++] : ""; }

    /** Empty or left out: nothing. */
    std::optional<double> maybe (const std::string& what, const std::string& unit, double low, double high)
    {
        const auto cell = next < columns.size() ? columns[next] : "";
        ++next;
        if (cell.empty())
            return std::nullopt;
        const auto value = parseQuantity (cell);
        if (! value)
            fault (what + ": found \"" + cell + "\", expected a number in " + unit
                   + ", plain or with a prefix and no unit, like 8.1k, 470p or 4.3");
        else if (! (*value >= low && *value <= high))
            fault (what + ": found " + cell + ", expected " + quantityText (low) + " to " + quantityText (high) + " " + unit
                   + hint (what, *value));
        else
            return value;
        return std::nullopt;
    }

    double needed (const std::string& what, const std::string& unit, double low, double high)
    {
        if (next >= columns.size() || columns[next].empty())
        {
            ++next;
            fault ("there is no " + what + "; expected " + form);
            return low;
        }
        return maybe (what, unit, low, high).value_or (low);
    }

    std::string word (const std::string& what, const std::vector<std::string>& allowed)
    {
        const auto found = text (what);
        if (! found.empty() && std::find (allowed.begin(), allowed.end(), found) == allowed.end())
            fault (what + ": found \"" + found + "\", expected one of " + listed (allowed));
        return found;
    }

    /** @returns whether the row was whole and right */
    bool finish()
    {
        for (size_t i = next; i < columns.size(); ++i)
            if (! columns[i].empty())
            {
                fault ("\"" + columns[i] + "\" is one column too many; expected " + form);
                break;
            }
        return sound;
    }

    std::string form; ///< what the row should look like

private:
    std::vector<std::string> columns;
    std::string file;
    int line;
    Diagnostics& diagnostics;
    size_t next = 1;
    bool sound = true;

    static std::string hint (const std::string& what, double value)
    {
        return what == "inductance" && value < 0.0
                   ? "; above resonance a meter shows a capacitor: write the reading as an impedance row"
                   : "";
    }
};

class ReadingsReader
{
public:
    ReadingsReader (const std::string& name, Diagnostics& list) : file (name), diagnostics (list) {}

    ReadingsFile result;
    int presetLine = 0;

    void read (const std::string& text)
    {
        if (trimmed (text).empty())
            return addDiagnostic (diagnostics, file, 0, "the file is empty; begin with a row like pickup,humbucker-moderate");
        if (text.find ('\0') != std::string::npos)
            return addDiagnostic (diagnostics, file, 0, "this is no text; save the table of readings as CSV");
        const auto before = diagnostics.raised();
        std::stringstream lines (text);
        int number = 0;
        for (std::string line; std::getline (lines, line);)
        {
            if (++number == 1 && line.rfind ("\xef\xbb\xbf", 0) == 0)
                line.erase (0, 3);
            line = trimmed (line.substr (0, line.find ('#')));
            if (line.empty())
                continue;
            Row row (line, file, number, diagnostics);
            take (row, number);
            if (diagnostics.isFull())
                return;
            if (result.readings.readings.size() > mostReadings)
            {
                addDiagnostic (diagnostics, file, number,
                               "more than " + std::to_string (mostReadings) + " readings; thin the sweep out");
                return;
            }
        }
        if (diagnostics.raised() > before) // whoever mends those rows learns then whether more are missing
            return;
        if (presetLine == 0)
            addDiagnostic (diagnostics, file, 0,
                           "no row says which generic pickup it is like; begin with one like pickup,humbucker-moderate");
        if (result.readings.readings.empty())
            addDiagnostic (diagnostics, file, 0, "there are no readings; add at least the DC resistance, like dcr,8.1k");
    }

private:
    std::string file;
    Diagnostics& diagnostics;
    std::map<std::string, int> once;

    template <typename T>
    void keep (Row& row, const T& kind, int line)
    {
        if (row.finish())
            result.readings.readings.push_back ({ kind, line });
    }

    void onlyOnce (Row& row, int line)
    {
        if (const auto [place, isNew] = once.emplace (row.key(), line); ! isNew)
            row.fault ("was given in line " + std::to_string (place->second) + " already; keep one of them");
    }

    double hertz (Row& row) { return row.needed ("frequency", "Hz", 1.0, 1e6); }
    double added (Row& row) { return row.maybe ("added capacitor", "F", 0.0, 1e-5).value_or (0.0); }

    void take (Row& row, int line)
    {
        static const std::vector<std::pair<std::string, void (ReadingsReader::*) (Row&, int)>> kinds {
            { "pickup", &ReadingsReader::pickup },
            { "name", &ReadingsReader::name },
            { "temperature", &ReadingsReader::temperature },
            { "accuracy", &ReadingsReader::accuracy },
            { "dcr", &ReadingsReader::dcr },
            { "lcr", &ReadingsReader::lcr },
            { "impedance", &ReadingsReader::impedance },
            { "resonance", &ReadingsReader::resonance },
            { "load", &ReadingsReader::load },
            { "response", &ReadingsReader::response }
        };
        std::vector<std::string> known;
        for (const auto& [key, reader] : kinds)
        {
            if (key == row.key())
                return (this->*reader) (row, line);
            known.push_back (key);
        }
        const auto near = nearest (row.key(), known);
        addDiagnostic (diagnostics, file, line,
                       "\"" + row.key() + "\" is no kind of row" + (near.empty() ? "" : "; did you mean \"" + near + "\"?")
                           + " A row begins with one of " + listed (known));
    }

    void pickup (Row& row, int line)
    {
        row.form = "pickup,NAME";
        onlyOnce (row, line);
        const auto preset = row.text ("name of the generic pickup");
        presetLine = line;
        if (row.finish())
            result.preset = preset;
    }

    void name (Row& row, int line)
    {
        row.form = "name,TEXT without a comma";
        onlyOnce (row, line);
        result.name = row.text ("name");
        if (std::any_of (result.name.begin(), result.name.end(), [] (unsigned char c) { return c < 32; }))
            row.fault ("a name has no control characters");
        row.finish();
    }

    void temperature (Row& row, int line)
    {
        row.form = "temperature,22 (degrees Celsius)";
        onlyOnce (row, line);
        result.readings.celsius = row.needed ("temperature", "degrees Celsius", -20.0, 60.0);
        row.finish();
    }

    void accuracy (Row& row, int)
    {
        row.form = "accuracy,KIND,VALUE like accuracy,lcr,1 (percent; degrees and dB for degrees and response)";
        auto& all = result.readings.accuracy;
        const std::map<std::string, std::pair<double*, double>> kinds { { "dcr", { &all.dcr, 0.01 } },
                                                                        { "lcr", { &all.inductance, 0.01 } },
                                                                        { "lcr-ohms", { &all.meterOhms, 0.01 } },
                                                                        { "impedance", { &all.impedance, 0.01 } },
                                                                        { "degrees", { &all.degrees, 1.0 } },
                                                                        { "resonance", { &all.resonance, 0.01 } },
                                                                        { "response", { &all.responseDb, 1.0 } } };
        std::vector<std::string> names;
        for (const auto& [kind, place] : kinds)
            names.push_back (kind);
        const auto kind = row.word ("kind of reading", names);
        const double value = row.needed ("accuracy",
                                         kind == "response"  ? "dB"
                                         : kind == "degrees" ? "degrees"
                                                             : "percent",
                                         0.001, 30.0);
        if (row.finish())
            *kinds.at (kind).first = value * kinds.at (kind).second;
    }

    void dcr (Row& row, int line)
    {
        row.form = "dcr,OHMS like dcr,8.1k";
        keep (row, OhmsReading { row.needed ("resistance", "ohm", 1.0, 1e7) }, line);
    }

    void lcr (Row& row, int line)
    {
        row.form = "lcr,series or parallel,HZ,HENRIES[,OHMS[,ADDED FARADS]] like lcr,series,120,4.3";
        MeterReading reading;
        reading.parallel = row.word ("mode", { "series", "parallel" }) == "parallel";
        reading.hz = hertz (row);
        reading.henries = row.needed ("inductance", "H", 1e-4, 1e4);
        reading.ohms = row.maybe ("resistance", "ohm", 1.0, 1e9);
        reading.addedFarads = added (row);
        keep (row, reading, line);
    }

    void impedance (Row& row, int line)
    {
        row.form = "impedance,HZ,OHMS[,DEGREES[,ADDED FARADS]] like impedance,1k,28.5k,72";
        ImpedanceReading reading;
        reading.hz = hertz (row);
        reading.ohms = row.needed ("impedance", "ohm", 1.0, 1e9);
        reading.degrees = row.maybe ("phase", "degrees", -90.0, 90.0);
        reading.addedFarads = added (row);
        keep (row, reading, line);
    }

    void resonance (Row& row, int line)
    {
        row.form = "resonance,HZ[,ADDED FARADS] like resonance,4.35k,220p";
        ResonanceReading reading;
        reading.hz = row.needed ("frequency", "Hz", 100.0, 2e5);
        reading.addedFarads = added (row);
        keep (row, reading, line);
    }

    void load (Row& row, int)
    {
        row.form = "load,OHMS,FARADS,flat or rising[,COIL] like load,1M,470p,rising";
        ResponseSweep sweep;
        sweep.loadOhms = row.needed ("load resistance", "ohm", 100.0, 1e9);
        sweep.loadFarads = row.needed ("load capacitance", "F", 0.0, 1e-6);
        sweep.rising = row.word ("drive", { "flat", "rising" }) == "rising";
        sweep.coil = row.textOrNone();
        row.finish();
        result.readings.sweeps.push_back (sweep); // wrong or not: its response rows are not to be called loose
    }

    void response (Row& row, int line)
    {
        row.form = "response,HZ,DB like response,1k,-3.2";
        ResponseReading reading;
        reading.hz = hertz (row);
        reading.db = row.needed ("level", "dB", -200.0, 200.0);
        reading.sweep = static_cast<int> (result.readings.sweeps.size()) - 1;
        if (reading.sweep < 0)
            row.fault ("the load is not known; put a row before it like load,1M,470p,flat");
        keep (row, reading, line);
    }
};
}

std::optional<ReadingsFile> readReadingsText (const std::string& text, const std::string& file, const PresetFolders& folders,
                                              Diagnostics& diagnostics)
{
    const auto before = diagnostics.raised();
    ReadingsReader reader (file, diagnostics);
    reader.read (text);
    if (! reader.result.preset.empty())
    {
        Json name (reader.result.preset);
        name.line = reader.presetLine;
        name.file = std::make_shared<const std::string> (file);
        Library library (folders, diagnostics);
        if (const auto resolved = library.resolve ("pickup", name))
            reader.result.generic = readPickup (resolved->json, diagnostics);
    }
    if (diagnostics.raised() > before)
        return std::nullopt;
    return std::move (reader.result);
}

std::optional<ReadingsFile> readReadings (const std::filesystem::path& path, const PresetFolders& folders,
                                          Diagnostics& diagnostics)
{
    const auto text = wholeText (path, "a file of bench readings", limits::readingsBytes, diagnostics);
    return text ? readReadingsText (*text, path.string(), folders, diagnostics) : std::nullopt;
}
}
