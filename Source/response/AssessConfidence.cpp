#include "response/Confidence.h"
#include "response/GuitarResponse.h"
#include "response/SourceResponses.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
constexpr double sameCoilMm = 1.5;   ///< coils nearer than this are one for the strings (3 mm is under 0.15 dB)
constexpr double samePlaceMm = 27.0; ///< coils of one pickup, about 18 mm apart
constexpr double heardShare =
    0.15; ///< of the loudest coil: less than this, say a shorted coil through its coupling, is not heard
constexpr double opposedShare = 0.4; ///< a coil against the loudest by more than this is out of phase

/** What one response hears at one frequency: a share per place, relative to the loudest, real by the loudest's phase. */
struct Heard
{
    std::vector<double> millimetres;
    std::vector<std::vector<bool>> hears;
    std::vector<double> share;
};

Heard heardAt (const GuitarResponse& response, double hz)
{
    const Eigen::VectorXcd h = sourceResponses (response, hz);
    Heard heard;
    Eigen::Index loudest = 0;
    const double most = h.size() == 0 ? 0.0 : h.cwiseAbs().maxCoeff (&loudest);
    for (Eigen::Index k = 0; k < h.size(); ++k)
    {
        const auto& position = response.coilPositions()[static_cast<size_t> (k)];
        double place = 0.0;
        for (const double mm : position.distanceMm)
            place += mm / static_cast<double> (position.distanceMm.size());
        heard.millimetres.push_back (place);
        heard.hears.push_back (position.hears);
        heard.share.push_back (most > 0.0 ? (h[k] * std::conj (h[loudest])).real() / (most * most) : 0.0);
    }
    return heard;
}

/** Both responses over the union of their coils. */
struct Pairing
{
    std::vector<double> millimetres;
    std::vector<double> recorded, option;
};

Pairing pair (const Heard& recorded, const Heard& option)
{
    Pairing pairing;
    std::vector<std::vector<bool>> hears;
    const auto add = [&] (const Heard& heard, std::vector<double> Pairing::*side)
    {
        for (size_t k = 0; k < heard.share.size(); ++k)
        {
            size_t at = 0;
            while (at < pairing.millimetres.size()
                   && (std::abs (pairing.millimetres[at] - heard.millimetres[k]) > sameCoilMm || hears[at] != heard.hears[k]))
                ++at;
            if (at == pairing.millimetres.size())
            {
                pairing.millimetres.push_back (heard.millimetres[k]);
                hears.push_back (heard.hears[k]);
                pairing.recorded.push_back (0.0);
                pairing.option.push_back (0.0);
            }
            (pairing.*side)[at] += heard.share[k];
        }
    };
    add (recorded, &Pairing::recorded);
    add (option, &Pairing::option);
    return pairing;
}

/** Cosine of the angle between two vectors, sign left out; 0 where one is empty. */
double likeness (const std::vector<double>& a, const std::vector<double>& b)
{
    double ab = 0.0, aa = 0.0, bb = 0.0;
    for (size_t i = 0; i < a.size(); ++i)
    {
        ab += a[i] * b[i];
        aa += a[i] * a[i];
        bb += b[i] * b[i];
    }
    return aa > 0.0 && bb > 0.0 ? std::abs (ab) / std::sqrt (aa * bb) : 0.0;
}

/** The places of whole pickups: coils within samePlaceMm of the first of them count together. */
std::vector<double> byPlace (const std::vector<double>& millimetres, const std::vector<double>& share,
                             std::vector<double>& places)
{
    std::vector<double> sum (places.size(), 0.0);
    for (size_t k = 0; k < share.size(); ++k)
    {
        size_t at = 0;
        while (at < places.size() && std::abs (places[at] - millimetres[k]) > samePlaceMm)
            ++at;
        if (at == places.size())
        {
            places.push_back (millimetres[k]);
            sum.push_back (0.0);
        }
        sum[at] += std::abs (share[k]);
    }
    return sum;
}

int heardPlaces (const std::vector<double>& places)
{
    const double most = places.empty() ? 0.0 : *std::max_element (places.begin(), places.end());
    return static_cast<int> (
        std::count_if (places.begin(), places.end(), [&] (double p) { return p > heardShare * most && p > 0.0; }));
}

bool opposed (const std::vector<double>& share)
{
    return std::any_of (share.begin(), share.end(), [] (double s) { return s < -opposedShare; });
}

void dropUnheard (std::vector<double>& share)
{
    for (auto& s : share)
        if (std::abs (s) < heardShare)
            s = 0.0;
}

Confidence judgeAt (const GuitarResponse& recorded, const GuitarResponse& option, double hz)
{
    auto pairing = pair (heardAt (recorded, hz), heardAt (option, hz));
    const double alike = likeness (pairing.recorded, pairing.option); // before dropping: it is the exact measure
    dropUnheard (pairing.recorded);
    dropUnheard (pairing.option);

    std::vector<double> places;
    auto recordedPlaces = byPlace (pairing.millimetres, pairing.recorded, places);
    const auto optionPlaces = byPlace (pairing.millimetres, pairing.option, places);
    recordedPlaces.resize (places.size(), 0.0);
    const int numRecorded = heardPlaces (recordedPlaces), numOption = heardPlaces (optionPlaces);
    const bool onePlace = numRecorded == 1 && numOption == 1;
    const double alikePlaces = likeness (recordedPlaces, optionPlaces);
    const bool recordedOpposed = opposed (pairing.recorded), optionOpposed = opposed (pairing.option);

    // Within one pickup unequal coils may share otherwise (series to parallel); between pickups much less.
    Confidence confidence;
    const bool sameGuitar = recorded.strings().strings.size() == option.strings().strings.size();
    if (sameGuitar && recordedOpposed == optionOpposed && alike > (onePlace ? 0.96 : 0.99))
        return confidence;
    if (recordedOpposed || optionOpposed)
    {
        confidence.playing = Similarity::rough;
        confidence.betweenOneAndBothOutOfPhase =
            recordedOpposed != optionOpposed ? (recordedOpposed ? numOption : numRecorded) > 1 : numRecorded != numOption;
        return confidence;
    }
    const bool bass = recorded.strings().isBass() || option.strings().isBass();
    confidence.playing = sameGuitar && ! bass && alikePlaces > 0.99 ? Similarity::close : Similarity::fair;
    return confidence;
}

/** The weakest knowledge of the pickups heard. */
Provenance weakest (const GuitarResponse& response, double hz)
{
    Provenance known = Provenance::measured;
    const Eigen::VectorXcd h = sourceResponses (response, hz);
    const double most = h.size() == 0 ? 0.0 : h.cwiseAbs().maxCoeff();
    for (Eigen::Index k = 0; k < h.size(); ++k)
        if (most == 0.0 || std::abs (h[k]) > 0.05 * most)
            known = std::min (known, response.guitar().coils[static_cast<size_t> (k)].known);
    return known;
}
}

Confidence assessConfidence (const GuitarResponse& recorded, const GuitarResponse& option)
{
    Confidence confidence;
    confidence.guitar = std::min (weakest (recorded, 500.0), weakest (option, 500.0));
    if (recorded.isSilent() || option.isSilent())
        return confidence; // silence is silence however the strings are heard
    for (const double hz : { 150.0, 300.0, 600.0, 1200.0, 2400.0 })
    {
        const auto here = judgeAt (recorded, option, hz);
        if (here.playing > confidence.playing)
            confidence.playing = here.playing;
        confidence.betweenOneAndBothOutOfPhase = confidence.betweenOneAndBothOutOfPhase || here.betweenOneAndBothOutOfPhase;
    }
    return confidence;
}
}
