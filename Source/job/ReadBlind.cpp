#include "job/BlindResult.h"
#include "job/Fields.h"
#include "job/Reader.h"
#include "listening/Ranking.h"

#include <algorithm>

namespace coldiron
{
namespace
{
bool isLetter (const std::string& name) { return name.size() == 1 && name[0] >= 'A' && name[0] <= 'H'; }
bool isVersion (const std::string& name) { return isLetter (name) || name == "recorded"; }
constexpr const char* versionExpected = "expected a letter A to H, or \"recorded\"";

/** The versions of one place: a name, or a list of those that share it. */
std::vector<std::string> readPlace (const Json& item, std::vector<std::string>& seen, Diagnostics& diagnostics)
{
    std::vector<std::string> place;
    const auto add = [&] (const Json& name)
    {
        if (name.kind != Json::Kind::text || ! isVersion (name.text))
            addDiagnostic (diagnostics, name, "\"ranking\": found " + name.kindName() + ", " + versionExpected);
        else if (std::find (seen.begin(), seen.end(), name.text) != seen.end())
            addDiagnostic (diagnostics, name, "\"ranking\": " + name.text + " is there twice");
        else
        {
            seen.push_back (name.text);
            place.push_back (name.text);
        }
    };
    if (item.kind == Json::Kind::list && ! item.items.empty())
        for (const auto& name : item.items)
            add (name);
    else
        add (item);
    return place;
}

void readRanking (const Json& list, BlindResult& result, Diagnostics& diagnostics)
{
    std::vector<std::string> seen;
    if (list.kind == Json::Kind::list)
        for (const auto& item : list.items)
            result.ranking.push_back (readPlace (item, seen, diagnostics));
    const auto count = list.kind == Json::Kind::list ? static_cast<int> (seen.size()) : 0;
    if (list.kind != Json::Kind::list || (count < Ranking::fewest && count == static_cast<int> (list.items.size())))
        addDiagnostic (diagnostics, list,
                       "\"ranking\": expected a list of two to nine versions, the best first; those that share a place in a list "
                       "of their own");
}

void readAbx (ObjectReader& entry, const Json& pair, BlindResult& result, Diagnostics& diagnostics)
{
    result.pair = readTexts (pair, "abx", diagnostics);
    if (result.pair.size() != 2 || result.pair[0] == result.pair[1] || ! isVersion (result.pair[0])
        || ! isVersion (result.pair[1]))
        addDiagnostic (diagnostics, pair, "\"abx\": expected two different versions, [\"recorded\", \"A\"]");
    result.trials = static_cast<int> (entry.quantity (fields::trials));
    result.right = static_cast<int> (entry.quantity (fields::right));
    if (const auto* right = entry.value ("right"); right != nullptr && result.right > result.trials)
        addDiagnostic (diagnostics, *right,
                       "\"right\": found " + std::to_string (result.right) + ", expected no more than the "
                           + std::to_string (result.trials) + " trials");
    for (const char* key : { "trials", "right" })
        if (const auto* value = entry.value (key);
            value != nullptr && value->kind == Json::Kind::number && value->number != static_cast<int> (value->number))
            addDiagnostic (diagnostics, *value, "\"" + std::string (key) + "\": expected a whole number");
}

bool isDate (const std::string& text)
{
    if (text.size() != 10 || text[4] != '-' || text[7] != '-')
        return false;
    for (size_t i : { 0, 1, 2, 3, 5, 6, 8, 9 })
        if (text[i] < '0' || text[i] > '9')
            return false;
    const int month = std::stoi (text.substr (5, 2)), day = std::stoi (text.substr (8, 2));
    return month >= 1 && month <= 12 && day >= 1 && day <= 31;
}

BlindResult readResult (const Json& item, Diagnostics& diagnostics)
{
    BlindResult result;
    ObjectReader entry (item, "a blind test", diagnostics);
    const auto* ranking = entry.value ("ranking");
    const auto* abx = entry.value ("abx");
    if ((ranking != nullptr) == (abx != nullptr) && entry.isObject())
        addDiagnostic (diagnostics, item, "a blind test: expected either \"ranking\" or \"abx\"");
    if (ranking != nullptr)
        readRanking (*ranking, result, diagnostics);
    else if (abx != nullptr)
    {
        result.kind = BlindResult::Kind::abx;
        readAbx (entry, *abx, result, diagnostics);
    }
    if (const auto* names = entry.value ("names"))
    {
        if (names->kind != Json::Kind::object)
            addDiagnostic (diagnostics, *names,
                           "\"names\": found " + names->kindName() + ", expected { \"A\": \"Bridge in parallel\" }");
        for (const auto& [letter, name] : names->members)
            if (! isVersion (letter) || name.kind != Json::Kind::text)
                addDiagnostic (diagnostics, name, "\"names\": \"" + letter + "\", " + versionExpected + " and its name");
            else
                result.names[letter] = name.text;
    }
    if (const auto take = entry.given (fields::blindTake))
        result.take = static_cast<int> (*take);
    entry.text ("about");
    result.date = entry.text ("date");
    if (const auto* date = entry.value ("date"); date != nullptr && date->kind == Json::Kind::text && ! isDate (date->text))
        addDiagnostic (diagnostics, *date, "\"date\": found " + date->kindName() + ", expected year-month-day, \"2026-11-25\"");
    entry.finish();
    return result;
}
}

std::vector<BlindResult> readBlindResults (const Json& list, Diagnostics& diagnostics)
{
    std::vector<BlindResult> results;
    if (list.kind != Json::Kind::list)
    {
        addDiagnostic (diagnostics, list,
                       "\"blind\": found " + list.kindName()
                           + ", expected a list of { \"ranking\": [ \"B\", \"A\" ] } or { \"abx\": [ \"A\", \"B\" ], \"trials\": "
                             "10, \"right\": 9 }");
        return results;
    }
    for (const auto& item : list.items)
        results.push_back (readResult (item, diagnostics));
    return results;
}

std::vector<std::string> readHeard (const Json& list, Diagnostics& diagnostics)
{
    auto letters = readTexts (list, "heard", diagnostics);
    for (const auto& item : list.items)
        if (item.kind == Json::Kind::text && ! isLetter (item.text))
            addDiagnostic (diagnostics, item, "\"heard\": found " + item.kindName() + ", expected letters A to H");
    std::sort (letters.begin(), letters.end());
    letters.erase (std::unique (letters.begin(), letters.end()), letters.end());
    return letters;
}
}
