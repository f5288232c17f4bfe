#include "cli/Command.h"
#include "cli/Targets.h"
#include "paper/TakeCard.h"

#include <CLI/CLI.hpp>

namespace coldiron::cli
{
void addCard (CLI::App& app, Common& common, Action& action)
{
    struct CardArguments
    {
        std::string job, out;
        bool replace = false;
    };
    auto* command = app.add_subcommand ("card", "How to record the takes for this guitar, one page to print");
    auto asked = std::make_shared<CardArguments>();
    command->add_option ("JOB", asked->job, "The job's file")->required();
    command->add_option ("--out", asked->out, "HTML file to write; - is standard output")->required();
    command->add_flag ("--replace", asked->replace, "Write over a file that is there");
    addPresetFolders (*command, common);
    command->callback (
        [asked, &common, &action]
        {
            action = [asked, &common]
            {
                const auto job = openJob (asked->job, common);
                checkTarget (asked->out, keptFiles (job), asked->replace);
                writeWhole (asked->out, takeCardHtml (job.guitar, job.title, job.wish));
                return exitOk;
            };
        });
}
}
