#include "guitar/HeardPath.h"

#include <functional>
#include <vector>

namespace coldiron
{
namespace
{
/** Unit flow through split nodes: node n enters at 2n and leaves at 2n + 1. */
class UnitFlow
{
public:
    explicit UnitFlow (int nodes) : arcs (static_cast<size_t> (2 * nodes + 2)), sourceId (2 * nodes), sinkId (2 * nodes + 1)
    {
        for (int n = 0; n < nodes; ++n)
            arc (2 * n, 2 * n + 1);
    }

    void edge (NodeId a, NodeId b)
    {
        arc (2 * a + 1, 2 * b);
        arc (2 * b + 1, 2 * a);
    }

    void source (NodeId n) { arc (sourceId, 2 * n); }
    void sink (NodeId n) { arc (2 * n + 1, sinkId); }

    int most()
    {
        int flow = 0;
        std::vector<bool> seen;
        const std::function<bool (int)> push = [&] (int here)
        {
            if (here == sinkId)
                return true;
            seen[static_cast<size_t> (here)] = true;
            for (const int index : arcs[static_cast<size_t> (here)])
            {
                auto& out = list[static_cast<size_t> (index)];
                if (out.room == 0 || seen[static_cast<size_t> (out.to)] || ! push (out.to))
                    continue;
                --out.room;
                ++list[static_cast<size_t> (index ^ 1)].room;
                return true;
            }
            return false;
        };
        while (true)
        {
            seen.assign (arcs.size(), false);
            if (! push (sourceId))
                return flow;
            ++flow;
        }
    }

private:
    struct Arc
    {
        int to, room;
    };
    std::vector<Arc> list; ///< pairs: forward at even places, backward behind it
    std::vector<std::vector<int>> arcs;
    int sourceId, sinkId;

    void arc (int from, int to)
    {
        arcs[static_cast<size_t> (from)].push_back (static_cast<int> (list.size()));
        list.push_back ({ to, 1 });
        arcs[static_cast<size_t> (to)].push_back (static_cast<int> (list.size()));
        list.push_back ({ from, 0 });
    }
};
}

bool leadsToTip (const GuitarCircuit& circuit)
{
    if (circuit.tip == ground)
        return false;
    const auto& netlist = circuit.netlist;
    if (! netlist.followers().empty())
        return ! circuit.coils.empty(); // an active stage breaks the loop; the numbers tell

    for (const auto& coil : circuit.coils)
    {
        const auto& driven = netlist.branches()[static_cast<size_t> (coil.branch)];
        if (coil.stringDrive == 0.0 || driven.a == driven.b)
            continue;
        UnitFlow flow (netlist.numNodes());
        for (const auto& r : netlist.resistors())
            flow.edge (r.a, r.b);
        for (const auto& c : netlist.capacitors())
            flow.edge (c.a, c.b);
        for (const auto& branch : netlist.branches())
            if (&branch != &driven)
                flow.edge (branch.a, branch.b);
        flow.source (driven.a);
        flow.source (driven.b);
        flow.sink (circuit.tip);
        flow.sink (ground);
        if (flow.most() == 2)
            return true;
    }
    return false;
}
}
