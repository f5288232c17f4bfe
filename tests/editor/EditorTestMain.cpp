#define CATCH_CONFIG_RUNNER
#include <catch2/catch.hpp>

#include <juce_gui_basics/juce_gui_basics.h>

int main (int count, char** values)
{
    // Told that it is an application, JUCE forgives an X server without a window manager.
    juce::JUCEApplicationBase::createInstance = []() -> juce::JUCEApplicationBase* { return nullptr; };
    const juce::ScopedJuceInitialiser_GUI juceIsUp; // this thread is the message thread
    return Catch::Session().run (count, values);
}
