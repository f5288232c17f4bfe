#include "plugin/Processor.h"

juce::AudioProcessor* JUCE_CALLTYPE createPluginFilter() { return new coldiron::Processor(); }
