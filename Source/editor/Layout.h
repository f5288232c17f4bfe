#pragma once

#include <juce_graphics/juce_graphics.h>

#include <vector>

namespace coldiron
{
/** How much room the window gives. */
enum class Fold { folded, standard, wide };

/** Where everything stands. Arithmetic alone: no component is asked. */
struct MainLayout
{
    Fold fold = Fold::standard;
    juce::Rectangle<int> header, guitar, take, options, listen, look, decide;
    std::vector<juce::Rectangle<int>> tags; ///< as recorded, the options, and last the new one where there is room for it
    bool compactTags = false;               ///< narrow or low: name on one line, fewer figures
    bool lowTags = false;                   ///< two figures on one line
    bool guitarFolded = false;              ///< the guitar slides over when asked
    bool stepsInDecide = false;             ///< room for the bench steps
    juce::Rectangle<int> firstLine;         ///< the first steps, at the foot; empty where they are not shown
    juce::Rectangle<int> overlay;           ///< for what slides over: drawing, list of rewires, keys
};

constexpr int leastWidth = 900, leastHeight = 600, mostWidth = 1920, mostHeight = 1200;

/** @param numOptions  0 to 8
    @param firstSteps  room for their line */
MainLayout layout (juce::Rectangle<int> bounds, int numOptions, bool firstSteps = false);
}
