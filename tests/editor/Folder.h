#pragma once

#include "takes/TakeFile.h"

#include <juce_core/juce_core.h>

#include <cmath>
#include <filesystem>

namespace windows
{
/** A folder of a test's own, gone with it. */
struct Folder
{
    std::filesystem::path path =
        std::filesystem::temp_directory_path() / ("coldiron-window-" + std::to_string (juce::Time::getHighResolutionTicks()));
    Folder() { std::filesystem::create_directories (path); }
    ~Folder()
    {
        std::error_code ignored;
        std::filesystem::remove_all (path, ignored);
    }

    std::filesystem::path take (const std::string& name, int seconds = 1) const
    {
        std::vector<float> tone (48000 * static_cast<size_t> (seconds));
        for (size_t i = 0; i < tone.size(); ++i)
            tone[i] = 0.2f * static_cast<float> (std::sin (0.02 * static_cast<double> (i)));
        coldiron::TakeWriter writer (path / name, 48000.0, 1, false);
        writer.write ({ tone });
        writer.finish();
        return path / name;
    }
};
}
