#include "editor/SoundSheet.h"

#include "editor/Words.h"
#include "session/Session.h"
#include "wording/FigureWords.h"
#include "wording/Say.h"

#include <cmath>

namespace coldiron
{
namespace
{
juce::String degrees (double d)
{
    return d <= 0.0 ? "facing it" : d >= 90.0 ? "across it" : juce::String (juce::roundToInt (d)) + juce::String::fromUTF8 ("°");
}

juce::String percent (double share)
{
    return share <= 0.0 ? juce::String ("none") : juce::String (juce::roundToInt (100.0 * share)) + " %";
}
juce::String offOrDb (double db) { return db < 0.0 ? juce::String ("off") : words::db (db, true, 0); }
juce::String noneOrDb (double db) { return db <= 0.0 ? juce::String ("none") : words::db (db, true, 0); }
juce::String trimWords (double db) { return words::db (db, true, 1); }

/** Lines of text that may break. */
void paintNote (juce::Graphics& g, const juce::String& text, juce::Rectangle<int> area, juce::Colour colour)
{
    juce::AttributedString lines;
    lines.append (text, type::text (12.5f), colour);
    lines.setLineSpacing (3.0f);
    lines.draw (g, area.toFloat());
}
}

SoundSheet::SoundSheet (UiContext& d, bool host)
    : Overlay (d), inHost (host), facing (d, "The field", { 0.0, 90.0, 1.0, 0.0 }, degrees),
      buzz (d, "Buzz", { 0.0, 1.0, 0.05, 0.0 }, percent), hiss (d, "Hiss", { -1.0, 80.0, 1.0, -1.0 }, offOrDb),
      drive (d, "Drive", { 0.0, 24.0, 1.0, 0.0 }, noneOrDb), trim (d, "Trim", { -24.0, 24.0, 0.5, 0.0 }, trimWords),
      after (d, { "Direct", "Amplifier", "Own file" }, "After the jack"), headroom (d, { "As it comes", "Kept" }, "Headroom"),
      file (d, "Choose file")
{
    setTitle ("Sound");
    addInOrder (*this, { &facing, &buzz, &hiss, &after, &drive, &file, &headroom, &trim }); // column by column

    facing.setTooltip (
        "How the coils face the mains field. Turn the guitar and hum goes with the cosine of the angle, across it to nothing.");
    buzz.setTooltip (
        "Pulses of dimmers and rectifiers on top of the hum. What the coils cancel of the one they cancel of the other.");
    hiss.setTooltip ("Thermal noise of pickups, pots and input as computed for each option, lifted this far over the playing as "
                     "a driven amplifier does. Playing counts as 0.1 V.");
    drive.setTooltip ("A mild overdriven input before the loudspeaker, the same for all. A take-loud tone keeps its level; "
                      "softer comes up. Adds under 0.1 ms to low notes.");
    after.setTooltip ("What stands between jack and ear, the same for every option and for Now.");
    file.setTooltip ("An impulse response of a loudspeaker: WAV, AIFF or FLAC, up to 2 s. Its own level does not count.");
    headroom.setTooltip ("Kept: one gain for all options and Now, so that none passes full scale on this take, hum and hiss "
                         "included. Never a limiter.");
    trim.setTooltip ("Output, the same for all.");

    facing.onMove = [this] (double v) { ui.session.noise.setFacingDegrees (v); };
    buzz.onMove = [this] (double v) { ui.session.noise.setBuzz (v); };
    hiss.onMove = [this] (double v) { ui.session.noise.setHissGainDb (v); };
    trim.onMove = [this] (double v) { ui.session.output.setTrimDb (v); };
    drive.onSettle = [this] (double v)
    {
        auto choice = ui.session.output.chain();
        if (choice.driveDb == v)
            return;
        choice.driveDb = v;
        ui.session.output.setChain (choice);
    };
    after.onChoice = [this] (int i) { choose (static_cast<OutputSound> (i)); };
    file.onClick = [this] { openFile(); };
    headroom.onChoice = [this] (int i) { ui.session.output.setHeadroomKept (i == 1); };
    follow();
}

void SoundSheet::choose (OutputSound sound)
{
    auto choice = ui.session.output.chain();
    if (sound == OutputSound::file && choice.file.empty())
    {
        follow();
        openFile();
        return;
    }
    choice.sound = sound;
    ui.session.output.setChain (choice);
}

void SoundSheet::openFile()
{
    chooser = std::make_unique<juce::FileChooser> ("Open an impulse response",
                                                   juce::File (words::from (ui.session.output.chain().file.string())),
                                                   "*.wav;*.aif;*.aiff;*.flac");
    chooser->launchAsync (juce::FileBrowserComponent::openMode | juce::FileBrowserComponent::canSelectFiles,
                          [this] (const juce::FileChooser& c)
                          {
                              if (c.getResult() == juce::File())
                                  return;
                              auto choice = ui.session.output.chain();
                              choice.sound = OutputSound::file;
                              choice.file = c.getResult().getFullPathName().toStdString();
                              ui.session.output.setChain (choice);
                          });
}

void SoundSheet::follow()
{
    const auto choice = ui.session.output.chain();
    facing.show (ui.session.noise.facingDegrees());
    buzz.show (ui.session.noise.buzz());
    hiss.show (ui.session.noise.hissGainDb());
    trim.show (ui.session.output.trimDb());
    drive.show (choice.driveDb);
    drive.setEnabled (choice.sound != OutputSound::none);
    after.setChosen (static_cast<int> (choice.sound));
    file.setVisible (choice.sound == OutputSound::file);
    headroom.setChosen (ui.session.output.headroomKept() ? 1 : 0);
}

void SoundSheet::sessionChanged (const Revisions&, const Revisions&)
{
    follow();
    repaint();
}

void SoundSheet::resized()
{
    Overlay::resized();
    auto area = getLocalBounds().reduced (24, 16).withTrimmedTop (44);
    left = area.removeFromLeft ((area.getWidth() - 40) / 2);
    area.removeFromLeft (40);
    right = area;

    auto column = left.withTrimmedTop (30);
    for (Slide* slide : { &facing, &buzz, &hiss })
        slide->setBounds (column.removeFromTop (34));
    column.removeFromTop (12);
    coils = column.removeFromTop (150);
    advice = column.withTrimmedTop (8);

    column = right.withTrimmedTop (30);
    auto row = column.removeFromTop (36);
    after.setBounds (row.removeFromLeft (after.idealWidth()));
    column.removeFromTop (6);
    drive.setBounds (column.removeFromTop (34));
    afterNote = column.removeFromTop (96);
    file.setBounds (afterNote.getRight() - file.idealWidth(), afterNote.getBottom() - 34, file.idealWidth(), 32);
    column.removeFromTop (44);
    row = column.removeFromTop (36);
    headroom.setBounds (row.removeFromLeft (headroom.idealWidth()));
    column.removeFromTop (4);
    headroomNote = column.removeFromTop (44);
    trim.setBounds (column.removeFromTop (34));
}

juce::String SoundSheet::headroomWords() const
{
    const double db = ui.session.output.headroomDb();
    const bool kept = ui.session.output.headroomKept();
    if (db >= -0.05)
        return "None of them passes full scale on this take.";
    return words::db (db, true, 1) + (kept ? " on all, for headroom." : " on all would keep every one below full scale.")
           + (kept && ui.session.transport.source() == Source::host ? " Heard on the take alone." : "");
}

/** One bar a coil, up and down as it is wound, and what is left of them all. */
void SoundSheet::paintCoils (juce::Graphics& g, juce::Rectangle<int> area) const
{
    const auto& t = colours();
    const auto report = ui.session.reports.report (ui.session.monitor.heard());
    g.setFont (type::text (12.5f));
    g.setColour (t.mute);
    auto title = area.removeFromTop (20);
    const OptionId heard = ui.session.monitor.heard();
    type::draw (
        g, (heard == asRecorded ? juce::String ("Now") : words::from (letterOf (heard))) + ": what each coil hums, and the sum",
        title, juce::Justification::centredLeft, true);
    if (report == nullptr || ! report->complete || report->silent || report->coilHums.empty())
    {
        const bool isDone = report != nullptr && report->silent;
        type::draw (g,
                    ! isDone                ? "computing"
                    : report->fault.empty() ? "silent"
                                            : "not computed",
                    area, juce::Justification::centredLeft, false);
        return;
    }
    const double cosine = facingOf (ui.session.noise.facingDegrees());
    double most = 1.0, sum = 0.0;
    for (const auto& coil : report->coilHums)
    {
        most = juce::jmax (most, std::abs (coil.share));
        sum += coil.share;
    }
    most = juce::jmax (most, std::abs (sum));
    auto names = area.removeFromBottom (32);
    const int count = static_cast<int> (report->coilHums.size()) + 1;
    const int each = juce::jmin (72, area.getWidth() / count);
    const float middle = static_cast<float> (area.getCentreY()), reach = static_cast<float> (area.getHeight()) / 2.0f - 4.0f;
    g.setColour (t.line);
    g.fillRect (static_cast<float> (area.getX()), middle - 0.5f, static_cast<float> (each * count), 1.0f);
    for (int i = 0; i < count; ++i)
    {
        const bool isSum = i + 1 == count;
        const double share = cosine * (isSum ? sum : report->coilHums[static_cast<size_t> (i)].share);
        const float height = juce::jmax (1.5f, reach * static_cast<float> (std::abs (share) / most));
        const auto column = juce::Rectangle<int> (area.getX() + i * each, area.getY(), each, area.getHeight());
        const auto bar = juce::Rectangle<float> (static_cast<float> (column.getCentreX()) - 9.0f,
                                                 share >= 0.0 ? middle - height : middle, 18.0f, height);
        g.setColour (isSum ? t.ink : t.mute);
        if (isSum)
            g.fillRoundedRectangle (bar, 2.0f);
        else
            g.drawRoundedRectangle (bar.reduced (0.75f), 2.0f, 1.5f);
        g.setFont (isSum ? type::bold (12.0f) : type::text (12.0f));
        auto name = names.withX (column.getX()).withWidth (each);
        if (isSum)
            type::draw (g, "sum", name.removeFromTop (16), juce::Justification::centred, false);
        else
        {
            type::draw (g, words::plain (report->coilHums[static_cast<size_t> (i)].pickup), name.removeFromTop (16),
                        juce::Justification::centred, true);
            type::draw (g, words::plain (report->coilHums[static_cast<size_t> (i)].coil), name, juce::Justification::centred,
                        true);
        }
    }
}

void SoundSheet::paint (juce::Graphics& g)
{
    Overlay::paint (g);
    paintTitle (g, "Sound");
    const auto& t = colours();
    g.setColour (t.line);
    g.fillRect (left.getRight() + 19, left.getY(), 1, left.getHeight());
    g.setColour (t.mute);
    g.setFont (type::name (15.0f));
    type::draw (g, "Hum and hiss", left.withHeight (22), juce::Justification::centredLeft, false);
    type::draw (g, "After the jack", right.withHeight (22), juce::Justification::centredLeft, false);
    type::draw (g, "Headroom", headroom.getBounds().translated (0, -30).withHeight (22).withWidth (120),
                juce::Justification::centredLeft, false);

    paintCoils (g, coils);
    paintNote (g, adviceWords(), advice, t.mute);

    const auto choice = ui.session.output.chain();
    const auto fault = words::from (ui.session.output.chainFault());
    paintNote (g, afterWords(),
               afterNote.withTrimmedRight (choice.sound == OutputSound::file ? file.getWidth() + 8 : 0).withTrimmedTop (4),
               fault.isNotEmpty() ? t.ink : t.mute);
    paintNote (g, headroomWords(), headroomNote, ui.session.output.headroomDb() < -0.05 ? t.ink : t.mute);
}

juce::String SoundSheet::adviceWords() const
{
    juce::String notes = "Magnetic hum only. Hum that changes when you touch the strings is grounding or shielding.";
    const auto report = ui.session.reports.report (ui.session.monitor.heard());
    if (report != nullptr && ! report->otherCoils.empty())
    {
        notes = words::from (wording::capitalised (wording::otherCoil (report->otherCoils.front()))) + ".\n" + notes;
    }
    return notes;
}

juce::String SoundSheet::afterWords() const
{
    const auto choice = ui.session.output.chain();
    const auto fault = words::from (ui.session.output.chainFault());
    juce::String note;
    if (fault.isNotEmpty())
        note = fault + ". The sound before it goes on.";
    else if (choice.sound == OutputSound::amplifier)
        note = "A small amplifier and loudspeaker, generic and our own: the wiring differs, the amplifier stays the same.";
    else if (choice.sound == OutputSound::file)
        note = words::from (choice.file.filename().string()) + ". Its own level does not count.";
    else
        note = juce::String ("The jack as it is, ")
               + (inHost ? "for the amplifier that follows in the host."
                         : "bright and dry: an amplifier and loudspeaker take most above 5 kHz away.");
    return note;
}

/** The bars as numbers. */
juce::String SoundSheet::coilsInWords() const
{
    const auto report = ui.session.reports.report (ui.session.monitor.heard());
    if (report == nullptr || ! report->complete || report->silent || report->coilHums.empty())
        return report != nullptr && report->silent ? "Silent." : "Computing.";
    const double cosine = facingOf (ui.session.noise.facingDegrees());
    double sum = 0.0;
    juce::StringArray all;
    for (const auto& coil : report->coilHums)
    {
        sum += coil.share;
        all.add (words::plain (coil.pickup) + " " + words::plain (coil.coil) + " " + juce::String (cosine * coil.share, 2));
    }
    all.add ("sum " + juce::String (cosine * sum, 2));
    return "Hum of each coil, 1 being one coil that faces the field: " + all.joinIntoString (", ") + ".";
}

juce::String SoundSheet::inWords() const
{
    return coilsInWords() + " " + adviceWords() + " " + afterWords() + " " + headroomWords();
}
}
