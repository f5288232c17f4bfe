#pragma once

#include "plugin/Bench.h"

#include <juce_audio_processors/juce_audio_processors.h>

#include <memory>

namespace coldiron
{
/** The window on a bench. The bench must outlive it. Message thread. */
std::unique_ptr<juce::AudioProcessorEditor> createBenchEditor (juce::AudioProcessor&, Bench&);
}
