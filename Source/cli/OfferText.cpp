#include "cli/OfferText.h"

#include "cli/Command.h"
#include "files/Json.h"
#include "files/Quantity.h"
#include "job/Substitution.h"
#include "offer/OptionText.h"
#include "wording/OfferWords.h"

namespace coldiron::cli
{
namespace
{
std::string settingWords (const Setting& setting)
{
    std::string words;
    const auto add = [&] (const std::string& name, const std::string& value)
    { words += (words.empty() ? "" : ", ") + name + " " + value; };
    for (const auto& [name, position] : setting.levers)
        add (name, position);
    for (const auto& [name, knob] : setting.knobs)
        add (name, quantityText (knob));
    return words;
}

std::string optionLine (const StarterOption& option)
{
    const auto setting = settingWords (option.setting);
    return option.name + (setting.empty() ? "" : "  [" + setting + "]");
}

std::string setText (const SetOffer& set)
{
    std::string text = "Starter set " + set.starter.preset + ": " + set.starter.name
                       + (set.starter.says.empty() ? "" : " (\"" + set.starter.says + "\")") + "\n";
    for (const auto& option : set.offer.options)
        text += "  fits      " + optionLine (option) + "\n";
    for (const auto& [candidate, why] : set.offer.refused)
        text += "  not here  " + wording::candidateName (candidate) + ": " + wording::offerRefusal (why) + "\n";
    return text;
}

std::string rewireText (const RewireOffer& offer, bool withWords)
{
    const auto title = offer.info.preset + ": " + offer.info.name;
    if (! offer.option)
        return "  not here  " + title + ": " + wording::offerRefusal (offer.refusal.value()) + "\n";
    std::string text = "  fits      " + title;
    const auto setting = settingWords (offer.option->setting);
    const auto& arguments = offer.option->rewires.front().second;
    auto filled = arguments; // defaults too, for the words
    std::string on;
    for (const auto& ask : offer.info.asks)
        if (ask.hasStandard)
            filled.emplace (ask.name, ask.standard);
        else
            on += (on.empty() ? "" : ", ") + arguments.at (ask.name);
    text += (on.empty() ? "" : " (" + on + ")") + (setting.empty() ? "" : "  [" + setting + "]") + "\n";
    std::vector<std::string> ignored;
    if (withWords)
        for (const auto& words : { offer.info.gives, offer.info.costs })
            if (! words.empty())
                text += "              " + filledIn (words, filled, ignored) + "\n";
    return text;
}

Json rewireJson (const RewireOffer& offer)
{
    auto json = Json::object ({ { "preset", offer.info.preset },
                                { "name", offer.info.name },
                                { "wish", offer.info.wish },
                                { "fits", offer.option.has_value() } });
    if (! offer.option)
    {
        json["why"] = wording::offerRefusal (offer.refusal.value());
        return json;
    }
    json["option"] = optionAsJson (*offer.option);
    json["heard"] = offer.heard;
    return json;
}
}

std::string offerText (const WishOffer& offer)
{
    std::string text = offer.match == WordMatch::some ? "Nothing answers all of these words; what comes nearest:\n\n" : "";
    for (const auto& set : offer.sets)
        text += setText (set) + "\n";
    const auto list = [&] (const std::vector<RewireOffer>& rewires, const std::string& heading)
    {
        if (! rewires.empty())
            text += heading + "\n";
        for (const auto& rewire : rewires)
            text += rewireText (rewire, ! offer.wish.empty() && rewires.size() <= 6);
        text += rewires.empty() ? "" : "\n";
    };
    list (offer.rewires, "Rewires");
    list (offer.alike, "Other rewires for the same wish");
    return text;
}

std::string addedText (const Added& added, const std::string& job)
{
    std::string text;
    for (size_t i = 0; i < added.letters.size(); ++i)
        text += job + ": added " + added.letters[i] + "  " + added.names[i] + "\n";
    for (const auto& name : added.alreadyThere)
        text += job + ": there already: " + name + "\n";
    if (added.left > 0)
        text += job + ": no letter of A to H is left for " + std::to_string (added.left) + " more; take an option out first\n";
    return text;
}

std::string offerJson (const WishOffer& offer, const Added* added)
{
    auto json = Json::object (
        { { "wish", offer.wish }, { "sets", Json::list() }, { "rewires", Json::list() }, { "alike", Json::list() } });
    for (const auto& set : offer.sets)
    {
        auto entry = Json::object ({ { "preset", set.starter.preset },
                                     { "name", set.starter.name },
                                     { "says", set.starter.says },
                                     { "options", Json::list() },
                                     { "refused", Json::list() } });
        for (const auto& option : set.offer.options)
            entry["options"].add (optionAsJson (option));
        for (const auto& [candidate, why] : set.offer.refused)
            entry["refused"].add (
                Json::object ({ { "name", wording::candidateName (candidate) }, { "why", wording::offerRefusal (why) } }));
        json["sets"].add (entry);
    }
    for (const auto& rewire : offer.rewires)
        json["rewires"].add (rewireJson (rewire));
    for (const auto& rewire : offer.alike)
        json["alike"].add (rewireJson (rewire));
    if (added != nullptr)
    {
        json["added"] = Json::list();
        for (size_t i = 0; i < added->letters.size(); ++i)
            json["added"].add (Json::object ({ { "letter", added->letters[i] }, { "name", added->names[i] } }));
        json["already_there"] = added->alreadyThere;
        json["no_letter_left_for"] = added->left;
    }
    return json.write (2);
}
}
