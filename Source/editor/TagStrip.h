#pragma once

#include "editor/Layout.h"
#include "editor/TagCard.h"

namespace coldiron
{
/** All tags on their threads. The component starts above the tags, where the threads leave the take. */
class TagStrip : public Panel
{
public:
    explicit TagStrip (UiContext&);

    /** @param places  of the tags, in this component's coordinates */
    void arrange (const std::vector<juce::Rectangle<int>>& places, TagSize);
    void sessionChanged (const Revisions& before, const Revisions& now) override;
    void paintOverChildren (juce::Graphics&) override;
    void rename (OptionId);
    void hearNext (int direction);
    int numOptions() const { return static_cast<int> (cards.size()) - 1; }

private:
    std::vector<std::unique_ptr<TagCard>> cards;
    NewTag newTag;

    void rebuild();
};
}
