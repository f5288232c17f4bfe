#include "session/OutputStage.h"

#include "session/KeptState.h"

namespace coldiron
{
OutputStage::OutputStage (SharedState& s, JobEditor& e, Automation& a) : shared (s), editor (e), automation (a) {}

void OutputStage::setStandsAlone()
{
    standsAlone = true;
    shared.headroomKept = true;
    editor.republish();
}

OutputChainChoice OutputStage::usualChain() const
{
    return { standsAlone.load() ? OutputSound::amplifier : OutputSound::none, {}, 0.0 };
}

double OutputStage::tailSeconds() const
{
    constexpr double circuitAndFade = 0.1;
    const auto after = shared.after();
    return circuitAndFade
           + (after->impulse ? static_cast<double> (after->impulse->samples.size()) / after->impulse->sampleRate : 0.0);
}

bool OutputStage::setChain (const OutputChainChoice& choice)
{
    JobTree entry;
    entry["sound"] = choice.sound == OutputSound::amplifier ? "amplifier" : choice.sound == OutputSound::file ? "file" : "none";
    if (! choice.file.empty())
    {
        const auto folder = editor.folder();
        const auto near = folder.empty() ? std::filesystem::path() : choice.file.lexically_relative (folder);
        entry["file"] = (near.empty() || *near.begin() == ".." ? choice.file : near).string();
    }
    entry["drive_db"] = choice.driveDb;
    return editor.edit ("/after_the_jack", entry.dump(), "Sound after the jack");
}

void OutputStage::setHeadroomKept (bool kept)
{
    shared.headroomKept = kept;
    shared.announceHeard();
}

void OutputStage::setTrimDb (double db) { automation.move (ParameterKind::trim, 0, db); }

void OutputStage::keep (JobTree& state) const
{
    state["headroom"] = headroomKept();
    state["trim_db"] = trimDb();
}

void OutputStage::restore (const JobTree& state)
{
    shared.headroomKept = state.contains ("headroom") ? kept::flagIn (state, "headroom") : standsAlone.load();
    shared.trimDb = kept::numberIn (state, "trim_db", -24.0, 24.0, 0.0);
}
}
