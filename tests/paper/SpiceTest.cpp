#include "paper/Spice.h"
#include "guitar/Bench.h"
#include "response/GuitarResponse.h"

#include <catch2/catch.hpp>

#include <cctype>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

#include <unistd.h>

namespace spiceTest
{
using namespace coldiron;
using namespace coldiron::support;

namespace
{
struct Printed
{
    double hz, db;
};

/** Runs the ngspice executable on a netlist as it is and reads its printed table. */
std::vector<Printed> runNgspice (const std::string& netlist)
{
    const auto file = std::filesystem::temp_directory_path() / ("coldiron-spice-" + std::to_string (getpid()) + ".cir");
    std::ofstream (file) << netlist;
    FILE* pipe = popen (("ngspice -b " + file.string() + " 2>&1").c_str(), "r");
    REQUIRE (pipe != nullptr);
    std::vector<Printed> table;
    char line[512];
    while (std::fgets (line, sizeof line, pipe) != nullptr)
    {
        int index;
        double hz, db, phase;
        if (std::sscanf (line, "%d %lf %lf %lf", &index, &hz, &db, &phase) == 4)
            table.push_back ({ hz, db });
    }
    CHECK (pclose (pipe) == 0);
    std::filesystem::remove (file);
    return table;
}

/** What our own response says, at ngspice's own frequencies (printed with seven digits). */
double worstDifference (const GuitarCircuit& circuit, const std::vector<Printed>& table)
{
    std::vector<BranchId> branches;
    for (const auto& coil : circuit.coils)
        branches.push_back (coil.branch);
    const Network network (circuit.netlist, branches, circuit.tip);
    std::vector<std::complex<double>> h (branches.size());
    double worst = 0.0;
    for (const auto& [hz, db] : table)
    {
        network.responses (hz, h.data());
        std::complex<double> sum = 0.0;
        for (size_t k = 0; k < h.size(); ++k)
            sum += h[k] * circuit.coils[k].stringDrive;
        worst = std::max (worst, std::abs (20.0 * std::log10 (std::abs (sum)) - db));
    }
    return worst;
}

GuitarCircuit circuitOf (const Harness& harness, const Setting& setting = {}) { return buildCircuit (harness, setting, {}); }

Harness unevenCoils()
{
    auto part = humbucker ("bridge", 0.2);
    auto& coils = part.as<PickupPart>()->pickup.coils;
    coils[0].losses = { { 0.4, 50e3 }, { 0.1, 200e3 } };
    coils[1].output = 0.9;
    auto harness = oneVolumeOneTone (part, 500e3, "bridge.north.start", "bridge.south.start");
    harness.solder ({ "bridge.north.finish", "bridge.south.finish" });
    return harness;
}
}

TEST_CASE ("ngspice runs the exported netlist and agrees within 1e-4 dB")
{
    Setting half;
    half.knobs["volume"] = 5.0;
    half.knobs["tone"] = 3.0;
    Setting both;
    both.levers["selector"] = "both";
    for (const auto& circuit : { circuitOf (unevenCoils()), circuitOf (unevenCoils(), half), circuitOf (fourKnobs(), both) })
    {
        const auto table = runNgspice (spiceNetlist (circuit, "a test"));
        REQUIRE (table.size() > 300);
        CHECK (table.front().hz == Approx (10.0));
        CHECK (worstDifference (circuit, table) < 1e-4);
    }
}

TEST_CASE ("a buffer is exported too")
{
    auto harness = seriesHumbucker();
    Part buffer;
    buffer.name = "buffer";
    buffer.kind = BufferPart {};
    harness.addPart (buffer);
    harness.unsolder ("volume.2", "jack.tip");
    harness.solder ({ "volume.2", "buffer.in" });
    harness.solder ({ "buffer.out", "jack.tip" });
    harness.solder ({ "buffer.ground", "ground" });
    const auto circuit = circuitOf (harness);
    CHECK (worstDifference (circuit, runNgspice (spiceNetlist (circuit, "buffered"))) < 1e-4);
}

TEST_CASE ("names are a-z, 0-9 and _, unique whatever their case, and the leak is 1e12 ohms")
{
    const auto text = spiceNetlist (circuitOf (fourKnobs()), "Title\nwith a line break");
    std::istringstream lines (text);
    std::string line;
    std::set<std::string> names;
    bool leaks = false, source = false;
    while (std::getline (lines, line))
    {
        if (line.empty() || line[0] == '*' || line[0] == '.')
            continue;
        std::istringstream words (line);
        std::string name, node;
        words >> name >> node;
        for (const char c : name + node)
            CHECK ((std::islower (static_cast<unsigned char> (c)) || std::isdigit (static_cast<unsigned char> (c)) || c == '_'));
        CHECK (names.insert (name).second);
        leaks = leaks || line.find (" 0 1e12") != std::string::npos || line.find (" 0 1e+12") != std::string::npos;
        source = source || line == "vsrc src 0 dc 0 ac 1";
    }
    CHECK (leaks);
    CHECK (source);
    CHECK (text.find ("\nwith") == std::string::npos); // a title cannot break out of its comment
    CHECK (text.ends_with (".end\n"));
}
}
