// What is heard behind the jack, and the headroom kept for it.
#include "session/Session.h"

namespace coldiron
{
void Session::setStandsAlone()
{
    const std::scoped_lock lock (mutex);
    standsAlone = true;
    shared.headroomKept = true;
    documentChanged (false);
}

double Session::tailSeconds() const
{
    constexpr double circuitAndFade = 0.1;
    const auto after = shared.after();
    return circuitAndFade
           + (after->impulse ? static_cast<double> (after->impulse->samples.size()) / after->impulse->sampleRate : 0.0);
}

bool Session::setOutputChain (const OutputChainChoice& choice)
{
    JobTree entry;
    entry["sound"] = choice.sound == OutputSound::amplifier ? "amplifier" : choice.sound == OutputSound::file ? "file" : "none";
    if (! choice.file.empty())
    {
        const std::scoped_lock lock (mutex);
        const auto near =
            document.folder().empty() ? std::filesystem::path() : choice.file.lexically_relative (document.folder());
        entry["file"] = (near.empty() || *near.begin() == ".." ? choice.file : near).string();
    }
    entry["drive_db"] = choice.driveDb;
    return edit ("/after_the_jack", entry.dump(), "Sound after the jack");
}

void Session::setHeadroomKept (bool kept)
{
    shared.headroomKept = kept;
    shared.heardRevision.fetch_add (1);
    reporter.wake();
}
}
