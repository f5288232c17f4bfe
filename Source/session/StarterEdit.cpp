#include "session/StarterEdit.h"

#include "offer/OptionText.h"
#include "session/JobTree.h"

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
}

StarterEdit withStarter (const std::string& jobText, const StarterOffer& offer)
{
    StarterEdit edit;
    const JobTree job = parseJobTree (jobText);
    if (! job.is_object() || offer.options.empty())
        return edit;
    const std::string agreed =
        job.contains ("agreed") && job["agreed"].is_string() ? job["agreed"].get<std::string>() : std::string();
    JobTree options = JobTree::object();
    if (job.contains ("options") && job["options"].is_object())
        for (const auto& [letter, option] : job["options"].items())
            if (! changesNothing (option) || letter == agreed)
                options[letter] = option;
    std::set<std::string> taken;
    for (const auto& [letter, option] : options.items())
        taken.insert (letter);
    const auto letters = freeLetters (taken);
    for (size_t i = 0; i < offer.options.size(); ++i)
    {
        if (i >= letters.size())
        {
            ++edit.left;
            continue;
        }
        options[letters[i]] = parseJobTree (optionText (offer.options[i]));
        edit.letters.push_back (letters[i]);
    }
    if (! edit.letters.empty())
        edit.options = options.dump();
    return edit;
}
}
