#pragma once

#include <cstddef>
#include <cstdint>

/** What no job of a guitar comes near. Beyond it a file is refused in words, before it can eat the memory or the day.
    presets/README.md lists them for people. */
namespace coldiron::limits
{
inline constexpr std::uint64_t fileBytes = 8u << 20;     ///< a job or preset
inline constexpr std::uint64_t readingsBytes = 4u << 20; ///< a file of bench readings
inline constexpr size_t depth = 64;                      ///< lists and objects in one another
inline constexpr size_t values = 200000;                 ///< values in one file: numbers, texts, lists, objects
inline constexpr size_t keys = 1000;                     ///< keys of one object
inline constexpr size_t textLength = 100000;             ///< bytes of one text: notes, a client's wish
inline constexpr size_t message = 2000;                  ///< bytes of one fault's words

inline constexpr size_t parts = 200;           ///< of one guitar
inline constexpr size_t wirePoints = 10000;    ///< solder points in all chains of one guitar
inline constexpr size_t lugs = 100;            ///< of one switch
inline constexpr size_t positions = 48;        ///< of one switch
inline constexpr size_t combinations = 20000;  ///< of the positions of all switches of one guitar: rows of `ohms`
inline constexpr size_t takes = 200;           ///< of one job
inline constexpr double takeHours = 12.0;      ///< of one take
inline constexpr size_t rewires = 50;          ///< on one take or option
inline constexpr size_t allRewires = 1000;     ///< on all takes and options of one job
inline constexpr size_t rewireSteps = 500;     ///< of one rewire
inline constexpr size_t triedSteps = 20000;    ///< taken to find out whether another order of rewires works
inline constexpr size_t filledLength = 100000; ///< bytes of one rewire's texts with all names filled in
}
