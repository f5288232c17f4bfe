#pragma once

#include "circuit/StateForm.h"

#include <complex>

namespace coldiron
{
/** A state form turned to upper Hessenberg form by an orthogonal transformation: O(m^2) a frequency, and as accurate as
    a direct solution whatever the eigenvectors are. */
class HessenbergForm
{
public:
    explicit HessenbergForm (const StateForm&);

    /** Responses to the inputs first .. first + count - 1 at p = j w. */
    void responses (double w, int first, int count, std::complex<double>* result) const;

private:
    Eigen::MatrixXd matrix, columns;
    Eigen::RowVectorXd row, direct;
};

/** All responses of a state form at p = j w by one plain dense solution. */
void denseResponses (const StateForm&, double w, std::complex<double>* result);
}
