#include "WholeJob.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <fstream>
#include <sstream>

namespace coldiron::support
{
using nlohmann::json;

namespace
{
double quantity (const json& value)
{
    if (value.is_number())
        return value;
    const auto text = value.get<std::string>();
    return std::stod (text) * (text.back() == 'k' ? 1e3 : text.back() == 'M' ? 1e6 : 1.0);
}

std::vector<double> coilsOf (const std::string& preset)
{
    const auto whole = printed ({ "presets", "pickups", preset, "--json" });
    if (whole.contains ("like"))
        return coilsOf (whole["like"]);
    std::vector<double> ohms;
    for (const auto& [name, coil] : whole["coils"].items())
        ohms.push_back (quantity (coil["dcr"]));
    return ohms;
}

double power (const Audio& audio)
{
    double sum = 0.0;
    for (const float sample : audio.samples)
        sum += static_cast<double> (sample) * sample;
    return sum;
}
}

json printed (const std::vector<std::string>& command)
{
    const auto ran = run (command);
    INFO (ran.err);
    REQUIRE (ran.exitCode == 0);
    return json::parse (ran.out);
}

double pickupOhms (const std::string& preset)
{
    double sum = 0.0;
    for (const double ohms : coilsOf (preset))
        sum += ohms;
    return sum;
}

double oneCoilOhms (const std::string& preset) { return coilsOf (preset).front(); }

ShopFloor::ShopFloor (const std::string& guitar, const std::vector<std::string>& at, const std::string& wish,
                      const std::string& rewire)
    : job (fixture.path ("bench.json"))
{
    std::vector<std::string> words { "new", guitar, "--take", fixture.path ("take.wav"), "--out", job };
    for (const auto& control : at)
        words.insert (words.end(), { "--at", control });
    const auto made = run (words);
    INFO (made.err);
    REQUIRE (made.exitCode == 0);
    const auto offered = run ({ "offer", job, "--wish", wish, "--add" });
    INFO (offered.err << offered.out);
    REQUIRE (offered.exitCode == 0);
    std::ifstream file (job);
    const auto tree = json::parse (file, nullptr, true, true);
    for (const auto& [key, entry] : tree["options"].items())
        for (const auto& used : entry.value ("rewires", json::array()))
            if (letter.empty() && used["use"] == rewire)
            {
                letter = key;
                put = entry;
            }
    REQUIRE_FALSE (letter.empty());
    REQUIRE (run ({ "check", job }).exitCode == 0);
}

json ShopFloor::reading (const std::map<std::string, std::string>& levers, bool recorded) const
{
    const auto table = printed ({ "ohms", job, "--json", "--option", recorded ? "recorded" : letter });
    for (const auto& row : table["readings"])
    {
        bool isThis = true;
        for (const auto& [lever, position] : levers)
            isThis = isThis && row["switches"].value (lever, "") == position;
        if (isThis)
            return row;
    }
    FAIL ("no row of `ohms` has the switches so");
    return {};
}

double ShopFloor::ohms (const std::map<std::string, std::string>& levers, bool recorded) const
{
    return reading (levers, recorded)["ohms"];
}

std::string ShopFloor::reads (const std::map<std::string, std::string>& levers) const { return reading (levers, false)["reads"]; }

json ShopFloor::column (bool recorded) const
{
    const auto table = printed ({ "compare", job, "--json" });
    for (const auto& entry : table["columns"])
        if (entry["option"] == (recorded ? "now" : letter))
            return entry;
    FAIL ("no such column");
    return {};
}

double ShopFloor::db (double hz, bool recorded) const
{
    const auto text = std::to_string (hz);
    const auto ran = run ({ "response", job, "--option", recorded ? "recorded" : letter, "--from", text, "--to",
                            std::to_string (hz * 1.001), "--points", "2", "--csv", "-" });
    INFO (ran.err);
    REQUIRE (ran.exitCode == 0);
    std::istringstream lines (ran.out);
    std::string head, line;
    std::getline (lines, head);
    std::getline (lines, line);
    return std::stod (line.substr (line.find (',') + 1));
}

double ShopFloor::renderedDb() const
{
    const auto ran = run ({ "render", job, "--out", fixture.path ("sounds"), "--option", letter });
    INFO (ran.err);
    REQUIRE (ran.exitCode == 0);
    const double before = power (readAudio (fixture.path ("take.wav"))),
                 after = power (readAudio (fixture.path ("sounds/" + letter + ".wav")));
    return after > 0.0 ? 10.0 * std::log10 (after / before) : -200.0;
}
}
