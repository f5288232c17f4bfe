// What is heard behind the jack, and the headroom kept for it.
#include "plugin/session/Session.h"

namespace coldiron
{
void Session::setStandsAlone()
{
    const std::scoped_lock lock (mutex);
    standsAlone = true;
    shop.headroomKept = true;
    documentChanged (false);
}

double Session::tailSeconds() const
{
    constexpr double circuitAndFade = 0.1;
    const auto after = shop.after();
    return circuitAndFade + (after->impulse ? static_cast<double> (after->impulse->samples.size()) / after->impulse->sampleRate : 0.0);
}

bool Session::setAfterJack (const AfterJackChoice& choice)
{
    JobTree entry;
    entry["sound"] = choice.sound == AfterSound::amplifier ? "amplifier" : choice.sound == AfterSound::file ? "file" : "none";
    if (! choice.file.empty())
    {
        const std::scoped_lock lock (mutex);
        const auto near = document.folder().empty() ? std::filesystem::path() : choice.file.lexically_relative (document.folder());
        entry["file"] = (near.empty() || *near.begin() == ".." ? choice.file : near).string();
    }
    entry["drive_db"] = choice.driveDb;
    return edit ("/after_the_jack", entry.dump(), "Sound after the jack");
}

void Session::setHeadroomKept (bool kept)
{
    shop.headroomKept = kept;
    shop.heardRevision.fetch_add (1);
    reporter.nudge();
}
}
