#include "job/BenchReadings.h"

#include "files/Limits.h"
#include "files/Quantity.h"
#include "job/Fields.h"
#include "job/Presets.h"
#include "job/Readers.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
constexpr double mostOhmsNoted = 1e9;

/** Half of the last of three digits: nobody reads a meter closer than that and means it. */
double halfOfThirdDigit (double ohms) { return ohms > 0.0 ? 0.5 * std::pow (10.0, std::floor (std::log10 (ohms)) - 2.0) : 0.0; }

/** What "7.9k" leaves open: 50 ohms to both sides. */
double halfOfLastDigit (const std::string& text, double ohms)
{
    const auto first = text.find_first_of ("0123456789"), end = text.find_first_not_of ("0123456789.", first);
    const auto digits = text.substr (first, end == std::string::npos ? end : end - first);
    const double mantissa = std::strtod (digits.c_str(), nullptr);
    const auto dot = digits.find ('.');
    const auto decimals = dot == std::string::npos ? 0.0 : static_cast<double> (digits.size() - dot - 1);
    return mantissa > 0.0 ? 0.5 * std::pow (10.0, -decimals) * ohms / mantissa : 0.0;
}

template <typename What>
struct Answer
{
    const char* word;
    What what;
};
constexpr Answer<Tap> taps[] = { { "loud", Tap::loud }, { "weak", Tap::weak }, { "none", Tap::none } };
constexpr Answer<Kick> kicks[] = { { "+", Kick::up }, { "-", Kick::down }, { "none", Kick::none } };

std::vector<std::string> strikable (const Harness& harness)
{
    std::vector<std::string> names;
    for (const auto& part : harness.parts())
        if (const auto* pickup = part.as<PickupPart>())
        {
            names.push_back (part.name);
            for (const auto& coil : pickup->pickup.coils)
                names.push_back (part.name + "." + coil.name);
        }
    return names;
}

class BenchReader
{
public:
    BenchReader (const Harness& h, Diagnostics& list)
        : harness (h), diagnostics (list), pickups (strikable (h)),
          isActive (
              std::any_of (h.parts().begin(), h.parts().end(), [] (const Part& p) { return p.as<BufferPart>() != nullptr; }))
    {
    }

    BenchReading read (const Json& json)
    {
        BenchReading reading;
        reading.line = json.line;
        ObjectReader row (json, "a reading", diagnostics);
        reading.setting = readSetting (row.value ("setting"), harness, diagnostics);
        const auto *ohms = row.value ("ohms"), *tap = row.value ("tap"), *kick = row.value ("kick");
        row.text ("about");
        if (ohms != nullptr)
            reading.ohms = readOhms (*ohms);
        if (tap != nullptr)
            reading.taps = readStruck (*tap, "tap", taps);
        if (kick != nullptr)
            reading.kicks = readStruck (*kick, "kick", kicks);
        if (row.isObject() && ohms == nullptr && tap == nullptr && kick == nullptr)
            addDiagnostic (diagnostics, json,
                           "nothing was noted here; give \"ohms\", \"tap\" or \"kick\", or leave the reading out");
        row.finish();
        return reading;
    }

private:
    const Harness& harness;
    Diagnostics& diagnostics;
    const std::vector<std::string> pickups;
    const bool isActive;

    std::optional<OhmsNoted> readOhms (const Json& json)
    {
        if (isActive)
            addDiagnostic (
                diagnostics, json,
                "\"ohms\": a buffer drives the jack and a meter reads nothing of the pickups; leave them out and note \"tap\"");
        OhmsNoted plain;
        plain.ohms = json.number;
        plain.halfStep = halfOfThirdDigit (json.number);
        const auto noted = json.kind == Json::Kind::number ? std::optional (plain)
                           : json.kind == Json::Kind::text ? parseOhmsNoted (json.text)
                                                           : std::nullopt;
        if (noted && noted->ohms >= 0.0 && noted->ohms <= mostOhmsNoted)
            return noted;
        addDiagnostic (diagnostics, json,
                       "\"ohms\": found " + json.kindName()
                           + ", expected what the meter showed, from 0 to 1G, like \"7.9k\" or 7900, or \"open\" or \"short\"");
        return std::nullopt;
    }

