#include "cli/Sources.h"

#include "cli/Command.h"
#include "takes/ImpulseFile.h"

#include <iostream>

namespace coldiron::cli
{
namespace fs = std::filesystem;

namespace
{
/** A fault of a file that the job names in that line: with the name that stands there, more or less. */
Diagnostic namedIn (const Job& job, int line, const fs::path& file, std::string words)
{
    const auto front = file.string();
    const auto folder = fs::absolute (job.file).parent_path().lexically_normal();
    if (words.rfind (front, 0) == 0)
        words = file.lexically_proximate (folder).string() + words.substr (front.size());
    return { job.file.string(), line, words };
}
}

Diagnostic takeFault (const Job& job, int take, const TakeError& error)
{
    const auto& entry = job.takes.at (static_cast<size_t> (take));
    return namedIn (job, entry.line, entry.file, error.what());
}

std::set<int> allTakes (const Job& job)
{
    std::set<int> takes;
    for (int take = 0; take < static_cast<int> (job.takes.size()); ++take)
        takes.insert (take);
    return takes;
}

Diagnostics sourceFaults (const Job& job, const std::set<int>& takes, const OutputChainChoice& after)
{
    Diagnostics diagnostics;
    std::set<fs::path> usable; // a recording may serve several takes
    for (const int take : takes)
        try
        {
            const auto& file = job.takes.at (static_cast<size_t> (take)).file;
            if (usable.count (file) == 0)
                checkTake (file);
            usable.insert (file);
        }
        catch (const TakeError& error)
        {
            diagnostics.push_back (takeFault (job, take, error));
        }
    if (after.sound == OutputSound::file)
        try
        {
            readImpulse (after.file);
        }
        catch (const TakeError& error)
        {
            const bool fromJob = job.outputChain && job.outputChain->file == after.file;
            diagnostics.push_back (fromJob ? namedIn (job, job.outputChainLine, after.file, error.what())
                                           : Diagnostic { {}, 0, error.what() });
        }
    return diagnostics;
}

void checkSources (const Job& job, const std::set<int>& takes, const OutputChainChoice& after)
{
    const auto diagnostics = sourceFaults (job, takes, after);
    for (const auto& fault : diagnostics)
        std::cerr << fault.text() << "\n";
    if (! diagnostics.empty())
        throw JobDiagnostic ("");
}
}
