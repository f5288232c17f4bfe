#pragma once

#include "strings/StringMix.h"

#include <Eigen/Core>

#include <memory>
#include <vector>

namespace coldiron
{
/** stringWeights() on a whole grid, for strings and coil positions that stay the same while knobs turn.
    Immutable; only a saving of time: the numbers are those of stringWeights(). */
class Weights
{
public:
    Weights (const StringSet&, const std::vector<CoilPosition>&, const std::vector<double>& hz);

    const Eigen::MatrixXd& at (size_t index) const { return table[index]; }

    /** The last few tables, shared. Any thread but the audio thread. */
    static std::shared_ptr<const Weights> shared (const StringSet&, const std::vector<CoilPosition>&,
                                                  const std::vector<double>& hz);

private:
    std::vector<Eigen::MatrixXd> table;
};

bool areSameStrings (const StringSet&, const StringSet&);
bool areSamePositions (const std::vector<CoilPosition>&, const std::vector<CoilPosition>&);
}
