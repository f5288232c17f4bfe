// What a tag says: what stands on it, its tip, and what a screen reader is told.

#include "editor/Accessible.h"
#include "editor/TagCard.h"
#include "editor/Words.h"
#include "session/Session.h"
#include "wording/ConfidenceWords.h"
#include "wording/FigureWords.h"
#include "wording/Say.h"
#include "wording/TakeWords.h"

namespace coldiron
{
double TagCard::levelOf (const Report& of) { return of.figures.loudnessLu.value_or (of.figures.levelDb); }

void TagCard::refresh()
{
    auto& session = ui.session;
    const auto job = session.jobEditor.job();
    heard = session.monitor.heard() == shown;
    working = session.reports.isWorking (shown);
    report = session.reports.report (shown);
    below.clear();
    if (shown == asRecorded)
    {
        name = "As recorded";
        const int take = session.takes.takeFor (asRecorded);
        if (take >= 0 && take < static_cast<int> (job->takes.size()))
            below = words::settingInWords (job->takes[static_cast<size_t> (take)].harness,
                                           job->takes[static_cast<size_t> (take)].setting);
        pill = job->takes.empty() ? "no take" : "the take";
    }
    else
    {
        const auto* option = job->find (letterOf (shown));
        name = option != nullptr ? words::from (option->name) : juce::String();
        if (option != nullptr && name.isEmpty())
            name = option->rewires.empty() ? "As it is" : words::from (option->rewires.front().name);
        pill = {};
        if (report != nullptr && ! report->silent)
            pill = juce::String::fromUTF8 (report->figures.confidence.isEstimated() ? "\xe2\x89\x88 " : "= ")
                   + words::from (wording::weakerMark (report->figures.confidence));
    }
    setTitle (shown == asRecorded ? juce::String ("Now, as recorded") : words::from (letterOf (shown)) + ", " + name);
    setToggleState (heard, juce::dontSendNotification);
    auto tip = name + (below.isNotEmpty() ? ". " + below : juce::String());
    if (report != nullptr && shown != asRecorded && ! report->silent)
    {
        tip << ". " << words::from (wording::explanation (report->figures.confidence));
        if (report->choice.take >= 0)
            tip << " Derived " << words::from (wording::derivedFrom (report->choice)) << ".";
        if (const auto surer = wording::surerTake (report->choice); ! surer.empty())
            tip << " " << words::from (wording::capitalised (surer)) << ".";
        if (const auto noise = wording::noiseTrust (report->figures.trust); ! noise.empty())
            tip << " " << words::from (wording::capitalised (noise));
    }
    setTooltip (tip);
    repaint();
}

juce::String TagCard::figuresInWords() const
{
    if (report == nullptr || ! report->complete)
        return "Computing";
    if (report->silent)
        return "Silent";
    auto words = "Level " + words::db (levelOf (*report));
    if (report->figures.clarityDb)
        words << ", clarity " << words::db (*report->figures.clarityDb);
    words << ", hum " << words::humInWords (*report);
    return pill.isEmpty() ? words : words + ". " + pill.retainCharacters ("abcdefghijklmnopqrstuvwxyz ").trim();
}

std::unique_ptr<juce::AccessibilityHandler> TagCard::createAccessibilityHandler()
{
    return accessible (*this, juce::AccessibilityRole::radioButton,
                       { .description = [this] { return figuresInWords(); }, .isChecked = [this] { return heard; } },
                       juce::AccessibilityActions()
                           .addAction (juce::AccessibilityActionType::press, [this] { clicked(); })
                           .addAction (juce::AccessibilityActionType::showMenu, [this] { showMenu(); }));
}
}
