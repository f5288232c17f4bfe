#pragma once

#include "job/Job.h"

#include <string>
#include <vector>

namespace coldiron
{
/** What a guitar shows from the front, read from its description: nothing is drawn by hand for any of them. */
struct GuitarPicture
{
    enum class Group { sixStrings, sevenAndBaritone, basses };
    enum class Lever { toggle, blade, rotary, mini, push, pull };

    struct Coil
    {
        double lowMm = 0.0, highMm = 0.0;    ///< from the bridge, at the lowest and at the highest string
        int firstString = 0, lastString = 0; ///< heard, counted from the lowest
    };
    struct Control
    {
        bool isKnob = true;
        bool pulls = false; ///< a knob with a switch on it
        int rings = 1;      ///< pots of one hole
        Lever lever = Lever::toggle;
        int positions = 0;
    };

    std::string preset, name;
    Group group = Group::sixStrings;
    int strings = 6;
    double scaleMm = 0.0; ///< the longest
    std::vector<Coil> coils;
    std::vector<Control> controls; ///< in the order of the parts

    int knobs() const;
    int levers() const;
};

GuitarPicture pictureOf (const Guitar&);

std::string groupTitle (GuitarPicture::Group);

/** Whether every word is in its name, its preset's, or what it has: "bass", "blade", "four knobs". Case counts for nothing. */
bool answersTo (const GuitarPicture&, const std::string& words);
}
