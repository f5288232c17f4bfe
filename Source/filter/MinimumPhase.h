#pragma once

#include <Eigen/Core>

#include <vector>

namespace coldiron
{
/** K with phase = K ln|T| on the warped axis: ln|T| goes straight from point to point over ln W, its lowest slope goes
    on below, flat above, each segment integrated exactly against Bode's kernel ln coth (|u|/2).
    Source: H. W. Bode, Network Analysis and Feedback Amplifier Design, ch. 14 (from memory); tests hold it to closed forms.
    @param w  the warped frequencies, rising, > 0; the matrix is square, in radians per neper */
Eigen::MatrixXd minimumPhaseMatrix (const std::vector<double>& w);
}
