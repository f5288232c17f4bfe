#include "Run.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <cmath>
#include <fstream>
#include <iostream>
#include <sstream>

namespace figuresTest
{
using namespace coldiron::support;
using Json = nlohmann::json;

namespace
{
std::vector<std::vector<double>> rows (const std::string& csv, std::string& header)
{
    std::istringstream lines (csv);
    std::vector<std::vector<double>> table;
    std::getline (lines, header);
    std::string line, cell;
    while (std::getline (lines, line))
    {
        table.emplace_back();
        std::istringstream cells (line);
        while (std::getline (cells, cell, ','))
            table.back().push_back (std::stod (cell));
    }
    return table;
}

std::vector<std::vector<double>> response (const Fixture& fixture, std::vector<std::string> more, std::string& header)
{
    std::vector<std::string> arguments { "response", fixture.path ("job.json") };
    arguments.insert (arguments.end(), more.begin(), more.end());
    const auto ran = run (arguments);
    INFO (ran.err);
    REQUIRE (ran.exitCode == 0);
    return rows (ran.out, header);
}
}

TEST_CASE ("response is CSV, log-spaced with both ends")
{
    const Fixture fixture;
    std::string header;
    const auto plain = response (fixture, { "--option", "A" }, header);
    CHECK (header == "hz,db,phase_deg");
    REQUIRE (plain.size() == 400);
    CHECK (plain.front()[0] == 20.0);
    CHECK (plain.back()[0] == 20000.0);
    CHECK (plain[1][0] / plain[0][0] == Approx (std::pow (1000.0, 1.0 / 399.0)).epsilon (1e-8));
    CHECK (plain.front()[1] == Approx (5.7).margin (0.2)); // two coils of a volt each, less what the pots take

    const auto few = response (fixture, { "--option", "recorded", "--from", "100", "--to", "1000", "--points", "2" }, header);
    REQUIRE (few.size() == 2);
    CHECK (few[1][0] == 1000.0);

    const auto silent = response (fixture, { "--option", "D", "--points", "3" }, header);
    for (const auto& row : silent)
        CHECK (row[1] == -300.0);

    CHECK (run ({ "response", fixture.path ("job.json"), "--option", "A", "--csv", fixture.path ("a.csv") }).out.empty());
    std::ifstream file (fixture.path ("a.csv"));
    std::stringstream text;
    text << file.rdbuf();
    CHECK (rows (text.str(), header) == plain);
    CHECK (fixture.files() == std::vector<std::string> { "a.csv", "job.json", "take.wav" }); // nothing half left beside
    CHECK (
        run ({ "response", fixture.path ("job.json"), "--option", "A", "--csv", fixture.path ("no/such/folder/a.csv") }).exitCode
        == 1);
}

TEST_CASE ("relative is the plain difference for the same coils, with a band around it")
{
    const Fixture fixture;
    std::string header;
    const auto recorded = response (fixture, { "--option", "recorded" }, header);
    const auto parallel = response (fixture, { "--option", "B" }, header);
    const auto relative = response (fixture, { "--option", "B", "--relative" }, header);
    CHECK (header == "hz,db,phase_deg,low_db,high_db");
    for (size_t i = 0; i < relative.size(); ++i)
    {
        CHECK (relative[i][1] == Approx (parallel[i][1] - recorded[i][1]).margin (1e-4));
        CHECK (relative[i][3] <= relative[i][4]);
    }
    const auto nothing = response (fixture, { "--option", "A", "--relative", "--points", "20" }, header);
    for (const auto& row : nothing)
    {
        CHECK (row[1] == Approx (0.0).margin (1e-6));
        CHECK (row[2] == Approx (0.0).margin (1e-3));
    }
}

TEST_CASE ("compare: a table for people, figures with units for programs")
{
    const Fixture fixture;
    const auto table = run ({ "compare", fixture.path ("job.json") });
    INFO (table.err);
    REQUIRE (table.exitCode == 0);
    std::cout << table.out;
    for (const char* text : { "[dB]", "[LU]", "[Hz]", "[uV", "[kohm]", "same coils", "close", "assumed", "clearly quieter",
                              "silent", "hums like a single coil", "hum: quiet, about -", "coils 2 % unlike",
                              "clarity [dB re now]", "peak above the low end [dB]", "volume at 8 [dB re 10]", "plus/minus [LU]" })
        CHECK (table.out.find (text) != std::string::npos);
    CHECK (table.out.find ("exact") == std::string::npos);

    const auto json = Json::parse (run ({ "compare", fixture.path ("job.json"), "--json" }).out);
    const auto& columns = json.at ("columns");
    REQUIRE (columns.size() == 6);
    CHECK (columns[0].at ("option") == "now");
    const auto &series = columns[1], &parallel = columns[2], &split = columns[3], &off = columns[4], &down = columns[5];
    CHECK (series.at ("level_db").get<double>() == Approx (0.0).margin (1e-6));
    CHECK (series.at ("loudness_lu").get<double>() == Approx (0.0).margin (0.01));
    CHECK (parallel.at ("loudness_lu").get<double>() < -3.0);
    CHECK (parallel.at ("peak_hz").get<double>() > 1.7 * series.at ("peak_hz").get<double>());
    CHECK (table.out.find ("see below") == std::string::npos); // a number in every column
    CHECK (parallel.at ("hum_by_assumed_mismatch") == true);
    CHECK (parallel.at ("hum_against_playing_db_re_single_coil").get<double>() < -30.0);
    CHECK (std::abs (split.at ("hum_against_playing_db_re_single_coil").get<double>()) < 3.0);
    CHECK (parallel.at ("corner_hz").get<double>()
           > 1.5 * series.at ("corner_hz").get<double>()); // parallel reaches higher: common practice of the trade, no source
    CHECK (parallel.at ("clarity_db").is_number());
    CHECK (series.at ("clarity_db").get<double>() == Approx (0.0).margin (1e-9));
    const auto said = table.out.find ("hears the strings at another place");
    CHECK (said != std::string::npos);
    CHECK (table.out.find ("hears the strings at another place", said + 1) == std::string::npos); // one legend, not one a column
    CHECK (split.at ("sure").at ("playing") == "close");
    CHECK (split.at ("sure").at ("loudness_plus_minus_lu") == 0.5);
    CHECK (off.at ("silent") == true);
    CHECK (off.at ("level_db").is_null());
    CHECK (off.at ("ohms").at ("reads") == "short");
    CHECK (down.at ("hiss_uv").get<double>() > 0.0);
    CHECK (series.at ("ohms").at ("ohms").get<double>() == Approx (7874.02).epsilon (1e-6)); // 8k parallel 500k
    CHECK (split.at ("band").size() == 26);
    CHECK (series.at ("volumes")[0].at ("steps").size() == 5);
    CHECK (run ({ "compare", fixture.path ("job.json") }).out == table.out); // the same on every run
}

TEST_CASE ("compare says that a push-pull left down is heard when it is pulled")
{
    const Fixture fixture;
    const auto path = fixture.path ("pull.json");
    std::ofstream (path) << R"({ "coldiron": "job 1", "guitar": "one-humbucker", "options": {
        "A": { "name": "Down", "rewires": [ { "use": "series-parallel", "pickup": "bridge", "pot": "volume" } ] },
        "B": { "name": "Up", "rewires": [ { "use": "series-parallel", "pickup": "bridge", "pot": "volume" } ], "setting": { "volume-pull": "up" } } } })";
    const auto table = run ({ "compare", path });
    INFO (table.err);
    REQUIRE (table.exitCode == 0);
    const auto said = table.out.find ("sounds like as recorded until volume-pull is pulled");
    CHECK (said != std::string::npos);
    CHECK (table.out.find ("sounds like as recorded", said + 1) == std::string::npos);
}

