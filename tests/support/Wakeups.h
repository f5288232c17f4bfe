#pragma once

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <string>

namespace coldiron::support
{
/** How often each thread of this process gave the processor away to wait, by thread; Linux (proc(5), voluntary_ctxt_switches).
    A thread that sleeps without being woken counts no further. */
struct ThreadWaits
{
    std::string name; ///< up to 15 letters
    long waits = 0;
};

inline std::map<std::string, ThreadWaits> threadWaits()
{
    std::map<std::string, ThreadWaits> threads;
    for (const auto& task : std::filesystem::directory_iterator ("/proc/self/task"))
    {
        std::ifstream status (task.path() / "status");
        ThreadWaits thread;
        for (std::string line; std::getline (status, line);)
        {
            if (line.starts_with ("Name:"))
                thread.name = line.substr (line.find_first_not_of (" \t", 5));
            if (line.starts_with ("voluntary_ctxt_switches:"))
                thread.waits = std::stol (line.substr (line.find (':') + 1));
        }
        threads[task.path().filename().string()] = thread;
    }
    return threads;
}

/** How much further those of one name's beginning counted, the busiest of them. @param seen  how many there are */
inline long mostWaits (const std::map<std::string, ThreadWaits>& before, const std::map<std::string, ThreadWaits>& after,
                       const std::string& name, int* seen = nullptr)
{
    long most = 0;
    for (const auto& [id, thread] : after)
        if (const auto then = before.find (id); thread.name.starts_with (name) && then != before.end())
        {
            most = std::max (most, thread.waits - then->second.waits);
            if (seen != nullptr)
                ++*seen;
        }
    return most;
}
}
