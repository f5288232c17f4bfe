#pragma once

#include "audition/Voice.h"

#include <Eigen/Core>

namespace coldiron
{
/** Voice::drives() as a vector, for sums over coils. Apart from Voice.h, so that those who only hold a voice
    need not read Eigen. */
Eigen::VectorXcd drivesOf (const Voice&, double hz);
}
