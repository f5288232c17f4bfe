// Pictures of the window without a display of one's own: editor_snapshots JOB FOLDER, under xvfb-run.
// Each size and colour scheme in a PNG at 1x and 2x, and the states that a person meets.

#include "WiringHands.h"

#include "editor/TakeInSheet.h"
#include "session/Session.h"

#include <iostream>

namespace
{
using namespace coldiron;

/** Lets messages run, so that drawings and reports from the background arrive. */
void runFor (int milliseconds) { juce::MessageManager::getInstance()->runDispatchLoopUntil (milliseconds); }

class Photographer
{
public:
    Photographer (Session& s, juce::File f) : session (s), folder (std::move (f)) { folder.createDirectory(); }

    void take (MainWindow& window, const juce::String& name, float scale)
    {
        window.refresh();
        runFor (60);
        window.createComponentSnapshot (window.getLocalBounds(), true, 0.2f); // asks for the drawings
        window.settleDrawings (60.0);
        runFor (60);
        const auto picture = window.createComponentSnapshot (window.getLocalBounds(), true, scale);
        const auto file = folder.getChildFile (name + (scale > 1.0f ? "@2x.png" : ".png"));
        file.deleteFile();
        juce::FileOutputStream stream (file);
        juce::PNGImageFormat().writeImageToStream (picture, stream);
        std::cout << file.getFileName() << " " << picture.getWidth() << " x " << picture.getHeight() << "\n";
    }

    void sizes()
    {
        struct Size
        {
            int width, height;
        };
        for (const auto size : { Size { 960, 600 }, Size { 1200, 800 }, Size { 1920, 1200 } })
            for (bool dark : { false, true })
            {
                MainWindow window (session, false);
                window.setDark (dark);
                window.setSize (size.width, size.height);
                window.setVisible (true);
                runFor (100);
                const auto name = juce::String (size.width) + "x" + juce::String (size.height) + (dark ? "-dark" : "-light");
                take (window, name, 1.0f);
                take (window, name, 2.0f);
            }
    }

    void states()
    {
        MainWindow window (session, false);
        window.setSize (1200, 800);
        window.setVisible (true);
        runFor (100);
        window.sheets().showWiring (true);
        runFor (50);
        take (window, "wiring", 1.0f);
        wiringByHand (window);
        window.sheets().showRewires (asRecorded);
        runFor (100);
        take (window, "rewires", 1.0f);
        session.output.setChain ({ OutputSound::amplifier, {}, 6.0 });
        session.output.setHeadroomKept (true);
        session.noise.setFacingDegrees (35.0);
        session.noise.setHissGainDb (40.0);
        session.waitUntilReported (20.0);
        window.sheets().showSound (true);
        take (window, "sound", 1.0f);
        window.setDark (true);
        take (window, "sound-dark", 1.0f);
        window.setDark (false);
        session.output.setChain ({ OutputSound::file, "no-such-loudspeaker.wav", 0.0 });
        session.waitUntilIdle (5.0);
        take (window, "sound-fault", 1.0f);
        session.output.setChain ({ OutputSound::amplifier, {}, 0.0 });
        window.sheets().showKeys (true);
        take (window, "keys", 1.0f);
        window.sheets().showKeys (false);
        const auto controls = session.controls.of (session.monitor.heard());
        for (const auto& control : controls)
            if (control.isKnob())
            {
                session.reports.wantSweep (session.monitor.heard(), control.name);
                session.waitUntilReported (5.0);
                window.look().showSweep (juce::String (control.name).replaceCharacter ('-', ' '));
                take (window, "sweep", 1.0f);
                window.look().showSweep ({});
                session.reports.wantSweep (session.monitor.heard(), {});
                break;
            }
        window.sheets().showNotes (true);
        take (window, "notes", 1.0f);
        window.sheets().showNotes (false);
        const auto first =
            session.jobEditor.job()->takes.empty() ? std::filesystem::path() : session.jobEditor.job()->takes.front().file;
        if (! first.empty() && session.takes.add (first))
        {
            session.transport.play();
            session.transport.stop();
            session.waitUntilReported (20.0);
            take (window, "two-takes", 1.0f);
            session.jobEditor.undo();
            session.waitUntilReported (20.0);
        }
        session.monitor.hear (asRecorded);
        take (window, "as-recorded", 1.0f);
        session.jobEditor.edit ("/options/A/setting", "{ \"no-such-knob\": 3 }", "");
        take (window, "fault", 1.0f);
        window.setSize (960, 600);
        window.sheets().showSound (true);
        take (window, "sound-960", 1.0f);
        window.sheets().showSound (false);
        window.showGuitar (true);
        take (window, "guitar-slid-over", 1.0f);
        window.setSize (900, 600);
        window.showGuitar (false);
        take (window, "900x600", 1.0f);
        while (session.options.add ("One more to see them narrow") != asRecorded) {}
        session.waitUntilReported (20.0);
        window.setSize (1200, 800);
        take (window, "eight", 1.0f);
        window.setSize (960, 600);
        take (window, "eight-960", 1.0f);
    }

