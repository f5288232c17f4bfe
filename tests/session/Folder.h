#pragma once

#include <unistd.h>

#include <filesystem>
#include <string>

/** A folder of this process alone, empty at first and gone at the end. */
struct ScratchFolder
{
    std::filesystem::path path;

    explicit ScratchFolder (const char* name)
        : path (std::filesystem::temp_directory_path() / ("coldiron-" + std::string (name) + "-" + std::to_string (::getpid())))
    {
        std::filesystem::remove_all (path);
        std::filesystem::create_directories (path);
    }
    ~ScratchFolder() { std::filesystem::remove_all (path); }
    ScratchFolder (const ScratchFolder&) = delete;
    ScratchFolder& operator= (const ScratchFolder&) = delete;
};
