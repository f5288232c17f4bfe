#include "job/KeptFiles.h"

#include "files/WriteFile.h"

namespace coldiron
{
namespace fs = std::filesystem;

namespace
{
bool isSame (const fs::path& a, const fs::path& b)
{
    std::error_code fault;
    if (fs::exists (a, fault) && fs::exists (b, fault))
        return fs::equivalent (a, b, fault);
    try
    {
        return behindLinks (a) == behindLinks (b);
    }
    catch (const std::system_error&) // no such folder: nothing can be written there anyway
    {
        return fs::absolute (a, fault).lexically_normal() == fs::absolute (b, fault).lexically_normal();
    }
}
}

std::vector<KeptFile> keptFiles (const Job& job, const fs::path& impulse)
{
    std::vector<KeptFile> kept { { job.file, "the job itself" } };
    for (const auto& take : job.takes)
        kept.push_back ({ take.file, "a take of the job" });
    if (job.outputChain)
        kept.push_back ({ job.outputChain->file, "the job's impulse response" });
    kept.push_back ({ impulse, "the impulse response" });
    return kept;
}

std::string whyKept (const fs::path& target, const std::vector<KeptFile>& kept)
{
    for (const auto& entry : kept)
        if (! entry.file.empty() && isSame (target, entry.file))
            return "is " + entry.what + " and was left as it is; choose another name or folder";
    return "";
}
}
