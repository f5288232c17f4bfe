#include "cli/Targets.h"

#include "cli/Command.h"
#include "files/WriteFile.h"

#include <unistd.h>

namespace coldiron::cli
{
namespace fs = std::filesystem;

std::string whyNotWritten (const std::string& target, const std::vector<KeptFile>& kept, bool replaces)
{
    if (target == "-")
        return "";
    if (auto why = whyKept (target, kept); ! why.empty())
        return why;
    std::error_code fault;
    if (fs::is_directory (target, fault))
        return "is a folder; name a file in it";
    if (! replaces && wouldReplace (target))
        return "is there already and was left as it is; say --replace to write over it";
    return "";
}

void checkTarget (const std::string& target, const std::vector<KeptFile>& kept, bool replaces)
{
    if (const auto why = whyNotWritten (target, kept, replaces); ! why.empty())
        throw JobDiagnostic (target + ": " + why);
}

void checkTakeTargets (const fs::path& folder, const std::vector<std::string>& names, const std::vector<KeptFile>& kept)
{
    for (const auto& name : names)
    {
        const auto target = folder / name;
        checkTarget (target.string(), kept, true);
        std::error_code fault;
        if (fs::is_fifo (target, fault) || fs::is_socket (target, fault))
            throw JobDiagnostic (target.string()
                                 + ": is a pipe, and a recording says in front how long it is; choose another folder");
        if (fs::is_regular_file (target, fault) && ::access (target.c_str(), W_OK) != 0)
            throw JobDiagnostic (target.string() + ": is there already and write-protected; it was left as it is");
    }
}
}
