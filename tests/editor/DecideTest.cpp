// The panel where it is decided: six knobs and three switches fit, more of them scroll with a word on what is below.
#include "Windows.h"

namespace decideTest
{
using namespace coldiron;
using namespace windows;

namespace
{
const char* sixAndThree = R"({ "coldiron": "job 1", "title": "Many controls",
  "guitar": { "like": "two-humbuckers-four-knobs",
              "parts": { "master": { "pot": "500k", "taper": "log-15" }, "master-tone": { "pot": "500k", "taper": "log-15" } },
              "wires": [ ["neck.north.start", "neck-volume.3", "neck-tone.1"], ["neck.north.finish", "neck.south.finish"],
                ["neck.south.start", "neck-volume.case", "ground"], ["neck.shield", "neck-volume.case"],
                ["neck-volume.1", "neck-volume.case"], ["neck-volume.2", "selector.neck"],
                ["neck-tone.2", "neck-cap.1"], ["neck-cap.2", "neck-tone.case", "ground"],
                ["bridge.north.start", "bridge-volume.3", "bridge-tone.1"], ["bridge.north.finish", "bridge.south.finish"],
                ["bridge.south.start", "bridge-volume.case", "ground"], ["bridge.shield", "bridge-volume.case"],
                ["bridge-volume.1", "bridge-volume.case"], ["bridge-volume.2", "selector.bridge"],
                ["bridge-tone.2", "bridge-cap.1"], ["bridge-cap.2", "bridge-tone.case", "ground"],
                ["strings", "bridge-tone.case"], ["selector.out", "master.3", "master-tone.3"], ["master.1", "master.case", "ground"],
                ["master-tone.1", "ground"], ["master.2", "jack.tip"] ] },
  "options": { "A": { "name": "Six knobs, three switches", "rewires": [
     { "use": "series-parallel", "pickup": "bridge", "pot": "bridge-volume" }, { "use": "series-parallel", "pickup": "neck", "pot": "neck-volume" } ] },
   "B": { "name": "And more", "rewires": [
     { "use": "series-parallel", "pickup": "bridge", "pot": "bridge-volume" }, { "use": "series-parallel", "pickup": "neck", "pot": "neck-volume" },
     { "use": "kill-switch" }, { "use": "mid-scoop", "pot": "master" }, { "use": "rotary-cap-selector", "cap": "bridge-cap" } ] } } })";

template <typename T>
void collect (const juce::Component& parent, std::vector<const T*>& found)
{
    for (const auto* child : parent.getChildren())
    {
        if (const auto* wanted = dynamic_cast<const T*> (child))
            found.push_back (wanted);
        collect (*child, found);
    }
}

const DecidePanel* panelOf (const MainWindow& window)
{
    std::vector<const DecidePanel*> panels;
    collect (window, panels);
    return panels.empty() ? nullptr : panels.front();
}

/** How many of the controls lie wholly within what is shown. */
template <typename T>
std::pair<int, int> shownOf (const DecidePanel& panel)
{
    std::vector<const juce::Viewport*> scrollers;
    collect (panel, scrollers);
    REQUIRE_FALSE (scrollers.empty());
    std::vector<const T*> all;
    collect (panel, all);
    int seen = 0;
    for (const auto* one : all)
        seen += scrollers.front()->getViewArea().contains (one->getBounds()) ? 1 : 0;
    return { seen, static_cast<int> (all.size()) };
}
}

TEST_CASE ("six knobs and three switches fit at 1200 x 800, with the figures", "[window]")
{
    Session session { PresetFolders { { std::filesystem::path (COLDIRON_SOURCE) / "presets" } } };
    session.audio.prepare (48000.0);
    const bool read = session.jobEditor.setText (sixAndThree);
    for (const auto& fault : session.diagnostics())
        UNSCOPED_INFO (fault.text());
    REQUIRE (read);
    REQUIRE (session.waitUntilReported (20.0));
    session.monitor.hear (OptionId::A);
    MainWindow window (session, false);
    window.setSize (1200, 800);
    window.setVisible (true);
    window.refresh();
    const auto* panel = panelOf (window);
    REQUIRE (panel != nullptr);
    CHECK (shownOf<Knob> (*panel) == std::make_pair (6, 6));
    CHECK (shownOf<LeverRail> (*panel) == std::make_pair (3, 3));
    checkTree (*panel);
    checkText (window);

    session.monitor.hear (OptionId::B); // three switches more: they scroll, and it is said
    window.refresh();
    const auto switches = shownOf<LeverRail> (*panel);
    CHECK (switches.second == 6);
    CHECK (switches.first < switches.second);
    checkTree (*panel);
    checkText (window, 200, true);
    for (const auto& size : { std::pair<int, int> { 900, 600 }, std::pair<int, int> { 1920, 1200 } })
    {
        window.setSize (size.first, size.second);
        window.refresh();
        checkTree (*panel);
        checkText (window, 200, size.first < 1920);
    }
    CHECK (shownOf<LeverRail> (*panel) == std::make_pair (6, 6)); // on the largest all are there
}
}
