#pragma once

#include <Eigen/Core>

#include <vector>

namespace coldiron
{
/** K with phase = K ln|T| on the warped axis: between points ln|T| follows the cubic over ln W through the four around,
    in four straight pieces, each integrated exactly against Bode's kernel ln coth (|u|/2); below the grid its lowest
    slope goes on, above it is flat.
    Source: H. W. Bode, Network Analysis and Feedback Amplifier Design, ch. 14 (from memory); tests hold it to closed forms.
    @param w  the warped frequencies, four or more, rising, > 0; the matrix is square, in radians per neper */
Eigen::MatrixXd minimumPhaseMatrix (const std::vector<double>& w);
}
