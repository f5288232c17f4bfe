#include "offer/TradeWords.h"

#include <algorithm>
#include <cctype>
#include <set>
#include <utility>

namespace coldiron
{
namespace
{
const std::set<std::string>& emptyWords()
{
    static const std::set<std::string> words { "a",     "also",  "an",    "and",   "are",    "as",    "at",    "be",     "but",
                                               "by",    "can",   "could", "for",   "from",   "get",   "gets",  "give",   "gives",
                                               "go",    "goes",  "has",   "have",  "he",     "her",   "him",   "i",      "if",
                                               "in",    "is",    "it",    "its",   "just",   "like",  "me",    "more",   "much",
                                               "my",    "of",    "on",    "or",    "please", "s",     "she",   "should", "so",
                                               "some",  "that",  "the",   "them",  "then",   "there", "these", "they",   "this",
                                               "to",    "too",   "very",  "want",  "wants",  "was",   "we",    "when",   "where",
                                               "which", "while", "with",  "would", "you",    "your" };
    return words;
}

std::string stem (std::string word)
{
    const auto cut = [&] (const std::string& ending, size_t least)
    {
        if (word.size() < ending.size() + least || ! word.ends_with (ending))
            return false;
        word.erase (word.size() - ending.size());
        return true;
    };
    if (cut ("ing", 3) || cut ("ed", 3) || cut ("er", 4) || cut ("es", 4))
    {
        if (word.size() > 2 && word.back() == word[word.size() - 2] && word.back() != 'l' && word.back() != 's')
            word.pop_back(); // "humming", "splitting"
    }
    else if (! word.ends_with ("ss"))
        cut ("s", 3);
    if (! cut ("y", 4))
        cut ("e", 4);
    return word;
}

std::vector<std::string> plainWords (const std::string& text)
{
    std::vector<std::string> words;
    std::string word;
    for (const char c : text + " ")
    {
        const auto byte = static_cast<unsigned char> (c);
        if (std::isalnum (byte) != 0 || byte >= 0x80)
            word += static_cast<char> (std::tolower (byte));
        else if (! word.empty())
            words.push_back (std::exchange (word, {}));
    }
    return words;
}
}

std::vector<std::string> wordStems (const std::string& text)
{
    const auto all = plainWords (text);
    std::vector<std::string> stems;
    for (const auto& word : all)
        if (emptyWords().count (word) == 0)
            stems.push_back (stem (word));
    if (stems.empty())
        std::transform (all.begin(), all.end(), std::back_inserter (stems), stem);
    return stems;
}

WordScore matchWords (const std::string& asked, const std::vector<std::string>& names, const std::string& more)
{
    const auto wanted = wordStems (asked);
    if (wanted.empty())
        return {};
    std::set<std::string> told;
    const auto counted = [&] (const auto& words)
    {
        return static_cast<size_t> (std::count_if (wanted.begin(), wanted.end(),
                                                   [&] (const auto& word)
                                                   { return std::find (words.begin(), words.end(), word) != words.end(); }));
    };
    bool named = false, same = false;
    for (const auto& name : names)
    {
        if (plainWords (name) == plainWords (asked))
            return { WordMatch::exact, 0 };
        const auto stems = wordStems (name);
        same = same || stems == wanted;
        named = named || counted (stems) == wanted.size();
        told.insert (stems.begin(), stems.end());
    }
    for (const auto& word : wordStems (more))
        told.insert (word);
    if (same)
        return { WordMatch::same, 0 };
    const auto known = counted (told);
    if (known == wanted.size())
        return { named ? WordMatch::named : WordMatch::told, 0 };
    return { known > 0 ? WordMatch::some : WordMatch::none, known };
}
}
