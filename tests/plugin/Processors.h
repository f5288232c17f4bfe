#pragma once

#include "Sessions.h"

#include "plugin/Processor.h"

/** Running a processor of any kind, ours in this program or one hosted from its bundle. */
namespace processors
{
inline std::vector<std::vector<float>> run (juce::AudioProcessor& processor, const std::vector<std::vector<float>>& in, int outs,
                                            int block = 256)
{
    const auto frames = static_cast<int> (in[0].size());
    std::vector<std::vector<float>> out (static_cast<size_t> (outs), std::vector<float> (in[0].size()));
    juce::MidiBuffer midi;
    const int channels = std::max (static_cast<int> (in.size()), outs);
    for (int at = 0; at < frames; at += block)
    {
        const int count = std::min (block, frames - at);
        juce::AudioBuffer<float> buffer (channels, count);
        buffer.clear();
        for (size_t c = 0; c < in.size(); ++c)
            buffer.copyFrom (static_cast<int> (c), 0, in[c].data() + at, count);
        processor.processBlock (buffer, midi);
        for (size_t c = 0; c < out.size(); ++c)
            std::copy (buffer.getReadPointer (static_cast<int> (c)), buffer.getReadPointer (static_cast<int> (c)) + count,
                       out[c].begin() + at);
    }
    return out;
}

inline juce::AudioProcessorParameter* parameterNamed (juce::AudioProcessor& processor, const juce::String& name)
{
    for (auto* parameter : processor.getParameters())
        if (parameter->getName (128) == name)
            return parameter;
    return nullptr;
}

/** The state of ours with a job, an option heard and a knob turned, as a host would keep it. */
inline juce::MemoryBlock stateOfTwoOptions (coldiron::OptionId heard, double tone)
{
    coldiron::Session session (sessions::shippedPresets());
    session.jobEditor.setText (sessions::twoOptions);
    session.monitor.hear (heard);
    session.controls.setKnob (heard, "bridge-tone", tone);
    const std::string state = session.state();
    return { state.data(), state.size() };
}
}