    template <typename What, size_t n>
    std::vector<StruckNote<What>> readStruck (const Json& json, const std::string& key, const Answer<What> (&answers)[n])
    {
        std::vector<StruckNote<What>> notes;
        std::vector<std::string> words;
        for (const auto& answer : answers)
            words.push_back (answer.word);
        if (json.kind != Json::Kind::object || json.members.empty())
            addDiagnostic (diagnostics, json,
                           "\"" + key + "\": found " + json.kindName() + ", expected each pickup that was struck, like { \""
                               + (pickups.empty() ? "bridge" : pickups.front()) + "\": \"" + words.front() + "\" }");
        for (size_t i = 0; i < json.members.size(); ++i)
        {
            const auto& [name, value] = json.members[i];
            if (std::find (pickups.begin(), pickups.end(), name) == pickups.end())
            {
                const auto near = nearest (name, pickups);
                addDiagnostic (diagnostics, value.file != nullptr ? *value.file : std::string(), json.memberLines[i],
                               "\"" + key + "\": there is no pickup or coil \"" + name + "\" here"
                                   + (near.empty() ? "." : "; did you mean \"" + near + "\"?")
                                   + " There are: " + listed (pickups));
                continue;
            }
            const auto found =
                std::find_if (std::begin (answers), std::end (answers),
                              [&v = value] (const auto& answer) { return v.kind == Json::Kind::text && v.text == answer.word; });
            if (found == std::end (answers))
                addDiagnostic (diagnostics, value,
                               "\"" + key + "\" of " + name + ": found " + value.kindName() + ", expected one of "
                                   + listed (words));
            else
            {
                const auto [pickup, coil] = splitPoint (name);
                notes.push_back ({ pickup, coil, found->what });
            }
        }
        return notes;
    }
};

/** Which option the readings are of; nothing after a fault. */
std::optional<std::string> optionMeasured (const Json* said, std::string text, const Job& job,
                                           const std::optional<std::string>& asked, Diagnostics& diagnostics)
{
    if (said == nullptr)
        return asked.value_or ("");
    if (text == "recorded")
        text.clear();
    if (! text.empty() && job.find (text) == nullptr)
    {
        std::vector<std::string> letters { "recorded" };
        for (const auto& option : job.options)
            letters.push_back (option.letter);
        addDiagnostic (diagnostics, *said, "\"option\": found \"" + text + "\", expected one of " + listed (letters));
        return std::nullopt;
    }
    if (asked && text != *asked)
    {
        addDiagnostic (diagnostics, *said,
                       "\"option\": found " + said->kindName() + ", and --option asks for "
                           + (asked->empty() ? "recorded" : *asked) + "; are these the readings of another option?");
        return std::nullopt;
    }
    return text;
}

std::optional<BenchReadings> readBench (const Json& json, const Job& job, const std::optional<std::string>& asked,
                                        Diagnostics& diagnostics)
{
    const auto before = diagnostics.raised();
    ObjectReader file (json, "a file of readings", diagnostics);
    file.value ("coldiron");
    file.text ("about");
    BenchReadings result;
    result.accuracy = file.quantity (fields::meterAccuracy);
    const auto* said = file.value ("option");
    const auto option = optionMeasured (said, file.text ("option"), job, asked, diagnostics);
    const auto* list = file.needed ("readings", R"(a list of { "setting": { ... }, "ohms": "7.9k" })");
    file.finish();
    if (list == nullptr || ! option)
        return std::nullopt;
    result.option = *option;
    if (list->kind != Json::Kind::list || list->items.empty() || list->items.size() > BenchReadings::most)
    {
        const auto found = list->kind != Json::Kind::list ? list->kindName() : std::to_string (list->items.size()) + " of them";
        addDiagnostic (diagnostics, *list,
                       "\"readings\": found " + found + ", expected a list of 1 to " + std::to_string (BenchReadings::most)
                           + R"( like { "setting": { "selector": "neck" }, "ohms": "7.9k" })");
        return std::nullopt;
    }
    BenchReader reader (measuredHarness (job, result.option), diagnostics);
    for (const auto& item : list->items)
        result.readings.push_back (reader.read (item));
    if (diagnostics.raised() != before)
        return std::nullopt;
    return result;
}
}

const Harness& measuredHarness (const Job& job, const std::string& option)
{
    const auto* found = option.empty() ? nullptr : job.find (option);
    return found != nullptr ? found->harness : job.takes.empty() ? job.guitar.harness : job.takes.front().harness;
}

std::optional<OhmsNoted> parseOhmsNoted (const std::string& text)
{
    OhmsNoted noted;
    if (text == "open" || text == "OL")
        noted.kind = OhmsNoted::Kind::open;
    else if (text == "short")
        noted.kind = OhmsNoted::Kind::shorted;
    else if (const auto ohms = parseQuantity (text); ohms && *ohms >= 0.0)
    {
        noted.ohms = *ohms;
        noted.halfStep = std::max (halfOfLastDigit (text, *ohms), halfOfThirdDigit (*ohms));
    }
    else
        return std::nullopt;
    return noted;
}

std::optional<BenchReadings> readBenchReadingsText (const std::string& text, const std::string& file, const Job& job,
                                                    const std::optional<std::string>& option, Diagnostics& diagnostics)
{
    const auto json = parsePreset (text, file, "readings", diagnostics);
    return json && checkTag (*json, "readings", diagnostics) ? readBench (*json, job, option, diagnostics) : std::nullopt;
}

std::optional<BenchReadings> readBenchReadings (const std::filesystem::path& path, const Job& job,
                                                const std::optional<std::string>& option, Diagnostics& diagnostics)
{
    const auto text = wholeText (path, "a file of readings", limits::readingsBytes, diagnostics);
    return text ? readBenchReadingsText (*text, path.string(), job, option, diagnostics) : std::nullopt;
}
}