    /** Tags face down, trials, and what came out. */
    void judging()
    {
        session.waitUntilReported (20.0);
        auto versions = session.options.ids();
        versions.insert (versions.begin(), asRecorded);
        MainWindow window (session, false);
        window.setSize (1200, 800);
        window.setVisible (true);
        runFor (100);
        window.showBlindSetup();
        take (window, "blind-setup", 1.0f);
        if (session.blindTest.startRanking (versions, 7))
        {
            window.beginBlind();
            session.transport.stop();
            for (int number = 1; number < static_cast<int> (versions.size()); ++number)
                session.blindTest.rank (number, number % 2 == 0 ? RankMove::up : RankMove::down);
            session.blindTest.hear (static_cast<int> (versions.size()));
            runFor (300);
            take (window, "blind", 1.0f);
            window.setDark (true);
            window.setSize (960, 600);
            take (window, "blind-960-dark", 1.0f);
            window.setDark (false);
            window.setSize (1200, 800);
            session.blindTest.rank (static_cast<int> (versions.size()), RankMove::down);
            window.blindStage().turnOver();
            take (window, "blind-result", 1.0f);
        }
        session.waitUntilReported (20.0); // the job has a result more: levels are measured again
        if (versions.size() > 1 && session.blindTest.startAbx (asRecorded, versions[1], 16, 7))
        {
            window.beginBlind();
            session.transport.stop();
            session.blindTest.hear (3);
            runFor (300);
            take (window, "trials", 1.0f);
            session.blindTest.stop();
        }
        session.monitor.setOnlyString (0);
        session.monitor.hear (versions.back());
        session.waitUntilReported (20.0);
        MainWindow again (session, false);
        again.setSize (1200, 800);
        take (again, "one-string", 1.0f);
        session.monitor.setOnlyString (-1);
        session.waitUntilReported (20.0);
    }

    /** Every state of taking a guitar in. */
    void takeIn()
    {
        struct Size
        {
            int width, height;
            bool dark;
        };
        for (const auto size :
             { Size { 960, 600, false }, Size { 1200, 800, false }, Size { 1200, 800, true }, Size { 1920, 1200, true } })
        {
            MainWindow window (session, false);
            window.setDark (size.dark);
            window.setSize (size.width, size.height);
            window.setVisible (true);
            const auto end = "-" + juce::String (size.width) + (size.dark ? "-dark" : "-light");
            window.sheets().showTakeIn (true);
            runFor (60);
            take (window, "take-in" + end, 1.0f);
            auto* sheet = dynamic_cast<TakeInSheet*> (window.sheets().top());
            sheet->pickPickup ("bridge");
            take (window, "pickups" + end, 1.0f);
            window.sheets().showGuitars();
            runFor (200);
            take (window, "guitars" + end, 1.0f);
            window.sheets().showKeys (true);
            window.sheets().showKeys (false);
            window.showGuitar (true);
            if (auto* row = window.guitarPanel().values().rowOf (GuitarValue::Kind::pot, "bridge-volume"))
            {
                row->startTyping ("500k curly");
                row->editor()->onReturnKey();
            }
            runFor (60);
            take (window, "typing" + end, 1.0f);
            window.showGuitar (false);
            window.firstMinutes().start();
            take (window, "first-steps" + end, 1.0f);
        }
    }

