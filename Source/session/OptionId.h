#pragma once

#include <array>
#include <cstddef>
#include <string>

namespace coldiron
{
class Harness;
struct Job;

/** Which version of the sound: as recorded (`Now`), or an option by its letter. The letter, not the place in the file: a
    job may have A and C alone. The numbers are those of the plugin's parameter and of kept states. */
enum class OptionId : int { recorded, A, B, C, D, E, F, G, H };

inline constexpr OptionId asRecorded = OptionId::recorded;
inline constexpr std::array optionIds { OptionId::A, OptionId::B, OptionId::C, OptionId::D,
                                        OptionId::E, OptionId::F, OptionId::G, OptionId::H };
inline constexpr std::array versionIds { asRecorded,  OptionId::A, OptionId::B, OptionId::C, OptionId::D,
                                         OptionId::E, OptionId::F, OptionId::G, OptionId::H };
inline constexpr std::size_t numVersions = versionIds.size();
inline constexpr int lastOption = static_cast<int> (optionIds.size());

constexpr int numberOf (OptionId id) { return static_cast<int> (id); }                ///< 0 as recorded, 1 to 8 the options
constexpr std::size_t indexOf (OptionId id) { return static_cast<std::size_t> (id); } ///< into arrays of numVersions
constexpr OptionId optionAt (int number)                                              ///< asRecorded for what is no option
{
    return number >= 1 && number <= lastOption ? static_cast<OptionId> (number) : asRecorded;
}

std::string letterOf (OptionId);               ///< "A" to "H"; empty for as recorded
OptionId optionOf (const std::string& letter); ///< asRecorded for what is no letter of an option

const Harness& harnessOf (const Job&, OptionId);     ///< of an option; as recorded: the guitar's
const Harness& harnessBefore (const Job&, OptionId); ///< what its rewires start from
}
