#pragma once

#include "response/GuitarResponse.h"

#include <Eigen/Core>

namespace coldiron
{
/** GuitarResponse::sourceResponses() as a vector, for sums over coils. Apart from GuitarResponse.h, so that those who only hold a voice
    need not read Eigen. */
Eigen::VectorXcd sourceResponses (const GuitarResponse&, double hz);
}
