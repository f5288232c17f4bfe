#pragma once

#include "circuit/StateForm.h"

#include <complex>

namespace coldiron
{
/** A state form as a sum of modes: O(m) a frequency.

    Holds only where the eigenvectors are far enough from parallel; isWellConditioned() says so, from their condition and from
    a comparison with direct solutions.
*/
class ModalForm
{
public:
    explicit ModalForm (const StateForm&);

    bool isWellConditioned() const { return wellConditioned; }

    /** Responses to the inputs first .. first + count - 1 at p = j w. */
    void responses (double w, int first, int count, std::complex<double>* result) const;

private:
    /** (constant + slope q) / (1 + 2 a q + d q^2), q = p - 1: one real mode (b = 0 with d = 0) or a complex pair. */
    struct Mode
    {
        double zeroth; ///< the denominator's real part at w = 0
        double square; ///< -d: its growth with w^2
        double linear; ///< its imaginary part over w
    };

    std::vector<Mode> modes;
    Eigen::MatrixXd constant, slope; ///< inputs x modes
    Eigen::RowVectorXd direct;
    bool wellConditioned = true;

    void addReal (double mu, Eigen::Index index, const Eigen::RowVectorXd& left, const Eigen::MatrixXd& right);
    void addPair (double a, double b, Eigen::Index index, const Eigen::RowVectorXd& left, const Eigen::MatrixXd& right);
    void compare (const StateForm&, const Eigen::VectorXcd& eigenvalues);
};
}
