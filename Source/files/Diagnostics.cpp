#include "files/Diagnostics.h"

#include "files/Limits.h"
#include "files/Printable.h"

#include <algorithm>

namespace coldiron
{
std::string Diagnostic::text() const
{
    return printable ((file.empty() ? std::string() : file + (line > 0 ? ":" + std::to_string (line) : "") + ": ") + message);
}

Diagnostics::Diagnostics (std::initializer_list<Diagnostic> diagnostics)
{
    for (const auto& fault : diagnostics)
        push_back (fault);
}

void Diagnostics::push_back (Diagnostic fault)
{
    ++count;
    if (isFull())
        return;
    if (fault.message.size() > limits::message)
        fault.message = shortened (fault.message, limits::message) + "...";
    const bool known =
        std::any_of (list.begin(), list.end(),
                     [&] (const Diagnostic& other)
                     { return other.line == fault.line && other.file == fault.file && other.message == fault.message; });
    if (known)
        return;
    if (list.size() == most)
        fault = { fault.file, 0, "more than " + std::to_string (most) + " faults; mend these first and try again" };
    list.push_back (std::move (fault));
}

void Diagnostics::clear()
{
    list.clear();
    count = 0;
}
}
