#include "cli/OhmsReadings.h"

#include "cli/Command.h"
#include "files/Json.h"
#include "wording/FaultWords.h"

#include <algorithm>
#include <array>
#include <iostream>

namespace coldiron::cli
{
namespace
{
/** What a person reads in one row. */
struct NoteRow
{
    std::string where, what, noted, expected;
    bool passes = true;
};

std::string whereWords (const ReadingVerdict& reading)
{
    std::string text;
    const auto add = [&text] (const std::string& name, const std::string& value)
    { text += (text.empty() ? "" : ", ") + name + " " + value; };
    for (const auto& [lever, position] : reading.levers)
        add (lever, position);
    for (const auto& [knob, value] : reading.knobs)
        add (knob, format ("%g", value));
    return text.empty() ? "all at 10" : text;
}

std::vector<NoteRow> rowsOf (const BenchVerdict& verdict)
{
    std::vector<NoteRow> rows;
    for (const auto& reading : verdict.readings)
    {
        const auto where = whereWords (reading);
        if (reading.ohms)
            rows.push_back (
                { where, "ohms", wording::noted (reading.ohms->noted), wording::expected (*reading.ohms), reading.ohms->passes });
        for (const auto& tap : reading.taps)
            rows.push_back (
                { where, "tap " + tap.noted.name(), wording::noted (tap.noted.what), wording::noted (tap.expected), tap.passes });
        for (const auto& kick : reading.kicks)
            rows.push_back ({ where, "kick " + kick.noted.name(), wording::noted (kick.noted.what),
                              wording::noted (kick.expected), kick.passes });
    }
    return rows;
}

/** Columns of a text in UTF-8: bytes that begin a character. */
size_t columns (const std::string& text)
{
    return static_cast<size_t> (
        std::count_if (text.begin(), text.end(), [] (char c) { return (static_cast<unsigned char> (c) & 0xc0) != 0x80; }));
}

std::string padded (const std::string& text, size_t width)
{
    return text + std::string (width - std::min (width, columns (text)), ' ');
}

void printRows (const BenchVerdict& verdict)
{
    auto rows = rowsOf (verdict);
    rows.insert (rows.begin(), { "at", "what", "noted", "should be", true });
    std::array<size_t, 4> widths {};
    const auto cellsOf = [] (const NoteRow& row) { return std::array { row.where, row.what, row.noted, row.expected }; };
    for (const auto& row : rows)
        for (size_t i = 0; i < widths.size(); ++i)
            widths[i] = std::max (widths[i], columns (cellsOf (row)[i]));
    std::string before;
    for (size_t i = 0; i < rows.size(); ++i)
    {
        auto cells = cellsOf (rows[i]);
        if (cells[0] == before)
            cells[0].clear();
        before = rows[i].where;
        for (size_t k = 0; k < widths.size(); ++k)
            std::cout << padded (cells[k], widths[k]) << "  ";
        std::cout << (i == 0 ? "" : rows[i].passes ? "pass" : "FAIL") << "\n";
    }
}

void printSuspects (const Harness& harness, const BenchVerdict& verdict)
{
    constexpr size_t mostAlike = 8;
    if (verdict.suspects.empty())
        return;
    std::cout << "\nThe likeliest single faults, every one on this wiring tried:\n";
    for (size_t i = 0; i < verdict.suspects.size(); ++i)
    {
        const auto& group = verdict.suspects[i];
        std::cout << format ("\n%zu. explains %d of %d. ", i + 1, group.fits, group.of) << wording::lookFirst (group, harness)
                  << "\n";
        for (size_t k = 0; k < std::min (mostAlike, group.alike.size()); ++k)
            std::cout << (k == 1 ? "   or, which these readings cannot tell from it:\n" : "") << (k == 0 ? "   " : "     ")
                      << wording::fault (group.alike[k], harness) << "\n";
        if (group.alike.size() > mostAlike)
            std::cout << format ("     and %zu more; --json lists them\n", group.alike.size() - mostAlike);
    }
    if (const auto doubt = wording::doubt (verdict); ! doubt.empty())
        std::cout << "\n" << doubt << "\n";
}

Json asJson (const OhmVerdict& ohms)
{
    const auto word = [] (OhmsNoted::Kind kind) { return kind == OhmsNoted::Kind::open ? "open" : "short"; };
    const bool isNumber = ohms.expected == OhmsNoted::Kind::number;
    Json row;
    row["read"] = ohms.noted.kind == OhmsNoted::Kind::number ? Json (ohms.noted.ohms) : Json (word (ohms.noted.kind));
    row["should_read"] = isNumber ? "ohms" : word (ohms.expected);
    row["low_ohms"] = isNumber ? Json (ohms.lowOhms) : Json();
    row["high_ohms"] = isNumber ? Json (ohms.highOhms) : Json();
    row["passes"] = ohms.passes;
    return row;
}

template <typename What>
Json asJson (const std::vector<StrikeVerdict<What>>& verdicts, const char* key)
{
    Json all = Json::object();
    for (const auto& verdict : verdicts)
        all[verdict.noted.name()] = Json::object ({ { key, wording::noted (verdict.noted.what) },
                                                    { "should_be", wording::noted (verdict.expected) },
                                                    { "passes", verdict.passes } });
    return all;
}

Json asJson (const ReadingVerdict& reading)
{
    Json row, setting = Json::object();
    for (const auto& [lever, position] : reading.levers)
        setting[lever] = position;
    for (const auto& [knob, value] : reading.knobs)
        setting[knob] = value;
    row["line"] = reading.line;
    row["setting"] = setting;
    if (reading.ohms)
        row["ohms"] = asJson (*reading.ohms);
    if (! reading.taps.empty())
        row["tap"] = asJson (reading.taps, "heard");
    if (! reading.kicks.empty())
        row["kick"] = asJson (reading.kicks, "seen");
    row["passes"] = reading.passes();
    return row;
}

/** For programs: it never changes. */
const char* kindName (Fault::Kind kind)
{
    switch (kind)
    {
    case Fault::Kind::none: return "none";
    case Fault::Kind::openLead: return "open lead";
    case Fault::Kind::openWire: return "open wire";
    case Fault::Kind::openJoint: return "open air joint";
    case Fault::Kind::dryLug: return "dry lug";
    case Fault::Kind::bridged: return "bridged";
    case Fault::Kind::swappedLeads: return "swapped leads";
    case Fault::Kind::swappedLugs: return "swapped lugs";
    case Fault::Kind::deadCoil: return "dead coil";
    case Fault::Kind::shortedCoil: return "shorted coil";
    case Fault::Kind::wrongPot: return "wrong pot";
    }
    return "none";
}

Json asJson (const Harness& harness, const Fault& fault)
{
    Json row;
    row["kind"] = kindName (fault.kind);
    row["points"] = fault.points;
    if (fault.kind == Fault::Kind::wrongPot)
        row["ohms"] = fault.ohms;
    row["words"] = wording::fault (fault, harness);
    return row;
}

void printJson (const Job& job, const Harness& harness, const BenchReadings& noted, const BenchVerdict& verdict)
{
    Json all;
    all["job"] = job.title;
    all["option"] = noted.option.empty() ? std::string ("recorded") : noted.option;
    all["passes"] = verdict.passes;
    all["words"] = wording::verdict (verdict);
    all["readings"] = Json::list();
    for (const auto& reading : verdict.readings)
        all["readings"].add (asJson (reading));
    all["suspects"] = Json::list();
    for (const auto& group : verdict.suspects)
    {
        Json row;
        row["explains"] = group.fits;
        row["of"] = group.of;
        row["log_likelihood"] = group.log;
        row["look_first"] = group.lookFirst;
        row["faults"] = Json::list();
        for (const auto& fault : group.alike)
            row["faults"].add (asJson (harness, fault));
        all["suspects"].add (std::move (row));
    }
    all["not_shown"] = Json::list();
    for (const auto& fault : verdict.unseen)
        all["not_shown"].add (asJson (harness, fault));
    std::cout << all.write (2) << "\n";
}
}

void checkReadingsFile (const Job& job, const std::string& file, const std::optional<std::string>& option, bool json)
{
    Diagnostics diagnostics;
    const auto noted = readBenchReadings (file, job, option, diagnostics);
    for (const auto& fault : diagnostics)
        std::cerr << fault.text() << "\n";
    if (! noted)
        throw JobDiagnostic ("");
    const auto verdict = checkReadings (job, *noted);
    const auto& harness = measuredHarness (job, noted->option);
    if (json)
        return printJson (job, harness, *noted, verdict);
    const auto* measured = job.find (noted->option);
    std::cout << job.title << ", " << (measured == nullptr ? "as recorded" : measured->letter + " " + measured->name) << ": "
              << file << "\n\n";
    printRows (verdict);
    std::cout << "\n" << wording::verdict (verdict) << "\n";
    printSuspects (harness, verdict);
    if (const auto unseen = wording::notShown (verdict, harness); ! unseen.empty())
        std::cout << "\n" << unseen << "\n";
    std::cout << "\n" << wording::readingsCaution() << "\n";
}
}
