#include "cli/Command.h"
#include "cli/Numbers.h"
#include "cli/SafeOutput.h"
#include "cli/Signals.h"
#include "files/Printable.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <filesystem>
#include <iostream>
#include <new>
#include <stdexcept>

using namespace coldiron::cli;

namespace
{
int tooLittleMemory()
{
    std::cerr << "coldiron: the memory of this machine is not enough for it; close other programs, or use a shorter take\n";
    return exitBadJob;
}

/** One line, as every fault is. */
std::string usageLine (const CLI::App*, const CLI::Error& error)
{
    std::string words = error.what();
    std::replace (words.begin(), words.end(), '\n', ' ');
    return "coldiron: " + words + "; --help says what there is\n";
}

int runCommand (int argc, char** argv)
{
    const SafeOutput out (std::cout), err (std::cerr);
    CLI::App app { "Hear a guitar rewire while the soldering iron is still cold.", "coldiron" };
    app.set_version_flag ("--version", "coldiron " COLDIRON_VERSION);
    app.require_subcommand (1);
    app.failure_message (usageLine);

    Common common;
    Action action;
    for (const auto add : { addNew, addOffer, addCheck, addResponse, addRender, addCompare, addOhms, addSpice, addPresets, addFit,
                            addCard, addWorkOrder })
        add (app, common, action);
    refuseWhatIsNoNumber (app);

    try
    {
        app.parse (argc, argv);
    }
    catch (const CLI::ParseError& error)
    {
        return app.exit (error) == 0 ? exitOk : exitUsage;
    }

    try
    {
        return action();
    }
    catch (const UsageError& fault)
    {
        std::cerr << "coldiron: " << coldiron::printable (fault.what()) << "\n";
        return exitUsage;
    }
    catch (const std::bad_alloc&)
    {
        return tooLittleMemory();
    }
    catch (const std::length_error&)
    {
        return tooLittleMemory();
    }
    catch (const std::filesystem::filesystem_error& fault) // its own text is for programmers
    {
        std::cerr << coldiron::printable (fault.path1().string() + ": " + fault.code().message()) << "\n";
        return exitBadJob;
    }
    catch (const std::exception& fault)
    {
        if (*fault.what() != '\0') // empty: said already
            std::cerr << coldiron::printable (fault.what()) << "\n";
        return exitBadJob;
    }
}
}

int main (int argc, char** argv)
{
    prepareProcess();
    return afterPrinting (runCommand (argc, argv));
}
