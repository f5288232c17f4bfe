#include "paper/GuitarPicture.h"

#include <algorithm>
#include <cctype>
#include <sstream>

namespace coldiron
{
namespace
{
constexpr double lowestOfBass = 60.0, lowestOfGuitar = 82.0; // Hz; the lowest string of a guitar in E is 82.41

GuitarPicture::Lever leverOf (const Part& part, const SwitchPart& lever)
{
    const auto is = [&] (const char* word) { return part.preset.rfind (word, 0) == 0; };
    const auto count = lever.type.positions.size();
    if (is ("push-push") || is ("kill"))
        return GuitarPicture::Lever::push;
    if (is ("push-pull"))
        return GuitarPicture::Lever::pull;
    if (is ("rotary") || count > 5)
        return GuitarPicture::Lever::rotary;
    if (is ("blade"))
        return GuitarPicture::Lever::blade;
    if (is ("mini") || count == 2)
        return GuitarPicture::Lever::mini;
    return is ("toggle") || count == 3 ? GuitarPicture::Lever::toggle : GuitarPicture::Lever::blade;
}

void addCoils (GuitarPicture& picture, const Guitar& guitar, const PickupPart& part)
{
    const auto count = static_cast<int> (guitar.strings.size());
    for (const auto& coil : part.pickup.coils)
    {
        const double middle = part.bridgeMm + coil.offsetMm;
        GuitarPicture::Coil drawn { middle + part.pickup.slantMm / 2.0, middle - part.pickup.slantMm / 2.0, 0, count - 1 };
        if (! coil.hears.empty())
        {
            drawn.firstString = count - 1;
            drawn.lastString = 0;
            for (int s = 0; s < count; ++s)
                if (std::find (coil.hears.begin(), coil.hears.end(), guitar.strings[static_cast<size_t> (s)].name)
                    != coil.hears.end())
                {
                    drawn.firstString = std::min (drawn.firstString, s);
                    drawn.lastString = std::max (drawn.lastString, s);
                }
        }
        picture.coils.push_back (drawn);
    }
}

std::string lower (std::string text)
{
    std::transform (text.begin(), text.end(), text.begin(), [] (unsigned char c) { return std::tolower (c); });
    return text;
}
}

int GuitarPicture::knobs() const
{
    return static_cast<int> (std::count_if (controls.begin(), controls.end(), [] (const Control& c) { return c.isKnob; }));
}

int GuitarPicture::levers() const { return static_cast<int> (controls.size()) - knobs(); }

GuitarPicture pictureOf (const Guitar& guitar)
{
    GuitarPicture picture;
    picture.preset = guitar.preset;
    picture.name = guitar.name;
    picture.strings = static_cast<int> (guitar.strings.size());
    double lowest = 1e9;
    for (const auto& string : guitar.strings)
    {
        lowest = std::min (lowest, string.hz);
        picture.scaleMm = std::max (picture.scaleMm, string.scaleMm);
    }
    picture.group = lowest < lowestOfBass && picture.scaleMm > 700.0 ? GuitarPicture::Group::basses
                    : picture.strings > 6 || lowest < lowestOfGuitar ? GuitarPicture::Group::sevenAndBaritone
                                                                     : GuitarPicture::Group::sixStrings;
    std::vector<std::string> knobs;
    for (const auto& part : guitar.harness.parts())
    {
        if (const auto* pickup = part.as<PickupPart>())
            addCoils (picture, guitar, *pickup);
        else if (const auto* pot = part.as<PotPart>())
        {
            const auto found = std::find (knobs.begin(), knobs.end(), part.knobName());
            if (found != knobs.end())
                continue; // pots of one shaft turn by one knob
            knobs.push_back (part.knobName());
            GuitarPicture::Control knob;
            knob.rings = pot->shaft.empty() ? 1 : 2;
            knob.pulls = std::any_of (guitar.harness.parts().begin(), guitar.harness.parts().end(),
                                      [&] (const Part& other)
                                      { return other.as<SwitchPart>() != nullptr && other.as<SwitchPart>()->on == part.name; });
            picture.controls.push_back (knob);
        }
        else if (const auto* lever = part.as<SwitchPart>(); lever != nullptr && lever->on.empty())
        {
            GuitarPicture::Control control;
            control.isKnob = false;
            control.lever = leverOf (part, *lever);
            control.positions = static_cast<int> (lever->type.positions.size());
            picture.controls.push_back (control);
        }
    }
    return picture;
}

std::string groupTitle (GuitarPicture::Group group)
{
    return group == GuitarPicture::Group::basses             ? "Basses"
           : group == GuitarPicture::Group::sevenAndBaritone ? "Seven strings and baritone"
                                                             : "Six strings";
}

bool answersTo (const GuitarPicture& picture, const std::string& words)
{
    static const char* const numbers[] { "no", "one", "two", "three", "four", "five", "six", "seven", "eight" };
    const auto knobs = static_cast<size_t> (picture.knobs());
    std::string hay = picture.name + " " + picture.preset + " " + groupTitle (picture.group) + " "
                      + numbers[std::min<size_t> (8, knobs)] + " knobs";
    for (const auto& control : picture.controls)
        if (! control.isKnob)
            hay += control.lever == GuitarPicture::Lever::blade    ? " blade"
                   : control.lever == GuitarPicture::Lever::rotary ? " rotary"
                   : control.lever == GuitarPicture::Lever::mini   ? " mini switch"
                   : control.lever == GuitarPicture::Lever::toggle ? " toggle"
                                                                   : " button";
    hay = lower (hay);
    std::istringstream asked (lower (words));
    for (std::string word; asked >> word;)
        if (hay.find (word) == std::string::npos)
            return false;
    return true;
}
}
