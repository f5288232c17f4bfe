#include "job/Faults.h"

#include "job/Limits.h"
#include "job/Printable.h"

#include <algorithm>

namespace coldiron
{
std::string Fault::text() const
{
    return printable ((file.empty() ? std::string() : file + (line > 0 ? ":" + std::to_string (line) : "") + ": ") + message);
}

Faults::Faults (std::initializer_list<Fault> faults)
{
    for (const auto& fault : faults)
        push_back (fault);
}

void Faults::push_back (Fault fault)
{
    ++count;
    if (isFull())
        return;
    if (fault.message.size() > limits::message)
        fault.message = shortened (fault.message, limits::message) + "...";
    const bool known = std::any_of (list.begin(), list.end(), [&] (const Fault& other)
                                    { return other.line == fault.line && other.file == fault.file && other.message == fault.message; });
    if (known)
        return;
    if (list.size() == most)
        fault = { fault.file, 0, "more than " + std::to_string (most) + " faults; mend these first and try again" };
    list.push_back (std::move (fault));
}

void Faults::clear()
{
    list.clear();
    count = 0;
}
}
