#include "paper/Spice.h"

#include <charconv>
#include <cmath>
#include <sstream>

namespace coldiron
{
namespace
{
/** The shortest text that reads back as the same number; no suffix, no locale. */
std::string exactNumber (double value)
{
    char text[40];
    const auto end = std::to_chars (text, text + sizeof text, value).ptr;
    return { text, end };
}

class Writer
{
public:
    explicit Writer (const GuitarCircuit& c) : circuit (c) {}

    std::string text (const std::string& title)
    {
        out << "* " << oneLine (title) << "\n"
            << "* response at node tip for the source at node src, all coils driven alike\n"
            << "vsrc src 0 dc 0 ac 1\n";
        if (circuit.tip == ground)
            out << "* tip and sleeve are one: silence\nrshort tip 0 1\n";
        coils();
        plainParts();
        out << "* leakage\n";
        for (NodeId n = 1; n < circuit.netlist.numNodes(); ++n)
            out << "rleak" << n << " " << name (n) << " 0 1e12\n";
        out << ".ac dec 100 10 40000\n.print ac vdb(tip) vp(tip)\n.end\n";
        return out.str();
    }

private:
    const GuitarCircuit& circuit;
    std::ostringstream out;

    static std::string oneLine (std::string text)
    {
        for (auto& c : text)
            if (static_cast<unsigned char> (c) < ' ')
                c = ' ';
        return text;
    }

    std::string name (NodeId node) const
    {
        return node == ground ? "0" : node == circuit.tip ? "tip" : "n" + std::to_string (node);
    }

    /** EMF, then resistance, then inductance, from a to b: v_a - v_b = e + (R + sL) i. */
    void coils()
    {
        const auto& branches = circuit.netlist.branches();
        for (size_t i = 0; i < branches.size(); ++i)
        {
            const auto& branch = branches[i];
            const std::string id = std::to_string (i + 1);
            std::string at = name (branch.a);
            for (const auto& coil : circuit.coils)
                if (coil.branch == static_cast<BranchId> (i))
                {
                    out << "* coil " << oneLine (coil.pickup) << " " << oneLine (coil.coil) << "\n";
                    out << "ecoil" << id << " " << at << " emf" << id << " src 0 " << exactNumber (coil.stringDrive) << "\n";
                    at = "emf" + id;
                }
            const std::string end = name (branch.b);
            if (branch.ohms > 0.0)
            {
                const std::string next = branch.henries > 0.0 ? "dcr" + id : end;
                out << "rcoil" << id << " " << at << " " << next << " " << exactNumber (branch.ohms) << "\n";
                at = next;
            }
            if (branch.henries > 0.0)
                out << "lcoil" << id << " " << at << " " << end << " " << exactNumber (branch.henries) << "\n";
            else if (branch.ohms <= 0.0)
                out << "vjoin" << id << " " << at << " " << end << " 0\n";
        }
        int k = 0;
        for (const auto& coupling : circuit.netlist.couplings())
        {
            const double l1 = branches[static_cast<size_t> (coupling.first)].henries;
            const double l2 = branches[static_cast<size_t> (coupling.second)].henries;
            out << "kcoil" << ++k << " lcoil" << coupling.first + 1 << " lcoil" << coupling.second + 1 << " "
                << exactNumber (coupling.henries / std::sqrt (l1 * l2)) << "\n";
        }
    }

    void plainParts()
    {
        out << "* pots, resistors, capacitors, cable and input\n";
        int r = 0, c = 0, e = 0;
        for (const auto& part : circuit.netlist.resistors())
            out << "r" << ++r << " " << name (part.a) << " " << name (part.b) << " " << exactNumber (part.ohms) << "\n";
        for (const auto& part : circuit.netlist.capacitors())
            out << "c" << ++c << " " << name (part.a) << " " << name (part.b) << " " << exactNumber (part.farads) << "\n";
        for (const auto& part : circuit.netlist.followers())
            out << "ebuffer" << ++e << " " << name (part.out) << " 0 " << name (part.in) << " 0 " << exactNumber (part.gain)
                << "\n";
    }
};
}

std::string spiceNetlist (const GuitarCircuit& circuit, const std::string& title) { return Writer (circuit).text (title); }

std::string spiceNetlist (const Job& job, const Option* option)
{
    const CircuitConfig config = option != nullptr ? job.optionConfig (*option) : job.recordedConfig (job.takes.empty() ? -1 : 0);
    const std::string heard = option != nullptr ? option->letter + " " + option->name : "as recorded";
    return spiceNetlist (buildCircuit (config.harness, config.setting, config.load), job.title + ", " + heard);
}
}
