#include "cli/Command.h"
#include "cli/Targets.h"
#include "paper/WorkOrder.h"

#include <CLI/CLI.hpp>

#include <ctime>

namespace coldiron::cli
{
namespace
{
std::string today()
{
    const auto now = std::time (nullptr);
    std::tm parts {};
    char text[32];
    return localtime_r (&now, &parts) != nullptr && std::strftime (text, sizeof text, "%Y-%m-%d", &parts) > 0 ? text
                                                                                                              : std::string();
}
}

void addWorkOrder (CLI::App& app, Common& common, Action& action)
{
    struct WorkOrderArguments
    {
        std::string job, option, out, date = today();
        bool replace = false;
    };
    auto* command =
        app.add_subcommand ("workorder", "The whole job for the bench: parts, steps, drawing, readings; one file to print");
    auto asked = std::make_shared<WorkOrderArguments>();
    command->add_option ("JOB", asked->job, "The job's file")->required();
    command->add_option ("--option", asked->option, "Letter of the option that is built")->required();
    command->add_option ("--out", asked->out, "HTML file to write; - is standard output")->required();
    command->add_option ("--date", asked->date, "The date on it; empty for none")->capture_default_str();
    command->add_flag ("--replace", asked->replace, "Write over a file that is there");
    addPresetFolders (*command, common);
    command->callback (
        [asked, &common, &action]
        {
            action = [asked, &common]
            {
                const auto job = openJob (asked->job, common);
                const auto& option = optionOf (job, asked->option);
                checkTarget (asked->out, keptFiles (job), asked->replace);
                writeWhole (asked->out, workOrderHtml (job, option, asked->date));
                return exitOk;
            };
        });
}
}
