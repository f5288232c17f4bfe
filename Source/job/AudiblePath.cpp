#include "job/AudiblePath.h"

#include "files/Limits.h"

namespace coldiron
{
namespace
{
/** The next combination of lever positions; false after the last. */
bool advance (const std::vector<Control>& levers, std::vector<size_t>& place, Setting& setting)
{
    for (size_t i = 0; i < levers.size(); ++i)
    {
        place[i] = (place[i] + 1) % levers[i].positions.size();
        setting.levers[levers[i].name] = levers[i].positions[place[i]];
        if (place[i] != 0)
            return true;
    }
    return false;
}
}

Path pathAt (const Harness& harness, const Setting& setting) { return buildCircuit (harness, setting, {}).path; }

Path bestPath (const Harness& harness)
{
    std::vector<Control> levers;
    std::vector<std::string> knobs;
    for (const auto& control : controls (harness))
    {
        if (control.positions.empty())
            knobs.push_back (control.name);
        else
            levers.push_back (control);
    }
    std::optional<Path> first;
    std::vector<size_t> place (levers.size(), 0);
    Setting setting;
    for (const auto& lever : levers)
        setting.levers[lever.name] = lever.positions.front();
    size_t count = 0;
    do
        for (const double knob : { 10.0, 5.0 })
        {
            for (const auto& name : knobs)
                setting.knobs[name] = knob;
            const auto path = pathAt (harness, setting);
            if (path == Path::open)
                return path;
            if (! first)
                first = path;
        }
    while (++count < limits::combinations && // a harness that has more is refused before
           advance (levers, place, setting));
    return first.value_or (Path::none);
}

std::string pathInWords (Path path)
{
    switch (path)
    {
    case Path::open: return {};
    case Path::none: return "no coil reaches the jack";
    case Path::shorted: return "the jack's tip and sleeve are joined, so the output is shorted";
    }
    return {};
}
}
