#include "files/Log.h"

#include "files/Printable.h"

#include <iostream>

namespace coldiron
{
void logFault (const std::string& message)
{
    std::cerr << printable ("coldiron: " + message) + "\n" << std::flush; // at once: other threads write there, too
}
}
