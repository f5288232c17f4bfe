#pragma once

namespace coldiron
{
/** What is plugged into the jack. A mono plug lays a stereo jack's ring on the sleeve. A stereo plug takes tip and ring to
    an input of their own each, alike in cable and input; what is heard is one of them. */
enum class Plug { mono, stereoTip, stereoRing };

/** What hangs on the jack: cable and input. */
struct Load
{
    double cableFarads = 500e-12; ///< >= 0
    double inputOhms = 1e6;       ///< > 0
    double inputFarads = 20e-12;  ///< >= 0
    Plug plug = Plug::mono;

    bool operator== (const Load&) const = default;
};
}
