#pragma once

#include "response/Confidence.h"

#include <string>
#include <vector>

namespace coldiron::wording
{
std::string similarity (Similarity); ///< "same coils", "close", "fair", "rough"
std::string provenance (Provenance); ///< "measured", "from ohms", "assumed"

/** The weaker of the two marks: what stands in the pill of an option. */
std::string weakerMark (const Confidence&);

/** A mark and what it means. */
struct MarkMeaning
{
    std::string mark;     ///< "rough"
    std::string sentence; ///< begins small: it stands behind the mark and a colon
};

/** Of each mark that needs saying: a measured guitar's does not. */
std::vector<MarkMeaning> markMeanings (const Confidence&);

/** The same as sentences of their own, one after another. */
std::string explanation (const Confidence&);
}
