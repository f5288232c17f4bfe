#pragma once

#include "job/Job.h"

#include <catch2/catch.hpp>

#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <string>

namespace coldiron::support
{
namespace fs = std::filesystem;

/** A folder of one test's own, removed after it. */
struct Folder
{
    fs::path path;

    Folder()
    {
        static int count = 0;
        path = fs::temp_directory_path() / ("coldiron-job-" + std::to_string (getpid()) + "-" + std::to_string (count++));
        fs::remove_all (path);
        fs::create_directories (path);
    }
    ~Folder()
    {
        std::error_code ignored;
        fs::remove_all (path, ignored);
    }
    Folder (const Folder&) = delete;
    Folder& operator= (const Folder&) = delete;

    fs::path write (const std::string& name, const std::string& bytes) const
    {
        const auto file = path / name;
        fs::create_directories (file.parent_path());
        std::ofstream (file, std::ios::binary) << bytes;
        return file;
    }
};

inline PresetFolders shipped() { return PresetFolders { { fs::path (COLDIRON_SOURCE) / "presets" } }; }

inline Diagnostics faultsOf (const std::string& jobText, const PresetFolders& presets = shipped())
{
    Diagnostics diagnostics;
    const auto job = readJobText (jobText, "/", presets, diagnostics);
    REQUIRE (job.has_value() == diagnostics.empty());
    return diagnostics;
}

/** Whether there is a fault at that line that speaks of all the words. */
inline bool has (const Diagnostics& diagnostics, int line, const std::vector<std::string>& words)
{
    for (const auto& fault : diagnostics)
    {
        bool all = fault.line == line;
        for (const auto& word : words)
            all = all && fault.message.find (word) != std::string::npos;
        if (all)
            return true;
    }
    for (const auto& fault : diagnostics)
        UNSCOPED_INFO (fault.text());
    return false;
}
}