TEST_CASE ("ohms of every switch position")
{
    const Fixture fixture;
    const auto table = run ({ "ohms", fixture.path ("job.json") });
    CHECK (table.exitCode == 0);
    for (const char* text : { "7.87 k", "1.99 k", "3.97 k", "short" })
        CHECK (table.out.find (text) != std::string::npos);
    const auto json = Json::parse (run ({ "ohms", fixture.path ("job.json"), "--option", "B", "--json" }).out);
    REQUIRE (json.at ("readings").size() == 4);
    CHECK (json["readings"][1].at ("switches").at ("mode") == "parallel");
    CHECK (json["readings"][1].at ("ohms").get<double>() == Approx (1992.03).epsilon (1e-6)); // 2k parallel 500k
    CHECK (json["readings"][3].at ("ohms").is_null());
    CHECK (json["readings"][3].at ("reads") == "short");
}

TEST_CASE ("the spice export run by ngspice is the response printed")
{
    const Fixture fixture;
    for (const char* option : { "recorded", "A", "B", "C", "E" })
    {
        const auto exported = run ({ "spice", fixture.path ("job.json"), "--option", option });
        REQUIRE (exported.exitCode == 0);
        fixture.write ("netlist.cir", exported.out);
        FILE* pipe = popen (("ngspice -b " + fixture.path ("netlist.cir") + " 2>&1").c_str(), "r");
        REQUIRE (pipe != nullptr);
        char line[512];
        std::vector<std::pair<double, double>> simulated;
        while (std::fgets (line, sizeof line, pipe) != nullptr)
        {
            int index;
            double hz, db, phase;
            if (std::sscanf (line, "%d %lf %lf %lf", &index, &hz, &db, &phase) == 4)
                simulated.emplace_back (hz, db);
        }
        REQUIRE (pclose (pipe) == 0);
        REQUIRE (simulated.size() == 361); // 100 a decade from 10 Hz to 40 kHz
        std::string header;
        // ngspice stretches its steps so that the last point is the end: the same grid.
        const auto ours = response (fixture, { "--option", option, "--from", "10", "--to", "40000", "--points", "361" }, header);
        double worst = 0.0;
        for (size_t i = 0; i < ours.size(); ++i)
        {
            REQUIRE (ours[i][0] == Approx (simulated[i].first).epsilon (1e-6));
            worst = std::max (worst, std::abs (ours[i][1] - simulated[i].second));
        }
        INFO ("option " << option);
        CHECK (worst < 1e-4);
    }
}
}
