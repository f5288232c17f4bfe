// The window's arithmetic. No display needed.

#include "editor/Layout.h"

#include <catch2/catch.hpp>

namespace layoutTest
{
using namespace coldiron;

namespace
{
std::vector<juce::Rectangle<int>> panels (const MainLayout& l)
{
    std::vector<juce::Rectangle<int>> all { l.header, l.take, l.options, l.listen, l.look, l.decide };
    if (! l.guitarFolded)
        all.push_back (l.guitar);
    if (! l.firstLine.isEmpty())
        all.push_back (l.firstLine);
    return all;
}
}

TEST_CASE ("nothing overlaps and all lies within the window, at every size and number of options", "[layout]")
{
    for (int width = leastWidth; width <= mostWidth; width += 60)
        for (int height = leastHeight; height <= mostHeight; height += 60)
            for (int options = 0; options <= 8; ++options)
            {
                INFO (width << " x " << height << ", " << options << " options");
                const juce::Rectangle<int> window (width, height);
                const auto l = layout (window, options);
                const auto all = panels (l);
                for (size_t i = 0; i < all.size(); ++i)
                {
                    REQUIRE (window.contains (all[i]));
                    REQUIRE (all[i].getHeight() >= 44);
                    for (size_t j = i + 1; j < all.size(); ++j)
                        REQUIRE_FALSE (all[i].intersects (all[j]));
                }
                REQUIRE (static_cast<int> (l.tags.size()) == 1 + options + (options < 8 ? 1 : 0));
                for (size_t i = 0; i < l.tags.size(); ++i)
                {
                    REQUIRE (l.options.contains (l.tags[i]));
                    REQUIRE (l.tags[i].getWidth() >= 88);
                    for (size_t j = i + 1; j < l.tags.size(); ++j)
                        REQUIRE_FALSE (l.tags[i].intersects (l.tags[j]));
                }
                REQUIRE (l.look.getHeight() >= 180);
                REQUIRE (l.decide.getHeight() >= 180);
            }
}

TEST_CASE ("the line of the first steps has room at every size", "[layout]")
{
    for (int width = leastWidth; width <= mostWidth; width += 60)
        for (int height = leastHeight; height <= mostHeight; height += 60)
        {
            INFO (width << " x " << height);
            const juce::Rectangle<int> window (width, height);
            const auto l = layout (window, 4, true);
            const auto all = panels (l);
            for (size_t i = 0; i < all.size(); ++i)
            {
                REQUIRE (window.contains (all[i]));
                for (size_t j = i + 1; j < all.size(); ++j)
                    REQUIRE_FALSE (all[i].intersects (all[j]));
            }
            REQUIRE (l.firstLine.getHeight() == 40);
            REQUIRE (l.decide.getHeight() >= 150);
            REQUIRE (layout (window, 4).firstLine.isEmpty());
        }
}

TEST_CASE ("the guitar folds away where there is no room, the bench steps come where there is", "[layout]")
{
    CHECK (layout ({ 960, 600 }, 4).guitarFolded);
    CHECK_FALSE (layout ({ 1200, 800 }, 4).guitarFolded);
    CHECK_FALSE (layout ({ 1200, 800 }, 4).stepsInDecide);
    CHECK (layout ({ 1920, 1200 }, 4).stepsInDecide);
}
}
