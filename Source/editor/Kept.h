#pragma once

#include <juce_data_structures/juce_data_structures.h>

namespace coldiron
{
/** Where what is remembered from one time to the next lies: Coldiron.NAME in a folder of our own among the user's settings. */
inline juce::PropertiesFile::Options keptOptions (const juce::String& name)
{
    juce::PropertiesFile::Options options;
    options.applicationName = "Coldiron";
    options.filenameSuffix = "." + name;
    options.osxLibrarySubFolder = "Application Support";
    options.folderName = juce::File::getSpecialLocation (juce::File::userApplicationDataDirectory).getChildFile ("Coldiron").getFullPathName();
    options.millisecondsBeforeSaving = 500;
    return options;
}
}
