#include "wording/ConfidenceWords.h"
#include "wording/FigureWords.h"
#include "wording/ListeningWords.h"
#include "wording/Say.h"
#include "wording/TakeWords.h"

#include <catch2/catch.hpp>

namespace soundWordsTest
{
using namespace coldiron;
using namespace coldiron::wording;

TEST_CASE ("a sentence takes its values by name, in any order and as often as it says them")
{
    CHECK (say ("no name") == "no name");
    CHECK (say ("{count} of {all}", 2, std::string ("three")) == "2 of three");
    CHECK (say ("{a}, {b}; {a} again.", 1, 2) == "1, 2; 1 again.");
    CHECK (say ("{name}!", std::string ("{pickup}, coils in parallel")) == "{pickup}, coils in parallel!");
    const std::vector<std::string> values { "Hals", "Steg" };
    CHECK (filled ("{a} before {b}", values) == "Hals before Steg");
    static_assert (placesIn ("{a}, {b}; {a} again") == 2);
    static_assert (placesIn ("left {open") == -1);
}

TEST_CASE ("names are listed as a person lists them")
{
    CHECK (listOf ({}).empty());
    CHECK (listOf ({ "neck" }) == "neck");
    CHECK (listOf ({ "neck", "bridge" }) == "neck and bridge");
    CHECK (listOf ({ "a", "b", "c" }) == "a, b and c");
    CHECK (listOf ({ "a", "b", "c" }, 3) == "a, b and c");
    CHECK (listOf ({ "a", "b", "c", "d", "e" }, 3) == "a, b, c and 2 more");
    CHECK (capitalised ("no sound") == "No sound");
    CHECK (plainName ("neck-volume") == "neck volume");
    CHECK (decimals (-1.25, 1) == "-1.2");
}

TEST_CASE ("the pill says the weaker of the two marks, the explanation both")
{
    Confidence sure;
    sure.guitar = Provenance::fromOhms;
    CHECK (weakerMark (sure) == "from ohms");
    sure.playing = Similarity::close;
    CHECK (weakerMark (sure) == "close"); // as weak: the playing is said
    sure.guitar = Provenance::assumed;
    CHECK (weakerMark (sure) == "assumed");
    sure.playing = Similarity::fair;
    CHECK (weakerMark (sure) == "fair");
    sure.playing = Similarity::rough;
    CHECK (weakerMark (sure) == "rough");
    CHECK (
        explanation (sure)
        == "Trust the character, thin and hollow, and roughly the level; not single notes. For riffs and solos: fewer strings, "
           "less sure. Computed for a typical pickup of this kind; three meter readings would make it surer.");
    sure.playing = Similarity::sameCoils;
    sure.guitar = Provenance::measured;
    CHECK (weakerMark (sure) == "same coils");
    REQUIRE (markMeanings (sure).size() == 1);
    CHECK (markMeanings (sure)[0].mark == "same coils");
    CHECK (explanation (sure) == "This option hears the strings just as the take did; only the circuit differs.");
}

TEST_CASE ("levels, hum and noise in words that a client reads")
{
    CHECK (levelChange (-300.0) == "silent");
    CHECK (levelChange (0.2) == "as loud");
    CHECK (levelChange (1.0) == "hardly louder");
    CHECK (levelChange (-2.0) == "a little quieter");
    CHECK (levelChange (-4.0) == "clearly quieter, turn the amplifier up a little");
    CHECK (levelChange (-8.0) == "much quieter, turn the amplifier up");
    CHECK (levelChange (14.0) == "very much louder, turn the amplifier down a lot");

    CHECK (humAgainstSingleCoil (-30.0) == "quiet");
    CHECK (humAgainstSingleCoil (-12.1) == "hums, 12 dB less than a single coil");
    CHECK (humAgainstSingleCoil (0.4) == "hums like a single coil");
    CHECK (humAgainstSingleCoil (5.8) == "hums more than a single coil (+6 dB)");
    Figures silent;
    silent.silent = true;
    CHECK (hum (silent) == "silent");

    CHECK (noiseTrust ({}).empty());
    CHECK (
        noiseTrust ({ 3548.0, 12.04, 4000.0, false })
        == "trust it up to 3.5 kHz: above, the take's own noise comes up by 12 dB. Record again louder, up to peaks of -6 dBFS, "
           "away from screens and chargers, with a few seconds of nothing played.");
    CHECK (noiseTrust ({ 3548.0, 12.04, 4000.0, true }).find ("volume and tone at 10") != std::string::npos);
}

TEST_CASE ("the other coil and what a volume at 0 does")
{
    CHECK (
        otherCoil ({ "", "", "bridge", "north", "south", 6.02, -100.0 })
        == "here the two coils kept are wound alike and hum together: keep the south coil of the bridge instead of its north and "
           "the hum goes");
    CHECK (otherCoil ({ "selector", "both", "bridge", "north", "south", 6.02, -28.0 })
           == "with the selector at both the two coils kept are wound alike and hum together: keep the south coil of the bridge "
              "instead of its north and the hum falls by about 34 dB");
    VolumeFigures volume;
    volume.knob = "neck-volume";
    CHECK (mutesOthers (volume).empty());
    volume.mutesOthers = true;
    CHECK (mutesOthers (volume) == "neck-volume at 0 mutes the other pickup");
    volume.mutesOthers = false;
    CHECK (mutesOthers (volume) == "neck-volume at 0 does not mute the other pickup");
}

TEST_CASE ("from which take, and which would be surer")
{
    TakeChoice choice;
    CHECK (derivedFrom (choice).empty());
    CHECK (surerTake (choice).empty());
    choice.take = 1;
    choice.pickups = { "neck" };
    CHECK (derivedFrom (choice) == "from take 2, neck alone: same coils");
    choice.pickups = { "neck", "bridge" };
    CHECK (derivedFrom (choice) == "from take 2, neck and bridge: same coils");
    choice.pickups = {};
    CHECK (derivedFrom (choice) == "from take 2, nothing: same coils");
    choice.surer = { SurerTake::Kind::otherTake, 0, { "bridge" }, Similarity::close };
    CHECK (surerTake (choice) == "surer from take 1, bridge alone: close");
    choice.surer = { SurerTake::Kind::recordAnother, -1, { "neck" }, {} };
    CHECK (surerTake (choice) == "record a take of the neck pickup: this would be surer");
    choice.surer.pickups = { "neck", "bridge" };
    CHECK (surerTake (choice) == "record one take per pickup (neck and bridge): this would be surer");
}

TEST_CASE ("what is wrong with a take, and what to do")
{
    using Kind = TakeFault::Kind;
    using Sides = TakeFault::Sides;
    CHECK (takeFault ({ Kind::silent }) == "silent");
    CHECK (takeFault ({ Kind::clipped, 1 }) == "clipped in 1 place");
    CHECK (takeFault ({ Kind::clipped, 12 }) == "clipped in 12 places");
    CHECK (takeFault ({ Kind::tooQuiet, 0, -40.2 })
           == "quiet, peaks at \xe2\x88\x92"
              "40 dBFS");
    CHECK (takeFaultCost ({ Kind::tooQuiet, 0, -40.2 })
           == "Noise comes up with the take when it is turned up to playing level. Raise the input by about 28 dB.");
    CHECK (takeFault ({ Kind::noisy, 0, -38.0 }) == "noisy, 38 dB under the playing");
    CHECK (takeFault ({ Kind::dark, 0, -52.0 }) == "dark, treble 52 dB under the mids");
    CHECK (takeFault ({ Kind::sidesDiffer, 0, 0.0, Sides::rightSilent }) == "the right side is silent");
    CHECK (takeFault ({ Kind::sidesDiffer, 0, 0.0, Sides::leftSilent }) == "the left side is silent");
    CHECK (takeFault ({ Kind::sidesDiffer, 0, 0.0, Sides::upsideDown }) == "one side is upside down");
    CHECK (takeFault ({ Kind::sidesDiffer, 0, 0.0, Sides::differ }) == "the sides differ");
    CHECK (takeFault ({ Kind::sidesDiffer, 0, 3.4, Sides::louder }) == "one side is 3 dB louder");
    for (const auto kind : { Kind::silent, Kind::clipped, Kind::noisy, Kind::dark, Kind::sidesDiffer })
        CHECK (takeFaultCost ({ kind }).back() == '.');
}

TEST_CASE ("places and trials in words")
{
    CHECK (place (0) == "first");
    CHECK (place (8) == "ninth");
    CHECK (place (9).empty());
    CHECK (guessing (9, 10) == "9 of 10: guessing does that well about 1 time in 93.");   // 1024 / 11 = 93.09
    CHECK (guessing (12, 16) == "12 of 16: guessing does that well about 1 time in 26."); // 65536 / 2517 = 26.04
    CHECK (guessing (5, 10) == "5 of 10: guessing does that well about 6 times in 10.");  // 638 / 1024
    CHECK (guessing (2, 10) == "2 of 10: guessing does that well nearly every time.");    // 1013 / 1024
    CHECK (guessing (0, 10) == "0 of 10: guessing does that well every time.");
    CHECK (guessing (16, 16) == "16 of 16: guessing does that well about 1 time in 66000."); // 65536
    CHECK (guessing (25, 25) == "25 of 25: guessing does that well less than 1 time in a million.");

    BlindResult order;
    order.ranking = { { "B" }, { "A", "recorded" }, { "H" } };
    CHECK (blindResult (order) == "First B, then A and as recorded, then H.");
    BlindResult abx;
    abx.kind = BlindResult::Kind::abx;
    abx.pair = { "recorded", "B" };
    abx.trials = 16;
    abx.right = 12;
    CHECK (blindResult (abx) == "as recorded and B: 12 of 16: guessing does that well about 1 time in 26.");
}
}
