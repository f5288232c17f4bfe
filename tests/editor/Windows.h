#pragma once

#include "editor/MainWindow.h"
#include "session/Session.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <vector>

/** What the tests of the window share: a session to look at, and the checks of text and overlap. */
namespace windows
{
using namespace coldiron;

/** Draws like any other, and notes glyphs that stick out of where they may be drawn. */
class TextWatcher : public juce::LowLevelGraphicsSoftwareRenderer
{
public:
    explicit TextWatcher (const juce::Image& image) : LowLevelGraphicsSoftwareRenderer (image) {}

    int glyphs = 0;
    std::vector<juce::String> cut;

    void drawGlyph (int glyph, const juce::AffineTransform& place) override
    {
        ++glyphs;
        const auto font = getFont();
        juce::Path outline;
        font.getTypefacePtr()->getOutlineForGlyph (glyph, outline);
        const auto box = outline.getBoundsTransformed (
            juce::AffineTransform::scale (font.getHeight() * font.getHorizontalScale(), font.getHeight()).followedBy (place));
        const auto clip = getClipBounds().toFloat().expanded (1.5f);
        if (! box.isEmpty() && ! clip.contains (box))
            cut.push_back ("glyph " + juce::String (glyph) + " at " + box.toString() + " in " + clip.toString());
        LowLevelGraphicsSoftwareRenderer::drawGlyph (glyph, place);
    }
};

struct Fixture
{
    Session session { PresetFolders { { std::filesystem::path (COLDIRON_SOURCE) / "presets" } } };

    Fixture()
    {
        session.audio.prepare (48000.0);
        const std::string job = R"({ "coldiron": "job 1", "title": "Walnut two-humbucker", "client": "Too dark in the middle.",
            "guitar": "two-humbuckers-four-knobs",
            "options": {
              "A": { "name": "Bridge in parallel", "rewires": [ { "use": "series-parallel", "pickup": "bridge", "pot": "bridge-volume" } ], "setting": { "bridge-volume-pull": "up", "selector": "bridge" } },
              "B": { "name": "Bridge split, north coil", "rewires": [ { "use": "split-shorted", "pickup": "bridge", "pot": "bridge-volume" } ], "setting": { "bridge-volume-pull": "up", "selector": "bridge" } } } })";
        const bool read = session.jobEditor.setText (job);
        for (const auto& fault : session.diagnostics())
            UNSCOPED_INFO (fault.text());
        REQUIRE (read);
        REQUIRE (session.waitUntilReported (20.0));
    }
};

inline void runFor (int milliseconds) { juce::MessageManager::getInstance()->runDispatchLoopUntil (milliseconds); }

/** What lies over the rest on purpose, for a while. */
inline bool floats (const juce::Component* c)
{
    return dynamic_cast<const juce::TooltipWindow*> (c) != nullptr || dynamic_cast<const Notice*> (c) != nullptr;
}

inline void checkTree (const juce::Component& parent)
{
    if (dynamic_cast<const juce::TextEditor*> (&parent) != nullptr || dynamic_cast<const juce::ListBox*> (&parent) != nullptr)
        return;                                                               // a caret and rows out of sight are JUCE's affair
    if (const auto* scrolled = dynamic_cast<const juce::Viewport*> (&parent)) // what it shows may reach over its edges
        return scrolled->getViewedComponent() != nullptr ? checkTree (*scrolled->getViewedComponent()) : void();
    for (int i = 0; i < parent.getNumChildComponents(); ++i)
    {
        const auto* a = parent.getChildComponent (i);
        if (! a->isVisible() || floats (a))
            continue;
        INFO (a->getTitle().toStdString() << " " << a->getName().toStdString() << " " << a->getBounds().toString().toStdString());
        CHECK (parent.getLocalBounds().contains (a->getBounds()));
        for (int j = i + 1; j < parent.getNumChildComponents(); ++j)
        {
            const auto* b = parent.getChildComponent (j);
            // Tags and the strip of threads reach over their edges on purpose, by up to 6 px.
            const bool sameRow = a->isVisible() && b->isVisible() && ! floats (b);
            if (sameRow && dynamic_cast<const juce::Label*> (a) == nullptr)
                CHECK_FALSE (a->getBounds().reduced (6).intersects (b->getBounds().reduced (6)));
        }
        checkTree (*a);
    }
}

inline juce::KeyPress key (const char* words) { return juce::KeyPress::createFromDescription (words); }

/** Paints the window and checks that no glyph is cut and no word shortened that may not be.
    @param scrolled  something scrolls: at the edge of its view a row may be cut */
inline void checkText (juce::Component& window, int leastGlyphs = 200, bool scrolled = false)
{
    juce::Image image (juce::Image::ARGB, window.getWidth(), window.getHeight(), true);
    TextWatcher watcher (image);
    juce::Graphics g (watcher);
    juce::StringArray shortened;
    type::cutOff = &shortened;
    window.paintEntireComponent (g, true);
    type::cutOff = nullptr;
    CHECK (watcher.glyphs > leastGlyphs);
    if (! scrolled)
        CHECK (juce::StringArray (watcher.cut.data(), static_cast<int> (watcher.cut.size())).joinIntoString ("; ").toStdString()
               == "");
    CHECK (shortened.joinIntoString ("; ").toStdString() == "");
}
}
