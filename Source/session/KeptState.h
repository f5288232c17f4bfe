#pragma once

#include "session/JobTree.h"

/** Reading a state that a host kept: what is missing or of another kind counts as not there. */
namespace coldiron::kept
{
double numberIn (const JobTree&, const char* key, double low, double high, double otherwise);
std::string textIn (const JobTree&, const char* key);
bool flagIn (const JobTree&, const char* key);
}
