#include "editor/GuitarPictures.h"

#include "editor/BareButton.h"
#include "editor/Words.h"
#include "session/Session.h"

namespace coldiron
{
namespace
{
constexpr int cellWidth = 208, cellHeight = 156, cellGap = 12, headHeight = 34;
}

class GuitarPictures::Grid : public juce::Component
{
public:
    Grid (UiContext&, const std::vector<GuitarPicture>&);
    ~Grid() override;

    std::function<void()> onClicked, onMarked;
    int marked = -1; ///< among the shown

    void filter (const juce::String& wanted)
    {
        shown.clear();
        for (size_t i = 0; i < pictures.size(); ++i)
            if (answersTo (pictures[i], wanted.toStdString()))
                shown.push_back (i);
        marked = shown.empty() ? -1 : 0;
        arrange (getWidth());
    }

    const GuitarPicture* current() const { return marked < 0 ? nullptr : &pictures[shown[static_cast<size_t> (marked)]]; }
    juce::Rectangle<int> markedArea() const { return marked < 0 ? juce::Rectangle<int>() : cells[static_cast<size_t> (marked)]; }
    bool isEmpty() const { return shown.empty(); }

    /** Cells in rows under the heading of their group. */
    void arrange (int width)
    {
        cells.clear();
        heads.clear();
        const int columns = juce::jmax (1, (width + cellGap) / (cellWidth + cellGap));
        const int pitch = (width + cellGap) / columns;
        int y = 0, column = 0;
        for (size_t i = 0; i < shown.size(); ++i)
        {
            const auto group = pictures[shown[i]].group;
            if (i == 0 || group != pictures[shown[i - 1]].group)
            {
                y += column > 0 ? cellHeight + cellGap : 0;
                column = 0;
                heads.push_back ({ words::from (groupTitle (group)), { 0, y, width, headHeight } });
                y += headHeight;
            }
            else if (column == columns)
            {
                y += cellHeight + cellGap;
                column = 0;
            }
            cells.push_back ({ column++ * pitch, y, pitch - cellGap, cellHeight });
        }
        setSize (width, juce::jmax (1, y + (shown.empty() ? 0 : cellHeight + 4)));
        placeButtons();
        repaint();
    }

    /** Left and right along the rows, up and down to the nearest cell of the next row. */
    void move (int dx, int dy)
    {
        if (marked < 0)
            return;
        const auto from = cells[static_cast<size_t> (marked)];
        int best = dx != 0 ? juce::jlimit (0, static_cast<int> (cells.size()) - 1, marked + dx) : marked;
        double nearest = 1e12;
        for (int i = 0; dy != 0 && i < static_cast<int> (cells.size()); ++i)
        {
            const auto to = cells[static_cast<size_t> (i)];
            const int down = (to.getY() - from.getY()) * dy;
            const double distance = down * 4.0 + std::abs (to.getX() - from.getX());
            if (down > 0 && distance < nearest)
            {
                nearest = distance;
                best = i;
            }
        }
        marked = best;
        repaint();
        onMarked();
        announce (words::from (current()->name));
    }

    void mark (size_t cell)
    {
        marked = static_cast<int> (cell);
        repaint();
    }

    void paint (juce::Graphics& g) override
    {
        const auto& t = ui.colours();
        g.setColour (t.mute);
        g.setFont (type::name (15.0f));
        for (const auto& head : heads)
            type::draw (g, head.first, head.second.withTrimmedTop (6), juce::Justification::centredLeft, false);
        for (size_t i = 0; i < cells.size(); ++i)
        {
            if (! g.getClipBounds().intersects (cells[i]))
                continue;
            const bool here = static_cast<int> (i) == marked;
            const auto& picture = pictures[shown[i]];
            const auto area = cells[i].toFloat().reduced (1.5f);
            g.setColour (here ? t.ink : t.line);
            g.drawRoundedRectangle (area, 6.0f, here ? 2.5f : 1.0f);
            auto inside = cells[i].reduced (10, 8);
            const auto name = inside.removeFromBottom (34);
            paintGuitar (g, picture, inside.toFloat(), t);
            juce::AttributedString words;
            words.append (words::from (picture.name), here ? type::bold (12.5f) : type::text (12.5f), t.ink);
            words.setWordWrap (juce::AttributedString::byWord);
            words.draw (g, name.toFloat());
        }
    }

private:
    class Cell;
    UiContext& ui;
    const std::vector<GuitarPicture>& pictures;
    std::vector<size_t> shown;
    std::vector<juce::Rectangle<int>> cells;
    std::vector<std::pair<juce::String, juce::Rectangle<int>>> heads;
    std::vector<std::unique_ptr<Cell>> buttons; ///< one for each cell

    const GuitarPicture& pictureIn (size_t cell) const { return pictures[shown[cell]]; }
    void placeButtons();

    std::unique_ptr<juce::AccessibilityHandler> createAccessibilityHandler() override
    {
        return accessible (*this, juce::AccessibilityRole::list);
    }
};

/** A guitar to press: the mouse marks it as it goes down and takes it as it comes up; keys are the search field's. */
class GuitarPictures::Grid::Cell : public BareButton
{
public:
    Cell (Grid& g, size_t i) : BareButton (g.ui, {}), grid (g), index (i) { setWantsKeyboardFocus (false); }

    void mouseDown (const juce::MouseEvent& e) override
    {
        grid.mark (index);
        BareButton::mouseDown (e);
    }

