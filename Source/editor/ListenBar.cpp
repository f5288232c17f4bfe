#include "editor/ListenBar.h"

#include "editor/Words.h"
#include "session/Session.h"

#include <cmath>

namespace coldiron
{
namespace
{
constexpr double least = -80.0, most = 0.0;
}

HumWave::HumWave (UiContext& d) : RailSlider ("Mains hum", least, most, 1.0), ui (d)
{
    textFromValueFunction = [] (double db) { return db <= least ? juce::String ("off") : words::db (db, false, 0); };
    setTooltip ("Hum of one coil against the take's loudness, where mains wiring is near. Magnetic hum only: hum that changes "
                "when you touch the strings is grounding or shielding. R switches it, [ and ] make it less and more.");
    refresh();
}

void HumWave::refresh()
{
    setValue (ui.session.noise.humDb(), juce::dontSendNotification);
    repaint();
}

void HumWave::valueChanged() { ui.session.noise.setHumDb (getValue()); }

void HumWave::paint (juce::Graphics& g)
{
    const auto& t = ui.colours();
    const double now = juce::jlimit (least, most, ui.session.noise.humDb());
    const float left = 8.0f, width = static_cast<float> (getWidth()) - 16.0f, middle = static_cast<float> (getHeight()) / 2.0f;
    const float thumb = left + width * static_cast<float> ((now - least) / (most - least));
    const auto wave = [&] (float from, float to)
    {
        juce::Path p;
        for (float x = from; x <= to; x += 1.0f)
        {
            const float share = (x - left) / width;
            const float y = middle - std::sin ((x - left) * 0.36f) * (1.0f + 11.0f * share);
            if (x > from)
                p.lineTo (x, y);
            else
                p.startNewSubPath (x, y);
        }
        return p;
    };
    g.setColour (t.line);
    g.strokePath (wave (thumb, left + width), juce::PathStrokeType (1.5f));
    g.setColour (t.ink);
    if (now > least)
        g.strokePath (wave (left, thumb), juce::PathStrokeType (2.2f));
    g.fillRoundedRectangle (thumb - 5.0f, middle - 15.0f, 10.0f, 30.0f, 2.0f);
    if (hasKeyboardFocus (false))
        paintFocus (g, getLocalBounds().toFloat(), 5.0f, t);
}

void HumWave::step (double db)
{
    ui.session.noise.setHumDb (juce::jlimit (least, most, ui.session.noise.humDb() + db));
    refresh();
}

void HumWave::flip()
{
    if (ui.session.noise.humDb() > least)
    {
        before = ui.session.noise.humDb();
        ui.session.noise.setHumDb (least);
    }
    else
        ui.session.noise.setHumDb (before);
    refresh();
}

bool HumWave::keyPressed (const juce::KeyPress& key)
{
    if (key != juce::KeyPress::returnKey)
        return RailSlider::keyPressed (key);
    flip();
    return true;
}

ListenBar::ListenBar (UiContext& d, bool host)
    : Panel (d), level (d, { "True", "Matched" }, "Level"), source (d, { "Take", host ? "Track" : "Live" }, "Source"),
      humWave (d), mains (d, "50 Hz"), sound (d, "Amplifier"), inHost (host)
{
    setTitle ("Listen");
    level.setTooltip ("True: as loud as it would be. Matched: every option as loud as the take. M changes over.");
    source.setTooltip (
        host ? "Hear the job's take, or the track this plugin sits on."
             : "Hear the take, or what comes in live. Live, a loudspeaker beside the guitar can feed back: turn it down first.");
    addInOrder (*this, { &level, &humWave, &mains, &sound, &source });
    level.onChoice = [this] (int i) { ui.session.monitor.setLevelMatched (i == 1); };
    source.onChoice = [this] (int i)
    {
        ui.session.transport.setSource (i == 0 ? Source::take : Source::host);
        if (i == 1 && ! inHost)
            ui.tell ("Live: a loudspeaker beside the guitar can feed back. Turn it down first.");
    };
    mains.setTooltip ("The mains where the player plays: 50 or 60 Hz.");
    sound.setTooltip ("What is heard after the jack, the same for all; facing, buzz, hiss and headroom too. S opens it.");
    sound.onClick = [this]
    {
        if (ui.openSound)
            ui.openSound();
    };
    mains.onClick = [this] { ui.session.noise.setMainsHz (ui.session.noise.mainsHz() > 55.0 ? 50.0 : 60.0); };
}

void ListenBar::toggleMatched() { ui.session.monitor.setLevelMatched (! ui.session.monitor.levelMatched()); }

void ListenBar::sessionChanged (const Revisions&, const Revisions&)
{
    level.setChosen (ui.session.monitor.levelMatched() ? 1 : 0);
    source.setChosen (ui.session.transport.source() == Source::take ? 0 : 1);
    const auto choice = ui.session.output.chain();
    sound.setWords (choice.sound == OutputSound::none   ? "Direct"
                    : choice.isDriven()                 ? "Driven"
                    : choice.sound == OutputSound::file ? "Own file"
                                                        : "Amplifier");
    mains.setWords (ui.session.noise.mainsHz() > 55.0 ? "60 Hz" : "50 Hz");
    sound.setTitle ("After the jack, " + sound.getName());
    mains.setTitle ("Mains, " + mains.getName());
    repaint();
    humWave.refresh();
}

void ListenBar::tick()
{
    const auto fall = [] (double& shown, double fresh, int& clip)
    {
        if (fresh > 1.0)
            clip = 60;
        else if (clip > 0)
            --clip;
        shown = juce::jmax (fresh, shown * 0.86);
    };
    const double inBefore = inPeak, outBefore = outPeak;
    fall (inPeak, ui.session.audio.takeInputPeak(), inClip);
    fall (outPeak, ui.session.audio.takeOutputPeak(), outClip);
    if (std::abs (inPeak - inBefore) > 1e-4 || std::abs (outPeak - outBefore) > 1e-4 || inClip + outClip > 0)
        repaint (meterArea);
}

void ListenBar::resized()
{
    rules.clear();
    auto area = getLocalBounds().reduced (16, 0);
    const int height = juce::jmin (36, getHeight() - 12);
    const bool tight = getWidth() < 960, narrow = getWidth() < 880;
    const auto rule = [&]
    {
        area.removeFromLeft (tight ? 8 : 14);
        rules.push_back (area.getX());
        area.removeFromLeft (tight ? 9 : 15);
    };
    const auto wide = [] (const char* words) { return juce::roundToInt (type::width (type::name (15.0f), words)) + 10; };
    levelLabel = tight ? juce::Rectangle<int>() : area.removeFromLeft (wide ("Level"));
    level.setBounds (area.removeFromLeft (level.idealWidth()).withSizeKeepingCentre (level.idealWidth(), height));
    area.removeFromLeft (8);
    matchText = area.removeFromLeft (tight ? 66 : 72);
    rule();
    humLabel = area.removeFromLeft (wide (narrow ? "Hum" : "Mains hum"));
    const int soundWidth = 92;
    const int right = 8 + 62 + soundWidth + source.idealWidth() + 3 * (tight ? 17 : 29) + (narrow ? 72 : 110);
    const int waveWidth = juce::jlimit (72, 240, area.getWidth() - right);
    humWave.setBounds (area.removeFromLeft (waveWidth).withSizeKeepingCentre (waveWidth, juce::jmin (44, getHeight() - 4)));
    area.removeFromLeft (8);
    auto mainsColumn = area.removeFromLeft (62).withSizeKeepingCentre (62, 44);
    humText = mainsColumn.removeFromTop (18);
    mains.setBounds (mainsColumn);
    rule();
    auto soundColumn = area.removeFromLeft (soundWidth).withSizeKeepingCentre (soundWidth, 44);
    soundText = soundColumn.removeFromTop (18);
    sound.setBounds (soundColumn);
    rule();
    source.setBounds (area.removeFromLeft (source.idealWidth()).withSizeKeepingCentre (source.idealWidth(), height));
    rule();
    area.setWidth (juce::jmin (260, area.getWidth()));
    meterArea = area.withSizeKeepingCentre (area.getWidth(), 34);
}

void ListenBar::paintMeter (juce::Graphics& g, juce::Rectangle<int> area, const juce::String& label, double peak, bool clipped)
{
    const auto& t = colours();
    g.setColour (t.mute);
    g.setFont (type::text (12.0f));
    type::draw (g, label, area.removeFromLeft (26), juce::Justification::centredLeft, false);
    auto end = area.removeFromRight (12).toFloat();
    const auto bar = area.toFloat().withSizeKeepingCentre (static_cast<float> (area.getWidth()) - 6.0f, 6.0f);
    g.setColour (t.line);
    g.fillRoundedRectangle (bar, 3.0f);
    const double db = 20.0 * std::log10 (juce::jmax (1e-6, peak));
    const float share = static_cast<float> (juce::jlimit (0.0, 1.0, (db + 60.0) / 60.0));
    g.setColour (t.ink);
    if (share > 0.02f)
        g.fillRoundedRectangle (bar.withWidth (bar.getWidth() * share), 3.0f);
    juce::Path clip; // a triangle says that full scale was passed
    clip.addTriangle (end.getX(), end.getCentreY() + 4, end.getX() + 8, end.getCentreY() + 4, end.getX() + 4,
                      end.getCentreY() - 4);
    g.setColour (clipped ? t.ink : t.line);
    if (clipped)
        g.fillPath (clip);
    else
        g.strokePath (clip, juce::PathStrokeType (1.0f));
}

void ListenBar::paint (juce::Graphics& g)
{
    const auto& t = colours();
    paintSheet (g);
    g.setColour (t.line);
    for (int x : rules)
        g.fillRect (x, 10, 1, getHeight() - 20);

    g.setFont (type::name (15.0f));
    g.setColour (t.mute);
    if (! levelLabel.isEmpty())
        type::draw (g, "Level", levelLabel, juce::Justification::centredLeft, false);
    type::draw (g, getWidth() < 880 ? "Hum" : "Mains hum", humLabel, juce::Justification::centredLeft, false);

    g.setFont (type::text (12.5f));
    type::draw (g, matchWords(), matchText, juce::Justification::centredLeft, false);

    g.setColour (t.ink);
    g.setFont (type::bold (12.5f));
    type::draw (g, ui.session.noise.humDb() <= -80.0 ? juce::String ("off") : words::db (ui.session.noise.humDb(), false, 0),
                humText, juce::Justification::centred, false);

    const auto trimmed = headroomWords();
    g.setColour (trimmed.isNotEmpty() ? t.ink : t.mute);
    g.setFont (trimmed.isNotEmpty() ? type::bold (12.0f) : type::text (12.0f));
    type::draw (g, trimmed.isNotEmpty() ? trimmed : juce::String ("after the jack"), soundText, juce::Justification::centred,
                false);

    if (meterArea.getWidth() > 70)
    {
        auto area = meterArea;
        paintMeter (g, area.removeFromTop (17), "in", inPeak, inClip > 0);
        paintMeter (g, area, "out", outPeak, outClip > 0);
    }
}

juce::String ListenBar::matchWords() const
{
    const OptionId heard = ui.session.monitor.heard();
    const auto report = ui.session.reports.report (heard);
    if (! ui.session.monitor.levelMatched() || heard == asRecorded || report == nullptr || ! report->complete || report->silent)
        return {};
    return words::from (letterOf (heard)) + " " + words::db (report->matchDb);
}

juce::String ListenBar::headroomWords() const
{
    const bool trimmed = ui.session.output.headroomKept() && ui.session.transport.source() == Source::take
                         && ui.session.output.headroomDb() < -0.05;
    return trimmed ? words::db (ui.session.output.headroomDb(), true, 1) + " on all" : juce::String();
}

juce::String ListenBar::inWords() const
{
    juce::StringArray all;
    if (const auto match = matchWords(); match.isNotEmpty())
        all.add ("Matched: " + match);
    if (const auto trimmed = headroomWords(); trimmed.isNotEmpty())
        all.add ("Headroom: " + trimmed);
    const auto peak = [] (double amplitude) { return words::db (20.0 * std::log10 (juce::jmax (1e-6, amplitude)), false, 0); };
    all.add ("In " + peak (inPeak) + ", out " + peak (outPeak));
    if (inClip + outClip > 0)
        all.add ("Full scale was passed");
    return all.joinIntoString (". ");
}
}
