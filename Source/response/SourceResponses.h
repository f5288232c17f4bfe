#pragma once

#include "response/GuitarResponse.h"

#include <Eigen/Core>

namespace coldiron
{
/** GuitarResponse::sourceResponses() as a vector, for sums over coils. Apart from GuitarResponse.h, so that a file which
    only holds a response does not include Eigen. */
Eigen::VectorXcd sourceResponses (const GuitarResponse&, double hz);
}
