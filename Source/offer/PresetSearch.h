#pragma once

#include "job/Job.h"
#include "offer/TradeWords.h"

#include <string>
#include <vector>

namespace coldiron
{
/** What a preset is called, read without checking the rest of it. */
struct PresetNames
{
    std::string preset;                  ///< the file's name
    std::string name;                    ///< for people; empty where the file has none
    std::string told;                    ///< its wish, and what a player would say
    std::vector<std::string> alsoCalled; ///< other words of the trade

    std::vector<std::string> all() const; ///< preset, name and the others
};

/** The presets of a kind ("rewires", "guitars"), in the order of PresetFolders::list(); one that cannot be read keeps its preset's
    name alone, and `faults` say why. */
std::vector<PresetNames> presetNames (const std::string& kind, const PresetFolders&, Diagnostics& diagnostics);

/** Those of the best match there is, in their order; empty where none answers. @param match  how well they answer */
std::vector<PresetNames> bestNamed (const std::string& asked, const std::vector<PresetNames>&, WordMatch& match);
}
