#include "cli/Command.h"
#include "paper/Spice.h"

#include <CLI/CLI.hpp>

namespace coldiron::cli
{
void addSpice (CLI::App& app, Common& common, Action& action)
{
    struct SpiceArguments
    {
        std::string job, option;
    };
    auto* command = app.add_subcommand ("spice", "The option's circuit as a netlist, on standard output");
    auto asked = std::make_shared<SpiceArguments>();
    command->add_option ("JOB", asked->job, "The job's file")->required();
    command->add_option ("--option", asked->option, "Letter of the option, or `recorded`")->required();
    addPresetFolders (*command, common);
    command->callback (
        [asked, &common, &action]
        {
            action = [asked, &common]
            {
                const auto job = openJob (asked->job, common);
                writeWhole ("-", spiceNetlist (job, isRecorded (asked->option) ? nullptr : &optionOf (job, asked->option)));
                return exitOk;
            };
        });
}
}
