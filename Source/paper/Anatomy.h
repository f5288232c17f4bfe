#pragma once

#include "guitar/Harness.h"
#include "paper/Router.h"

#include <string>
#include <vector>

namespace coldiron
{
/** How a part looks from the back. */
enum class Figure { pickup, pot, block, lever, strip, standing, lying, jack, bridge };

/** A solder point of a placed part. */
struct Terminal
{
    std::string point; ///< full name
    int x = 0, y = 0;  ///< drawing units, multiples of 10
    Heading out = Heading::right;
};

struct Area
{
    int x = 0, y = 0, width = 0, height = 0;
};

/** What a part's mark says. */
enum class PartMark { stays, isNew, isOut };

/** A part in its place. x, y: top left of a pickup, the middle of everything else. */
struct PlacedPart
{
    const Part* part = nullptr;
    Figure figure = Figure::jack;
    PartMark mark = PartMark::stays;
    bool turned = false; ///< standing: lug 2 above; lying: lug 2 left
    int x = 0, y = 0, width = 0, height = 0;
    std::vector<Terminal> terminals;
    std::vector<Area> taken; ///< where no wire may pass
};

/** Room a figure needs around its place. */
struct Extents
{
    int left = 0, top = 0, right = 0, bottom = 0;
};

/** A push-pull of one or two poles whose lugs are named POLE, POLE-down, POLE-up, drawn with its contacts. */
bool isPlainPushPull (const SwitchType&, std::vector<std::string>& poles);

/** Stands for the bridge, whose point "strings" is of no part. */
const Part& bridgePart();

Figure figureOf (const Part&);
void measure (PlacedPart&); ///< width and height from the kind
Extents extentsOf (const PlacedPart&);
void buildAnatomy (PlacedPart&); ///< terminals and areas taken, from x and y
}
