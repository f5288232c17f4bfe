#pragma once

#include <string>

namespace coldiron
{
/** What an edit of the job needs: JobEditor::edit (pointer, json, name). Not to be made where there is a refusal. */
struct JobEdit
{
    std::string pointer, json, name;
    std::string note;    ///< worth telling once it is done
    std::string refusal; ///< in words, for the place where it was typed; empty: sound

    bool sound() const { return refusal.empty(); }
};

/** An edit that is not to be made, and why. */
JobEdit refused (const std::string& words);
}
