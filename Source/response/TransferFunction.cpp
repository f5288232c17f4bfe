#include "response/TransferFunction.h"

#include "response/SourceResponses.h"
#include "response/Weights.h"

#include <cmath>
#include <optional>

namespace coldiron
{
namespace
{
double weighted (const Eigen::VectorXcd& h, const Eigen::MatrixXd& weights)
{
    // A real symmetric W: h^H W h splits into the real and the imaginary part.
    const Eigen::VectorXd re = h.real(), im = h.imag();
    return std::max (0.0, re.dot (weights * re) + im.dot (weights * im));
}

double ratio (double option, double recorded) { return recorded > 0.0 ? std::sqrt (option / recorded) : 0.0; }

/** |h_new| / |h_rec| where they are proportional: the string weights cancel and only the circuit is left. */
std::optional<double> circuitGain (const Eigen::VectorXcd& hRecorded, const Eigen::VectorXcd& hOption)
{
    const double recordedNorm = hRecorded.squaredNorm(), optionNorm = hOption.squaredNorm();
    const double common = std::norm (hRecorded.dot (hOption));
    if (recordedNorm <= 0.0 || common < (1.0 - 1e-12) * recordedNorm * optionNorm)
        return {};
    return std::sqrt (optionNorm / recordedNorm);
}
}

TransferFunction::TransferFunction (const GuitarResponse& r, const GuitarResponse& o)
    : recorded (r), option (o),
      sameCoilPositions (areSameStrings (r.strings(), o.strings()) && areSamePositions (r.coilPositions(), o.coilPositions())),
      sure (assessConfidence (r, o))
{
}

double TransferFunction::gain (double hz, const StringDraw& draw) const
{
    if (recorded.isSilent() || option.isSilent())
        return 0.0;
    const Eigen::VectorXcd hRecorded = sourceResponses (recorded, hz), hOption = sourceResponses (option, hz);
    if (const auto proportional = sameCoilPositions ? circuitGain (hRecorded, hOption) : std::nullopt)
        return *proportional;
    const Eigen::MatrixXd weights = stringWeights (option.strings(), option.coilPositions(), hz, draw);
    if (sameCoilPositions)
        return ratio (weighted (hOption, weights), weighted (hRecorded, weights));
    return ratio (weighted (hOption, weights),
                  weighted (hRecorded, stringWeights (recorded.strings(), recorded.coilPositions(), hz, draw)));
}

std::vector<double> TransferFunction::gains (const std::vector<double>& hz) const
{
    std::vector<double> result (hz.size(), 0.0);
    if (recorded.isSilent() || option.isSilent())
        return result;

    std::shared_ptr<const Weights> optionWeights, recordedWeights;
    Eigen::VectorXcd hRecorded (recorded.numCoils()), hOption (option.numCoils());
    for (size_t i = 0; i < hz.size(); ++i)
    {
        recorded.sourceResponses (hz[i], hRecorded.data());
        option.sourceResponses (hz[i], hOption.data());
        if (const auto proportional = sameCoilPositions ? circuitGain (hRecorded, hOption) : std::nullopt)
        {
            result[i] = *proportional;
            continue;
        }
        if (! optionWeights)
        {
            optionWeights = Weights::shared (option.strings(), option.coilPositions(), hz);
            recordedWeights =
                sameCoilPositions ? optionWeights : Weights::shared (recorded.strings(), recorded.coilPositions(), hz);
        }
        result[i] = ratio (weighted (hOption, optionWeights->at (i)), weighted (hRecorded, recordedWeights->at (i)));
    }
    return result;
}

ModalFilter designFilter (const TransferFunction& transfer, const FilterDesigner& designer)
{
    if (transfer.recordedResponse().isSilent() || transfer.optionResponse().isSilent())
        return ModalFilter::silence (designer.sampleRate());
    return designer.design (transfer.gains (designer.gridHz()), transfer.confidence().isEstimated());
}
}
