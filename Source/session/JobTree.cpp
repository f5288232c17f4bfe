#include "session/JobTree.h"

#include <cmath>

namespace coldiron
{
bool isTooDeep (const std::string& text)
{
    int depth = 0;
    for (size_t i = 0; i < text.size(); ++i)
        switch (text[i])
        {
        case '"':
            while (++i < text.size() && text[i] != '"')
                if (text[i] == '\\')
                    ++i;
            break;
        case '/': // a comment may hold what is no text and no bracket
            if (i + 1 < text.size() && (text[i + 1] == '/' || text[i + 1] == '*'))
            {
                const bool isLine = text[i + 1] == '/';
                const size_t end = text.find (isLine ? "\n" : "*/", i + 2);
                i = end == std::string::npos ? text.size() : end + (isLine ? 0 : 1);
            }
            break;
        case '{':
        case '[':
            if (++depth > 64)
                return true;
            break;
        case '}':
        case ']': --depth; break;
        default: break;
        }
    return false;
}

JobTree parseJobTree (const std::string& text)
{
    if (isTooDeep (text))
        return {};
    JobTree tree = JobTree::parse (text, nullptr, false, true);
    return tree.is_discarded() ? JobTree() : tree;
}

std::string jobTreeText (const JobTree& tree) { return tree.dump (2, ' ', false, JobTree::error_handler_t::replace) + "\n"; }

std::string setAt (JobTree& tree, const std::string& pointer, const JobTree& value, bool removes)
{
    try
    {
        const JobTree::json_pointer at (pointer);
        if (! removes)
        {
            tree[at] = value;
            return {};
        }
        if (at.empty())
            return "the job itself cannot be removed";
        if (! tree.contains (at))
            return {};
        JobTree& owner = tree.at (at.parent_pointer());
        if (owner.is_array())
            owner.erase (static_cast<size_t> (std::stoul (at.back())));
        else
            owner.erase (at.back());
        return {};
    }
    catch (const std::exception& fault)
    {
        return pointer + ": " + fault.what();
    }
}

Setting fullSetting (const Harness& harness, const Setting& setting)
{
    Setting full;
    for (const Control& control : controls (harness))
    {
        if (control.positions.empty())
        {
            full.knobs[control.name] = setting.knob (control.name, control.rest);
            continue;
        }
        const auto named = setting.levers.find (control.name);
        full.levers[control.name] = named == setting.levers.end() ? control.standard : named->second;
    }
    return full;
}

void writeSetting (JobTree& owner, const Setting& now, const Setting& base, const Harness& harness)
{
    JobTree result = owner.is_object() && owner.contains ("setting") ? owner["setting"] : JobTree::object();
    const Setting full = fullSetting (harness, now), before = fullSetting (harness, base);
    for (const auto& [name, value] : full.knobs)
        if (result.contains (name) || std::abs (value - before.knob (name)) > 1e-9)
            result[name] = std::round (value * 1e4) / 1e4;
    for (const auto& [name, position] : full.levers)
        if (result.contains (name) || position != before.levers.at (name))
            result[name] = position;
    if (! result.empty())
        owner["setting"] = result;
}

JobTree asTree (const RewireChoice& choice)
{
    JobTree tree = JobTree::object();
    tree["use"] = choice.preset;
    for (const auto& [name, value] : choice.arguments)
        tree[name] = value;
    return tree;
}

RewireChoice asChoice (const JobTree& rewire)
{
    RewireChoice choice;
    if (! rewire.is_object())
        return choice;
    for (const auto& [key, value] : rewire.items())
    {
        const std::string text = value.is_string() ? value.get<std::string>() : value.dump();
        if (key == "use")
            choice.preset = value.is_string() ? text : "(in line)";
        else
            choice.arguments[key] = text;
    }
    return choice;
}
}
