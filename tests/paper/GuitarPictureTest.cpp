// A guitar's picture says what its description says.
// Open strings: guitar E2 82.41 Hz, bass E1 41.20 Hz, low B0 30.87 Hz (ISO 16, from memory).

#include "paper/GuitarPicture.h"

#include <catch2/catch.hpp>

namespace guitarPictureTest
{
using namespace coldiron;

namespace
{
PresetFolders shipped() { return PresetFolders ({ std::filesystem::path (COLDIRON_SOURCE) / "presets" }); }

GuitarPicture picture (const char* preset)
{
    Diagnostics diagnostics;
    const auto guitar = readGuitar (preset, shipped(), diagnostics);
    REQUIRE (guitar);
    return pictureOf (*guitar);
}
}

TEST_CASE ("pickups stand at their distances, controls are counted", "[picture]")
{
    const auto two = picture ("two-humbuckers-four-knobs");
    CHECK (two.group == GuitarPicture::Group::sixStrings);
    REQUIRE (two.coils.size() == 4);
    CHECK (two.coils[0].lowMm == Approx (152.0 + 9.0)); // the preset's 152 mm and the coil's offset of 9 mm
    CHECK (two.coils[3].highMm == Approx (44.0 - 9.0));
    CHECK (two.knobs() == 4);
    CHECK (two.levers() == 1);
    const auto slanted = picture ("seven-string-multi-scale");
    CHECK (slanted.group == GuitarPicture::Group::sevenAndBaritone);
    CHECK (slanted.strings == 7);
    CHECK (slanted.scaleMm == 686.0);
    CHECK (slanted.coils[0].lowMm - slanted.coils[0].highMm == Approx (12.0));
    CHECK (picture ("baritone").group == GuitarPicture::Group::sevenAndBaritone);
    const auto split = picture ("bass-split-coil");
    CHECK (split.group == GuitarPicture::Group::basses);
    REQUIRE (split.coils.size() == 2);
    CHECK (split.coils[0].lastString - split.coils[0].firstString == 1); // each coil hears two of the four strings
}

TEST_CASE ("every shipped guitar has a picture in a group and is found by its words", "[picture]")
{
    const auto names = shipped().list ("guitars");
    REQUIRE (names.size() > 20);
    int basses = 0;
    for (const auto& name : names)
    {
        INFO (name);
        const auto drawn = picture (name.c_str());
        CHECK_FALSE (drawn.coils.empty());
        CHECK (drawn.knobs() >= 1);
        for (const auto& coil : drawn.coils)
        {
            CHECK (coil.highMm > 0.0);
            CHECK (coil.lowMm < drawn.scaleMm / 2.0); // before the last fret of any fretboard
            CHECK (coil.firstString <= coil.lastString);
        }
        CHECK ((drawn.group == GuitarPicture::Group::basses) == (name.rfind ("bass", 0) == 0));
        basses += drawn.group == GuitarPicture::Group::basses;
        CHECK (answersTo (drawn, drawn.name.substr (0, 4)));
    }
    CHECK (basses > 3);
    CHECK (answersTo (picture ("three-single-coils"), "BLADE three"));
    CHECK_FALSE (answersTo (picture ("three-single-coils"), "bass"));
}
}
