#pragma once

#include <juce_data_structures/juce_data_structures.h>

namespace coldiron
{
/** A folder of our own among the user's settings. */
inline juce::File keptFolder()
{
    return juce::File::getSpecialLocation (juce::File::userApplicationDataDirectory).getChildFile ("Coldiron");
}

/** Where what is remembered from one time to the next lies: Coldiron.NAME in that folder. */
inline juce::PropertiesFile::Options keptOptions (const juce::String& name)
{
    juce::PropertiesFile::Options options;
    options.applicationName = "Coldiron";
    options.filenameSuffix = "." + name;
    options.osxLibrarySubFolder = "Application Support";
    options.folderName = keptFolder().getFullPathName();
    options.millisecondsBeforeSaving = 500;
    return options;
}
}
