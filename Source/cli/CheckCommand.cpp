#include "cli/Command.h"
#include "cli/Sources.h"

#include <CLI/CLI.hpp>
#include <iostream>

namespace coldiron::cli
{
namespace
{
int check (const std::string& path, const Common& common)
{
    const auto job = openJob (path, common);
    checkSources (job, allTakes (job), job.outputChain.value_or (OutputChainChoice {}));
    std::cout << format ("%s: fine; %zu take%s, %zu option%s\n", path.c_str(), job.takes.size(), job.takes.size() == 1 ? "" : "s",
                         job.options.size(), job.options.size() == 1 ? "" : "s");
    return exitOk;
}
}

void addCheck (CLI::App& app, Common& common, Action& action)
{
    auto* command = app.add_subcommand ("check", "Read a job and all it names; report every fault at once");
    auto path = std::make_shared<std::string>();
    command->add_option ("JOB", *path, "The job's file")->required();
    addPresetFolders (*command, common);
    command->callback ([path, &common, &action] { action = [path, &common] { return check (*path, common); }; });
}
}
