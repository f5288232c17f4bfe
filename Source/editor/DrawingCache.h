#pragma once

#include "concurrency/Worker.h"
#include "paper/Drawing.h"
#include "session/OptionId.h"

#include <juce_events/juce_events.h>
#include <juce_graphics/juce_graphics.h>

#include <map>
#include <mutex>

namespace coldiron
{
struct Job;

/** Drawings worked out in the background, one a tag. Asks come from the message thread. */
class DrawingCache : private juce::AsyncUpdater
{
public:
    DrawingCache();
    ~DrawingCache() override;

    std::function<void()> onReady; ///< message thread

    /** Waits until nothing is on its way; for pictures and tests. */
    bool waitUntilIdle (double seconds);

    /** The drawing of a tag as the job has it; null while it is on its way. */
    std::shared_ptr<const Drawing> get (const std::shared_ptr<const Job>&, OptionId);

private:
    struct Entry
    {
        std::string key;
        std::shared_ptr<const Drawing> drawing;
    };
    struct Want
    {
        std::shared_ptr<const Job> job;
        OptionId option = asRecorded;
        std::string key;
    };

    std::map<OptionId, Entry> entries;
    std::mutex guard;
    std::vector<Want> queue;
    Worker worker; ///< last

    bool drawNext (const Cancellation& stop);
    void handleAsyncUpdate() override
    {
        if (onReady)
            onReady();
    }
    static std::string keyOf (const Job&, OptionId);
};

/** From drawing units to a rectangle, as large as fits, in the middle. */
juce::AffineTransform drawingPlace (const Drawing&, juce::Rectangle<float>);

/** Draws a drawing into a rectangle in the window's colours. */
void paintDrawing (juce::Graphics&, const Drawing&, juce::Rectangle<float>, const struct Tokens&, bool withText);
}
