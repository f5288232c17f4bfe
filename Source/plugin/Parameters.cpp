#include "plugin/Parameters.h"

#include "plugin/HostParameter.h"

namespace coldiron
{
namespace
{
constexpr int lastPosition = 11; ///< a lever has up to twelve

juce::String numbered (const char* stem, int place) { return stem + juce::String (place + 1).paddedLeft ('0', 2); }

juce::String inDb (float value, int) { return juce::String (value, 1) + " dB"; }
}

Parameters::Parameters (juce::AudioProcessor& processor, Session& s) : session (s)
{
    using FloatLook = juce::AudioParameterFloatAttributes;
    using IntLook = juce::AudioParameterIntAttributes;

    const auto optionName = [this] (int value, int) -> juce::String
    {
        const auto job = session.jobEditor.job();
        const Option* option = job->find (letterOf (optionAt (value)));
        return option                           ? juce::String::fromUTF8 ((option->letter + ": " + option->name).c_str())
               : optionAt (value) == asRecorded ? juce::String ("as recorded")
                                                : juce::String (letterOf (optionAt (value))) + ": none";
    };
    add (processor, ParameterKind::option, 0,
         std::make_unique<IntLane> (s, ParameterKind::option, 0, "option", "Option", 0, lastOption, 0,
                                    IntLook().withStringFromValueFunction (optionName)));

    for (int place = 0; place < numKnobs; ++place)
        add (processor, ParameterKind::knob, place,
             std::make_unique<FloatLane> (
                 s, ParameterKind::knob, place, numbered ("knob_", place), "unused " + numbered ("knob ", place),
                 juce::NormalisableRange<float> (0.0f, 10.0f), 10.0f,
                 FloatLook().withStringFromValueFunction ([] (float v, int) { return juce::String (v, 1); })));
    for (int place = 0; place < numLevers; ++place)
    {
        const auto positionName = [this, place] (int value, int) -> juce::String
        {
            const ControlMap map = session.controls.map();
            const PanelControl* lever = map.leverAt (place);
            if (lever == nullptr)
                return juce::String (value);
            const auto last = lever->positions.size() - 1;
            return juce::String::fromUTF8 (lever->positions[std::min (last, static_cast<size_t> (std::max (0, value)))].c_str());
        };
        add (processor, ParameterKind::lever, place,
             std::make_unique<IntLane> (s, ParameterKind::lever, place, numbered ("lever_", place),
                                        "unused " + numbered ("lever ", place), 0, lastPosition, 0,
                                        IntLook().withStringFromValueFunction (positionName)));
    }

    add (processor, ParameterKind::bypass, 0,
         std::make_unique<BoolLane> (s, ParameterKind::bypass, 0, "bypass", "Bypass", false));
    add (processor, ParameterKind::matched, 0,
         std::make_unique<BoolLane> (s, ParameterKind::matched, 0, "matched", "Level matched", false));
    add (processor, ParameterKind::hum, 0,
         std::make_unique<FloatLane> (s, ParameterKind::hum, 0, "hum", "Mains hum", juce::NormalisableRange<float> (-80.0f, 0.0f),
                                      -80.0f,
                                      FloatLook().withLabel ("dB").withStringFromValueFunction (
                                          [] (float v, int) { return v <= -79.9f ? juce::String ("off") : inDb (v, 0); })));
    add (processor, ParameterKind::trim, 0,
         std::make_unique<FloatLane> (s, ParameterKind::trim, 0, "trim", "Output trim",
                                      juce::NormalisableRange<float> (-24.0f, 24.0f), 0.0f,
                                      FloatLook().withLabel ("dB").withStringFromValueFunction (inDb)));
    follow();
}

void Parameters::add (juce::AudioProcessor& processor, ParameterKind kind, int place,
                      std::unique_ptr<juce::RangedAudioParameter> parameter)
{
    entries.push_back ({ kind, place, parameter.get() });
    processor.addParameter (parameter.release());
}

juce::RangedAudioParameter* Parameters::find (ParameterKind kind, int place) const
{
    for (const Entry& entry : entries)
        if (entry.kind == kind && entry.place == place)
            return entry.parameter;
    return nullptr;
}

bool Parameters::follow()
{
    const ControlMap map = session.controls.map();
    bool renamed = false;
    for (const Entry& entry : entries)
    {
        if (entry.kind == ParameterKind::knob)
        {
            const PanelControl* knob = map.knobAt (entry.place);
            renamed |=
                static_cast<FloatLane*> (entry.parameter)
                    ->rename (knob ? juce::String::fromUTF8 (knob->name.c_str()) : "unused " + numbered ("knob ", entry.place));
        }
        if (entry.kind == ParameterKind::lever)
        {
            const PanelControl* lever = map.leverAt (entry.place);
            renamed |= static_cast<IntLane*> (entry.parameter)
                           ->rename (lever ? juce::String::fromUTF8 (lever->name.c_str())
                                           : "unused " + numbered ("lever ", entry.place));
        }

        // The session is the truth: a host that moved a parameter has moved the session already.
        const auto value = static_cast<float> (session.automation.hostValue (entry.kind, entry.place));
        const float wanted = entry.parameter->convertTo0to1 (value);
        if (! (std::abs (entry.parameter->getValue() - wanted) <= 1e-6f)) // nor a number
            entry.parameter->setValueNotifyingHost (wanted);
    }
    return renamed;
}

HostLink Parameters::link()
{
    HostLink host;
    host.move = [this] (ParameterKind kind, int place, double value)
    {
        if (auto* parameter = find (kind, place))
            parameter->setValueNotifyingHost (parameter->convertTo0to1 (static_cast<float> (value)));
    };
    host.begin = [this] (ParameterKind kind, int place)
    {
        if (auto* parameter = find (kind, place))
            parameter->beginChangeGesture();
    };
    host.end = [this] (ParameterKind kind, int place)
    {
        if (auto* parameter = find (kind, place))
            parameter->endChangeGesture();
    };
    return host;
}
}
