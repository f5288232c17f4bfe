#include "plugin/session/StarterEdit.h"

#include "plugin/session/JobTree.h"

namespace coldiron
{
namespace
{
bool changesNothing (const JobTree& option)
{
    if (! option.is_object())
        return false;
    for (const auto& [key, value] : option.items())
        if (key != "name" && ! ((key == "rewires" || key == "setting") && value.empty()))
            return false;
    return true;
}

JobTree asTree (const StarterOption& option)
{
    JobTree tree = { { "name", option.name } };
    for (const auto& [preset, arguments] : option.rewires)
        tree["rewires"].push_back (coldiron::asTree (RewireChoice { preset, arguments }));
    for (const auto& [name, value] : option.setting.knobs)
        tree["setting"][name] = value;
    for (const auto& [name, position] : option.setting.levers)
        tree["setting"][name] = position;
    return tree;
}
}

StarterEdit withStarter (const std::string& jobText, const StarterOffer& offer)
{
    StarterEdit edit;
    const JobTree job = parseJobTree (jobText);
    if (! job.is_object() || offer.options.empty())
        return edit;
    const std::string agreed = job.contains ("agreed") && job["agreed"].is_string() ? job["agreed"].get<std::string>() : std::string();
    JobTree options = JobTree::object();
    if (job.contains ("options") && job["options"].is_object())
        for (const auto& [letter, option] : job["options"].items())
            if (! changesNothing (option) || letter == agreed)
                options[letter] = option;
    for (const auto& option : offer.options)
    {
        std::string letter;
        for (char c = 'A'; c <= 'H' && letter.empty(); ++c)
            if (! options.contains (std::string (1, c)))
                letter = std::string (1, c);
        if (letter.empty())
        {
            ++edit.left;
            continue;
        }
        options[letter] = asTree (option);
        edit.letters.push_back (letter);
    }
    if (! edit.letters.empty())
        edit.options = options.dump();
    return edit;
}
}
