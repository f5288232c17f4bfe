#include "Stopwatch.h"

#include "response/Responses.h"
#include "support/Ngspice.h"
#include "support/OracleNetlist.h"

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>

#include <unistd.h>

namespace coldiron::support
{
void benchCircuits()
{
    const auto harness = fourKnobs();
    Setting setting;
    setting.levers["selector"] = "both";
    const Load load;
    constexpr int perDecade = 111; // 10 Hz to 40 kHz: about 400 points
    const auto netlist = OracleNetlist (harness, setting, load).lines;
    const auto reference = Ngspice::acDecades (netlist, { "tip" }, perDecade, 10.0, 40e3);

    // The three do the same work: said in dB, so that the times may be compared.
    const GuitarResponse response = voiceOf (harness, setting, load);
    double apart = 0.0;
    for (size_t k = 0; k < reference.hz.size(); ++k)
        apart = std::max (apart, std::abs (db (response.unisonResponse (reference.hz[k])) - db (reference.values[0][k])));
    std::printf ("\nOne harness to %zu responses, two humbuckers, both on; ours and ngspice are at most %.1e dB apart:\n",
                 reference.hz.size(), apart);

    std::complex<double> sum;
    const auto ours = timed (200,
                             [&] (int)
                             {
                                 const GuitarResponse fresh = voiceOf (harness, setting, load);
                                 for (const double hz : reference.hz)
                                     sum += fresh.unisonResponse (hz);
                             });
    const auto inProcess = timed (100, [&] (int) { Ngspice::acDecades (netlist, { "tip" }, perDecade, 10.0, 40e3); });
    std::printf ("  ours, from parts and wires: %.3f (%.3f) ms\n", ours.best * 1e3, ours.median * 1e3);
    std::printf ("  ngspice in process, from a netlist: %.3f (%.3f) ms, %.1f (%.1f) times ours\n", inProcess.best * 1e3,
                 inProcess.median * 1e3, inProcess.best / ours.best, inProcess.median / ours.median);

    const auto folder = std::filesystem::temp_directory_path() / ("coldiron-bench-" + std::to_string (::getpid()));
    std::filesystem::create_directories (folder);
    {
        std::ofstream file (folder / "harness.cir");
        file << "* harness\n";
        for (const auto& line : netlist)
            file << line << "\n";
        file << ".ac dec " << perDecade << " 10 40k\n.print ac vdb(tip)\n.end\n";
    }
    const auto command = "ngspice -b '" + (folder / "harness.cir").string() + "' > '" + (folder / "out").string() + "' 2>&1";
    bool ran = true;
    const auto started = timed (10, [&] (int) { ran = std::system (command.c_str()) == 0 && ran; });
    std::filesystem::remove_all (folder);
    if (ran)
        std::printf ("  starting ngspice: %.1f (%.1f) ms, %.0f (%.0f) times ours\n", started.best * 1e3, started.median * 1e3,
                     started.best / ours.best, started.median / ours.median);
    else
        std::puts ("  starting ngspice: it is not installed, or refused the netlist");
    if (! std::isfinite (std::abs (sum)))
        std::puts ("  (a response was not a number)");
}
}
