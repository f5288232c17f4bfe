#pragma once

#include <string>

namespace coldiron::cli
{
/** A line of progress on stderr, on a terminal only; gone when it ends. */
class Progress
{
public:
    explicit Progress (std::string what);
    ~Progress();
    Progress (const Progress&) = delete;
    Progress& operator= (const Progress&) = delete;
    void show (double share); ///< 0..1
    void clear();             ///< gone before it ends

private:
    std::string label;
    bool onTerminal = false;
    int shown = -1; ///< percent
};
}
