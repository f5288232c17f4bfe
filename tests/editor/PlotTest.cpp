// Bands muddle each other: that of the option heard is drawn, the others are lines.
#include "Windows.h"

namespace plotTest
{
using namespace coldiron;
using namespace windows;

namespace
{
/** Pixels that have the colour of an option's band on the sheet. */
int bandPixels (Plot& plot, OptionId id)
{
    const auto picture = plot.createComponentSnapshot (plot.getLocalBounds(), true, 1.0f);
    const auto& t = Tokens::light();
    const auto wanted = t.sheet.overlaidWith (t.of (id).withAlpha (0.16f));
    int count = 0;
    for (int y = 0; y < picture.getHeight() - 130; ++y) // the key's swatch, below, has the colour too
        for (int x = 0; x < picture.getWidth(); ++x)
        {
            const auto here = picture.getPixelAt (x, y);
            count += std::abs (here.getRed() - wanted.getRed()) <= 3 && std::abs (here.getGreen() - wanted.getGreen()) <= 3
                             && std::abs (here.getBlue() - wanted.getBlue()) <= 3
                         ? 1
                         : 0;
        }
    return count;
}
}

TEST_CASE ("only the option heard shows its band", "[window]")
{
    Session session { PresetFolders { { std::filesystem::path (COLDIRON_SOURCE) / "presets" } } };
    session.audio.prepare (48000.0);
    REQUIRE (session.jobEditor.setText (R"({ "coldiron": "job 1", "title": "Bands", "guitar": "two-humbuckers-four-knobs",
        "options": { "A": { "name": "Series", "setting": { "selector": "bridge" } },
          "B": { "name": "Split", "rewires": [ { "use": "split-shorted", "pickup": "neck", "pot": "neck-volume" } ], "setting": { "neck-volume-pull": "up" } },
          "C": { "name": "Bridge", "setting": { "selector": "both" } } } })"));
    REQUIRE (session.waitUntilReported (30.0));
    MainWindow window (session, false);
    window.setSize (1200, 800);
    window.setVisible (true);
    for (const OptionId heard : { OptionId::B, OptionId::C })
    {
        session.monitor.hear (heard);
        window.refresh();
        INFO ("heard " << letterOf (heard));
        REQUIRE (session.reports.report (heard)->figures.confidence.isEstimated());
        CHECK (bandPixels (window.look(), heard) > 300);
        CHECK (bandPixels (window.look(), heard == OptionId::B ? OptionId::C : OptionId::B) < 60);
        checkText (window);
    }
    session.monitor.hear (asRecorded);
    window.refresh();
    CHECK (bandPixels (window.look(), OptionId::B) < 60);
    CHECK (bandPixels (window.look(), OptionId::C) < 60);
    checkText (window);
}
}
