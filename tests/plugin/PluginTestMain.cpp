#define CATCH_CONFIG_RUNNER
#include <catch2/catch.hpp>

#include <juce_events/juce_events.h>

int main (int count, char** values)
{
    const juce::ScopedJuceInitialiser_GUI juceIsUp; // this thread is the message thread
    return Catch::Session().run (count, values);
}