    /** A wire pulled to another lug, one pulled where it must not go, and the keys on their way. */
    void wiringByHand (MainWindow& window)
    {
        WiringHands hands (window);
        if (hands.view == nullptr || hands.view->hand().harness().find ("bridge-tone") == nullptr)
            return;
        for (const bool dark : { false, true })
        {
            window.setDark (dark);
            const juce::String end = dark ? "-dark" : "";
            hands.drag (hands.at ("bridge-tone.1"), hands.at ("bridge-volume.2"), false);
            take (window, "wiring-pulled" + end, 1.0f);
            hands.drag (hands.at ("jack.tip"), hands.at ("jack.sleeve"), false);
            take (window, "wiring-short" + end, 1.0f);
            hands.press ("escape");
            hands.walkTo ("bridge-volume.2");
            take (window, "wiring-walk" + end, 1.0f);
            hands.press (U'u');
            take (window, "wiring-unsoldered" + end, 1.0f);
            hands.press (U's');
            hands.type ("neck tone 3");
            take (window, "wiring-typed" + end, 1.0f);
            hands.press ("escape");
            hands.press ("escape");
            hands.drag (hands.at ("jack.tip"), hands.at ("jack.tip") + juce::Point<float> (0.0f, 60.0f), false);
            take (window, "wiring-left-off" + end, 1.0f);
            hands.press ("escape");
        }
        window.setDark (false);
    }

    void empty()
    {
        session.jobEditor.newJob ("one-humbucker");
        session.waitUntilReported (5.0);
        MainWindow window (session, false);
        window.setSize (1200, 800);
        window.setVisible (true);
        runFor (50);
        take (window, "empty", 1.0f);
        session.jobEditor.newJob ("two-humbuckers-four-knobs");
        session.jobEditor.edit ("/options", R"({ "A": { "name": "All switches", "rewires": [
            { "use": "series-parallel", "pickup": "bridge", "pot": "bridge-volume" }, { "use": "series-parallel", "pickup": "neck", "pot": "neck-volume" },
            { "use": "kill-switch" }, { "use": "mid-scoop", "pot": "bridge-tone" }, { "use": "rotary-cap-selector", "cap": "neck-cap" } ] } })",
                                "");
        session.monitor.hear (OptionId::A);
        session.waitUntilReported (20.0);
        take (window, "decide-four-switches", 1.0f);
        session.jobEditor.edit ("/takes", R"([ { "file": "/nowhere/verse.wav" }, { "file": "/nowhere/bridge.wav" } ])", "");
        session.waitUntilReported (5.0);
        take (window, "take-missing", 1.0f);
        session.jobEditor.newJob ("two-humbuckers-four-knobs");
        window.sheets().showStarter ("brighter");
        take (window, "starter", 1.0f);
        session.jobEditor.newJob ("two-humbuckers-two-lead");
        window.sheets().showStarter ("independent");
        take (window, "starter-refused", 1.0f);
    }

private:
    Session& session;
    const juce::File folder;
};
}

int main (int argc, char** argv)
{
    if (argc != 3)
    {
        std::cerr << "usage: editor_snapshots JOB.json FOLDER\n";
        return 2;
    }
    const juce::ScopedJuceInitialiser_GUI gui;
    Session session;
    session.audio.prepare (48000.0);
    if (! session.jobEditor.open (argv[1]))
    {
        for (const auto& fault : session.diagnostics())
            std::cerr << fault.text() << "\n";
        return 1;
    }
    session.transport.setSource (Source::take); // as the app begins
    session.waitUntilReported (20.0);
    const auto ids = session.options.ids();
    if (! ids.empty())
        session.monitor.hear (ids.size() > 1 ? ids[1] : ids[0]);
    Photographer photographer (session, juce::File::getCurrentWorkingDirectory().getChildFile (argv[2]));
    photographer.sizes();
    photographer.judging();
    photographer.takeIn();
    photographer.states();
    photographer.empty();
    return 0;
}
