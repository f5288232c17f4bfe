#pragma once

#include "job/Job.h"

#include <catch2/catch.hpp>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>

#include <unistd.h>

namespace coldiron::support
{
/** A folder of this test's own, emptied when it begins. */
inline std::filesystem::path freshFolder (const std::string& name)
{
    const auto folder = std::filesystem::temp_directory_path() / ("coldiron-" + name + "-" + std::to_string (::getpid()));
    std::filesystem::remove_all (folder);
    std::filesystem::create_directories (folder);
    return folder;
}

inline PresetFolders shippedPresets() { return PresetFolders { { std::filesystem::path (COLDIRON_SOURCE) / "presets" } }; }

inline Job jobFrom (const std::string& text, const std::filesystem::path& folder)
{
    Diagnostics diagnostics;
    const auto job = readJobText (text, folder, shippedPresets(), diagnostics);
    for (const auto& fault : diagnostics)
        UNSCOPED_INFO (fault.text());
    REQUIRE (job.has_value());
    return *job;
}

inline void writeText (const std::filesystem::path& file, const std::string& text) { std::ofstream (file) << text; }

/** Runs a command line; its exit code. */
inline int run (const std::string& line)
{
    const int status = std::system (line.c_str());
    return WEXITSTATUS (status);
}

/** Runs the built `coldiron` on the shipped presets. */
inline int coldironCommand (const std::string& arguments)
{
    return run ("COLDIRON_PRESETS='" COLDIRON_SOURCE "/presets' '" COLDIRON_COMMAND "' " + arguments);
}

/** The file an option was rendered to: its name begins with the letter. */
inline std::filesystem::path renderedFile (const std::filesystem::path& folder, const std::string& letter)
{
    for (const auto& entry : std::filesystem::directory_iterator (folder))
        if (entry.path().extension() == ".wav" && entry.path().filename().string().rfind (letter, 0) == 0)
            return entry.path();
    FAIL ("no rendering of option " << letter);
    return {};
}
}
