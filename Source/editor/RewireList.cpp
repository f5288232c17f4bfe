#include "editor/RewireList.h"

#include "editor/JobWords.h"
#include "job/FirstArguments.h"
#include "response/PickupsHeard.h"
#include "session/Session.h"

#include <algorithm>

namespace coldiron
{
namespace
{
constexpr int listWidth = 384, askPitch = 42;

juce::String wishTitle (const std::string& wish) { return wish.empty() ? juce::String ("Other") : words::title (wish); }

/** The wishes in the order that a player brings them. */
size_t wishRank (const std::string& wish)
{
    static const std::vector<std::string> order { "quieter",     "brighter",   "darker", "louder", "clear when turned down",
                                                  "more voices", "independent" };
    return static_cast<size_t> (std::find (order.begin(), order.end(), wish) - order.begin());
}
}

RewireList::RewireList (UiContext& d, OptionId t) : Overlay (d), target (t), add (d, "Add", true)
{
    setTitle ("Pick a rewire");
    Diagnostics ignored;
    const auto presets = ui.session.jobEditor.presets();
    for (const auto& name : presets.list ("rewires"))
        if (auto info = readRewireInfo (name, presets, ignored))
            infos.push_back (std::move (*info));
    std::stable_sort (infos.begin(), infos.end(),
                      [] (const RewireInfo& a, const RewireInfo& b) { return wishRank (a.wish) < wishRank (b.wish); });
    if (target == asRecorded)
        for (const auto& name : presets.list ("starters"))
            if (auto starter = readStarter (name, presets, ignored))
                starters.push_back (std::move (*starter));
    std::stable_sort (starters.begin(), starters.end(),
                      [] (const Starter& a, const Starter& b) { return wishRank (a.wish) < wishRank (b.wish); });

    dressField (search, colours());
    search.setTextToShowWhenEmpty ("Search: quieter, split, bleed", colours().mute);
    search.setTitle ("Search rewires");
    search.onTextChange = [this] { filter(); };
    search.onKeyFirst = [this] (const juce::KeyPress& key)
    { return (key == juce::KeyPress::upKey || key == juce::KeyPress::downKey) && keyPressed (key); };
    search.onEscapeKey = [this]
    {
        if (onClose)
            onClose();
    };
    search.onReturnKey = [this] { apply(); };
    list.setModel (this);
    list.setRowHeight (30);
    list.setColour (juce::ListBox::backgroundColourId, juce::Colours::transparentBlack);
    list.setTitle ("Rewires");
    addAndMakeVisible (search);
    addAndMakeVisible (list);
    addAndMakeVisible (add);
    add.setWords (target == asRecorded ? juce::String ("New option") : "Add to " + words::from (letterOf (target)));
    add.onClick = [this] { apply(); };
    findFits();
    filter();
}

RewireList::~RewireList() { list.setModel (nullptr); }

const Harness& RewireList::harness() const
{
    kept = ui.session.jobEditor.job(); // the reference lives as long as this
    return harnessOf (*kept, target);
}

void RewireList::sessionChanged (const Revisions& before, const Revisions& now)
{
    if (before.job != now.job)
        findFits();
    if (before.job != now.job && chosen >= 0)
        checkRefusal();
    if (before.job != now.job && chosenStarter >= 0)
        chooseStarter (std::exchange (chosenStarter, -1));
    repaint();
}

void RewireList::filter()
{
    const auto wanted = juce::StringArray::fromTokens (search.getText().toLowerCase(), " ", "");
    lines.clear();
    if (startersFirst())
        addStarterLines (wanted);
    juce::String group;
    for (size_t i = 0; i < infos.size(); ++i)
    {
        const auto& info = infos[i];
        auto haystack = words::from (info.name + " " + info.preset + " " + info.wish + " " + info.gives);
        for (const auto& other : info.alsoCalled)
            haystack << " " << words::from (other);
        haystack = haystack.toLowerCase();
        bool found = true;
        for (const auto& word : wanted)
            found = found && (word.isEmpty() || haystack.contains (word));
        if (! found)
            continue;
        if (const auto title = wishTitle (info.wish); title != group)
        {
            group = title;
            lines.push_back ({ true, title, -1 });
        }
        lines.push_back ({ false, words::from (info.name), static_cast<int> (i) });
    }
    if (! startersFirst())
        addStarterLines (wanted);
    list.updateContent();
    int first = -1; // the first that can be done here, else the first of all
    for (int i = static_cast<int> (lines.size()) - 1; i >= 0; --i)
        if (const auto& line = lines[static_cast<size_t> (i)];
            ! line.isHeading && (isHere (line) || first < 0 || ! isHere (lines[static_cast<size_t> (first)])))
            first = i;
    list.selectRow (first);
    if (first >= 0)
        selectedRowsChanged (first);
    else
        choose (-1);
    list.repaint();
}

void RewireList::selectedRowsChanged (int row)
{
    if (row < 0 || row >= static_cast<int> (lines.size()) || lines[static_cast<size_t> (row)].isHeading)
        return;
    const auto& line = lines[static_cast<size_t> (row)];
    if (line.starter >= 0)
        chooseStarter (line.starter);
    else
        choose (line.info);
}

void RewireList::choose (int info)
{
    if (info == chosen && info >= 0)
        return;
    chosen = info;
    chosenStarter = -1;
    add.setWords (target == asRecorded ? juce::String ("New option") : "Add to " + words::from (letterOf (target)));
    arguments.clear();
    asks.clear();
    refusal = {};
    if (chosen >= 0)
    {
        fillAsks();
        checkRefusal();
    }
    resized();
    repaint();
}

/** Whether each rewire can be done here, and with what: the pickups are tried in turn. */
void RewireList::findFits()
{
    const auto job = ui.session.jobEditor.job();
    const auto* option = job->find (letterOf (target));
    const auto heard =
        pickupsHeard (option != nullptr ? job->optionConfig (*option) : job->recordedConfig (ui.session.takes.playing()));
    fits.clear();
    for (const auto& info : infos)
    {
        const auto fit = firstFit (info, harness(), heard,
                                   [&] (const auto& filled) {
                                       return ui.session.options.whyNot (target, { info.preset, filled }).empty();
                                   });
        fits.push_back ({ fit.arguments, fit.canBeDone });
    }
}

void RewireList::fillAsks()
{
    arguments = fits[static_cast<size_t> (chosen)].arguments;
    for (const auto& ask : infos[static_cast<size_t> (chosen)].asks)
    {
        const auto& value = arguments[ask.name];
        AskRow row { ask, nullptr, nullptr };
        const auto index = asks.size();
        if (ask.kind == "value" || candidates (ask.kind, harness()).empty())
        {
            row.field = std::make_unique<juce::TextEditor>();
            dressField (*row.field, colours());
            row.field->setText (words::from (value), false);
            row.field->setTitle (words::plain (ask.name));
            row.field->onTextChange = [this, index]
            {
                arguments[asks[index].ask.name] = asks[index].field->getText().trim().toStdString();
                checkRefusal();
                repaint();
            };
            row.field->onReturnKey = [this] { apply(); };
            row.field->onEscapeKey = search.onEscapeKey;
            addAndMakeVisible (*row.field);
        }
        else
        {
            row.choice = std::make_unique<WordButton> (ui, words::from (value).replaceCharacter ('-', ' '));
            row.choice->setTitle (words::plain (ask.name) + ", " + row.choice->getName());
            row.choice->onClick = [this, index] { offer (index); };
            addAndMakeVisible (*row.choice);
        }
        asks.push_back (std::move (row));
    }
}

void RewireList::offer (size_t index)
{
    juce::PopupMenu menu;
    menu.setLookAndFeel (&getLookAndFeel());
    const auto names = candidates (asks[index].ask.kind, harness());
    std::map<std::string, juce::PopupMenu> byPart;
    std::vector<std::string> order;
    for (size_t i = 0; i < names.size(); ++i)
    {
        const bool ticked = arguments[asks[index].ask.name] == names[i];
        const auto [part, terminal] = splitPoint (names[i]);
        if (asks[index].ask.kind == "point")
        {
            if (byPart.find (part) == byPart.end())
                order.push_back (part);
            byPart[part].addItem (static_cast<int> (i) + 1, words::from (terminal), true, ticked);
        }
        else
            menu.addItem (static_cast<int> (i) + 1, words::from (names[i]).replaceCharacter ('-', ' '), true, ticked);
    }
    for (const auto& part : order)
        menu.addSubMenu (words::plain (part), byPart[part]);
    const juce::Component::SafePointer<RewireList> self (this);
    menu.showMenuAsync (juce::PopupMenu::Options().withTargetComponent (asks[index].choice.get()),
                        [self, index, names] (int choice)
                        {
                            if (self == nullptr || choice == 0 || index >= self->asks.size())
                                return;
                            const auto& name = names[static_cast<size_t> (choice) - 1];
                            self->arguments[self->asks[index].ask.name] = name;
                            auto& shown = *self->asks[index].choice;
                            shown.setWords (words::from (name).replaceCharacter ('-', ' '));
                            shown.setTitle (words::plain (self->asks[index].ask.name) + ", " + shown.getName());
                            self->checkRefusal();
                            self->resized();
                            self->repaint();
                        });
}

void RewireList::checkRefusal()
{
    const auto diagnostics = ui.session.options.whyNot (target, { infos[static_cast<size_t> (chosen)].preset, arguments });
    refusal = diagnostics.empty() ? juce::String() : words::from (diagnostics.front().message);
    add.setEnabled (diagnostics.empty());
}

void RewireList::apply()
{
    if (chosenStarter >= 0)
        return applyStarter();
    if (chosen < 0 || ! refusal.isEmpty())
        return;
    auto& session = ui.session;
    const auto before = controls (harness());
    const RewireChoice choice { infos[static_cast<size_t> (chosen)].preset, arguments };
    OptionId id = target;
    if (id == asRecorded)
        id = session.options.add (optionName (infos[static_cast<size_t> (chosen)], arguments));
    if (id == asRecorded)
        return ui.tell ("All eight letters are taken. Remove an option first.");
    auto choices = session.options.rewires (id);
    choices.push_back (choice);
    if (! session.options.setRewires (id, choices))
    {
        if (target == asRecorded)
            session.options.remove (id);
        return;
    }
    // A switch that was just fitted is thrown, so that what it does is heard at once.
    juce::StringArray thrown;
    const auto job = session.jobEditor.job();
    for (const auto& control : controls (harnessOf (*job, id)))
    {
        const bool isNew = std::none_of (before.begin(), before.end(), [&] (const Control& c) { return c.name == control.name; });
        if (! isNew || control.positions.size() != 2)
            continue;
        const auto& other = control.positions[0] == control.standard ? control.positions[1] : control.positions[0];
        session.controls.beginGesture (id, control.name);
        session.controls.setLever (id, control.name, other);
        session.controls.endGesture (id, control.name);
        thrown.add (words::plain (control.name) + " is " + words::from (other));
    }
    session.monitor.hear (id);
    ui.tell (words::from (letterOf (id)) + ": " + words::from (infos[static_cast<size_t> (chosen)].name)
             + (thrown.isEmpty() ? juce::String (".") : ", " + thrown.joinIntoString (", ") + "."));
    if (onClose)
        onClose();
}

bool RewireList::keyPressed (const juce::KeyPress& key)
{
    if (key == juce::KeyPress::downKey || key == juce::KeyPress::upKey)
    {
        const int row = nextRow (list.getSelectedRow(), key == juce::KeyPress::downKey ? 1 : -1, getNumRows(),
                                 [this] (int r) { return lines[static_cast<size_t> (r)].isHeading; });
        if (row >= 0)
        {
            list.selectRow (row);
            announce (getNameForRow (row));
        }
        return true;
    }
    return Overlay::keyPressed (key);
}

void RewireList::resized()
{
    Overlay::resized();
    auto area = getLocalBounds().reduced (20, 16).withTrimmedTop (40);
    auto left = area.removeFromLeft (juce::jmin (listWidth, area.getWidth() * 9 / 20));
    search.setBounds (left.removeFromTop (32));
    left.removeFromTop (8);
    list.setBounds (left.withHeight (left.getHeight() / list.getRowHeight() * list.getRowHeight())); // no row cut in half
    area.removeFromLeft (24);
    const int width = juce::jmax (140, juce::roundToInt (type::width (type::bold (14.0f), add.getName())) + 40);
    add.setBounds (area.removeFromBottom (44).removeFromRight (width));
    area.removeFromBottom (8);
    auto fields = area.removeFromBottom (static_cast<int> (asks.size()) * askPitch);
    for (auto& row : asks)
    {
        auto line = fields.removeFromTop (askPitch).withTrimmedLeft (110).reduced (0, 4);
        if (row.choice != nullptr)
            row.choice->setBounds (line.withWidth (juce::jmin (line.getWidth(), juce::jmax (150, row.choice->idealWidth()))));
        else
            row.field->setBounds (line.withWidth (120));
    }
    detail = area;
}
}