    void clicked() override
    {
        grid.mark (index);
        grid.onClicked();
    }

private:
    Grid& grid;
    const size_t index;

    std::unique_ptr<juce::AccessibilityHandler> createAccessibilityHandler() override
    {
        return accessible (*this, juce::AccessibilityRole::listItem,
                           { .description = [this] { return words::from (groupTitle (grid.pictureIn (index).group)); },
                             .isSelected = [this] { return grid.marked == static_cast<int> (index); } },
                           juce::AccessibilityActions()
                               .addAction (juce::AccessibilityActionType::press, [this] { clicked(); })
                               .addAction (juce::AccessibilityActionType::focus, [this] { grid.mark (index); }));
    }
};

GuitarPictures::Grid::Grid (UiContext& d, const std::vector<GuitarPicture>& p) : ui (d), pictures (p)
{
    setFocusContainerType (FocusContainerType::focusContainer);
    filter ({});
}

GuitarPictures::Grid::~Grid() = default;

void GuitarPictures::Grid::placeButtons()
{
    while (buttons.size() > cells.size())
        buttons.pop_back();
    while (buttons.size() < cells.size())
    {
        buttons.push_back (std::make_unique<Cell> (*this, buttons.size()));
        addAndMakeVisible (*buttons.back());
    }
    for (size_t i = 0; i < cells.size(); ++i)
    {
        buttons[i]->setTitle (words::from (pictureIn (i).name));
        buttons[i]->setBounds (cells[i]);
    }
}

GuitarPictures::GuitarPictures (UiContext& d) : Overlay (d)
{
    setTitle ("A new job: which guitar?");
    const auto presets = ui.session.jobEditor.presets();
    for (const auto& name : presets.list ("guitars"))
    {
        Diagnostics ignored;
        if (const auto guitar = readGuitar (name, presets, ignored))
            pictures.push_back (pictureOf (*guitar));
    }
    std::stable_sort (pictures.begin(), pictures.end(), [] (const auto& a, const auto& b) { return a.group < b.group; });
    grid = std::make_unique<Grid> (ui, pictures);
    grid->setTitle ("Guitars");
    grid->onClicked = [this] { choose(); };
    grid->onMarked = [this]
    {
        const auto area = grid->markedArea(), view = scroll.getViewArea();
        if (area.getY() < view.getY())
            scroll.setViewPosition (0, juce::jmax (0, area.getY() - headHeight));
        else if (area.getBottom() > view.getBottom())
            scroll.setViewPosition (0, area.getBottom() + 4 - view.getHeight());
    };
    dressField (search, colours());
    search.setTextToShowWhenEmpty ("Search: two humbuckers, blade, bass", colours().mute);
    search.setTitle ("Search guitars");
    search.onTextChange = [this]
    {
        grid->filter (search.getText());
        repaint();
    };
    search.onKeyFirst = [this] (const juce::KeyPress& key) { return moveBy (key); };
    search.onReturnKey = [this] { choose(); };
    search.onEscapeKey = [this]
    {
        if (onClose)
            onClose();
    };
    scroll.setViewedComponent (grid.get(), false);
    scroll.setScrollBarsShown (true, false);
    scroll.setScrollBarThickness (10);
    scroll.setWantsKeyboardFocus (false);
    addAndMakeVisible (search);
    addAndMakeVisible (scroll);
}

GuitarPictures::~GuitarPictures() = default;

std::string GuitarPictures::marked() const { return grid->current() != nullptr ? grid->current()->preset : std::string(); }

void GuitarPictures::choose()
{
    if (const auto* picture = grid->current(); picture != nullptr && onChosen)
        onChosen (std::string (picture->preset));
}

/** Arrows go from picture to picture; left and right belong to the text once there is some. */
bool GuitarPictures::moveBy (const juce::KeyPress& key)
{
    if (key == juce::KeyPress::upKey || key == juce::KeyPress::downKey)
        grid->move (0, key == juce::KeyPress::upKey ? -1 : 1);
    else if ((key == juce::KeyPress::leftKey || key == juce::KeyPress::rightKey)
             && (! search.hasKeyboardFocus (true) || search.isEmpty()))
        grid->move (key == juce::KeyPress::leftKey ? -1 : 1, 0);
    else
        return false;
    return true;
}

bool GuitarPictures::keyPressed (const juce::KeyPress& key)
{
    if (moveBy (key))
        return true;
    if (key == juce::KeyPress::returnKey)
        return (choose(), true);
    return Overlay::keyPressed (key);
}

void GuitarPictures::resized()
{
    Overlay::resized();
    auto area = getLocalBounds().reduced (20, 16).withTrimmedTop (40);
    search.setBounds (area.removeFromTop (32).withWidth (juce::jmin (360, area.getWidth())));
    area.removeFromTop (6);
    scroll.setBounds (area);
    grid->arrange (area.getWidth() - 14);
}

void GuitarPictures::paint (juce::Graphics& g)
{
    Overlay::paint (g);
    paintTitle (g, getTitle());
    if (grid->isEmpty())
    {
        g.setColour (colours().mute);
        g.setFont (type::text (13.0f));
        g.drawFittedText (pictures.empty() ? "No guitars were found among the presets."
                                           : "Nothing of that kind. Try what it has: humbucker, single, blade, two knobs.",
                          scroll.getBounds().withTrimmedTop (12), juce::Justification::topLeft, 2, 1.0f);
    }
}
}
