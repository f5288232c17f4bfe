#pragma once

#include "job/Fields.h"
#include "job/Job.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace coldiron
{
/** What a meter across the jack showed. */
struct OhmsNoted
{
    enum class Kind { number, open, shorted };
    Kind kind = Kind::number;
    double ohms = 0.0;     ///< of a number, >= 0
    double halfStep = 0.0; ///< half of the last digit that was written [ohm]
};

enum class Tap { loud, weak, none }; ///< what is heard when a pickup is tapped
enum class Kick { up, down, none };  ///< where an analogue meter's needle goes as steel is pulled away from a pickup

/** Something noted of a pickup, or of one of its coils. */
template <typename What>
struct StruckNote
{
    std::string pickup, coil; ///< coil empty: the pickup as a whole
    What what;

    std::string name() const { return coil.empty() ? pickup : pickup + "." + coil; }
};

/** What was noted at the jack at one setting. */
struct BenchReading
{
    Setting setting;
    std::optional<OhmsNoted> ohms;
    std::vector<StruckNote<Tap>> taps;
    std::vector<StruckNote<Kick>> kicks;
    int line = 0; ///< in its file; 0: none
};

/** A technician's readings of one guitar, at intake or after the work (presets/README.md, "readings"). */
struct BenchReadings
{
    static constexpr size_t most = 200; ///< readings in one file

    std::string option;                               ///< letter; empty: the guitar as found
    double accuracy = fields::meterAccuracy.standard; ///< of the meter, a share of the reading
    std::vector<BenchReading> readings;
};

/** The harness that such readings are of: that of an option, or as found. @param option  a letter of the job, or empty */
const Harness& measuredHarness (const Job&, const std::string& option);

/** Reads a file of readings and checks it against the job: its option, controls and pickups. Every fault is added; empty when there
    are any.
    @param option  letter that was asked for from outside, empty for as found, which the file may repeat and not deny; nothing:
                   what the file says */
std::optional<BenchReadings> readBenchReadings (const std::filesystem::path&, const Job&,
                                                const std::optional<std::string>& option, Diagnostics&);
std::optional<BenchReadings> readBenchReadingsText (const std::string& text, const std::string& file, const Job&,
                                                    const std::optional<std::string>& option, Diagnostics&);

/** Ohms as a person writes them: "7.9k", "open", "OL" (as meters say open), "short". @returns nothing where it is none of them */
std::optional<OhmsNoted> parseOhmsNoted (const std::string&);
}
