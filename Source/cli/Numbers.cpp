#include "cli/Numbers.h"

#include <CLI/CLI.hpp>

#include <cmath>
#include <cstdlib>

namespace coldiron::cli
{
void refuseWhatIsNoNumber (CLI::App& app)
{
    const auto whyNot = [] (std::string& text)
    {
        char* end = nullptr;
        const double value = std::strtod (text.c_str(), &end);
        const bool isNumber = ! text.empty() && *end == '\0' && std::isfinite (value);
        return isNumber ? std::string() : "found \"" + text + "\", expected a number";
    };
    const CLI::Validator finite (whyNot, "");
    for (auto* command : app.get_subcommands ({}))
        for (auto* option : command->get_options())
            if (option->get_type_name().rfind (CLI::detail::type_name<double>(), 0) == 0)
                option->check (finite);
}
}
