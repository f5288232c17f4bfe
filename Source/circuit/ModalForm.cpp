#include "circuit/ModalForm.h"

#include "circuit/HessenbergForm.h"

#include <Eigen/Eigenvalues>

namespace coldiron
{
ModalForm::ModalForm (const StateForm& state) : direct (state.direct)
{
    const auto states = state.matrix.rows();
    const auto inputs = state.columns.cols();
    constant.setZero (inputs, states);
    slope.setZero (inputs, states);
    if (states == 0)
        return;

    const Eigen::EigenSolver<Eigen::MatrixXd> solver (state.matrix);
    wellConditioned = solver.info() == Eigen::Success;
    if (! wellConditioned)
        return;

    const Eigen::MatrixXd vectors = solver.pseudoEigenvectors();
    const auto& values = solver.eigenvalues();
    const Eigen::PartialPivLU<Eigen::MatrixXd> factors (vectors);
    wellConditioned = factors.rcond() > 1e-9;
    if (! wellConditioned)
        return;

    const Eigen::RowVectorXd left = state.row * vectors;
    const Eigen::MatrixXd right = factors.solve (state.columns);

    for (Eigen::Index i = 0; i < states; ++i)
    {
        if (values (i).imag() == 0.0)
            addReal (values (i).real(), i, left, right);
        else
        {
            addPair (values (i).real(), values (i).imag(), i, left, right);
            ++i;
        }
    }

    compare (state, values);
}

void ModalForm::addReal (double mu, Eigen::Index index, const Eigen::RowVectorXd& left, const Eigen::MatrixXd& right)
{
    // 1 + mu q at q = -1 + j w
    constant.col ((Eigen::Index)modes.size()) = left (index) * right.row (index).transpose();
    modes.push_back ({ 1.0 - mu, 0.0, mu });
}

void ModalForm::addPair (double a, double b, Eigen::Index index, const Eigen::RowVectorXd& left, const Eigen::MatrixXd& right)
{
    // The pair's block is [a b; -b a] in the pseudo-eigenvectors.
    const auto l1 = left (index), l2 = left (index + 1);
    const auto r1 = right.row (index).transpose(), r2 = right.row (index + 1).transpose();
    const auto mode = (Eigen::Index)modes.size();
    const auto d = a * a + b * b;
    constant.col (mode) = l1 * r1 + l2 * r2;
    slope.col (mode) = a * constant.col (mode) + b * (l2 * r1 - l1 * r2);
    modes.push_back ({ (1.0 - a) * (1.0 - a) + b * b, -d, 2.0 * (a - d) });
}

void ModalForm::responses (double w, int first, int count, std::complex<double>* result) const
{
    for (int k = 0; k < count; ++k)
        result[k] = 0.0;

    for (size_t m = 0; m < modes.size(); ++m)
    {
        const auto re = modes[m].zeroth + modes[m].square * w * w;
        const auto im = modes[m].linear * w;
        const auto scale = 1.0 / (re * re + im * im);
        const auto inverseRe = re * scale, inverseIm = -im * scale;
        const auto* c = &constant.coeffRef (first, (Eigen::Index)m);
        const auto* s = &slope.coeffRef (first, (Eigen::Index)m);

        for (int k = 0; k < count; ++k)
        {
            const auto topRe = c[k] - s[k], topIm = s[k] * w;
            result[k] += std::complex<double> (topRe * inverseRe - topIm * inverseIm, topRe * inverseIm + topIm * inverseRe);
        }
    }

    // minus q, times the sum
    for (int k = 0; k < count; ++k)
        result[k] = { direct (first + k) + result[k].real() + w * result[k].imag(), result[k].imag() - w * result[k].real() };
}

void ModalForm::compare (const StateForm& state, const Eigen::VectorXcd& eigenvalues)
{
    std::vector<double> spots { 20.0 / Equations::shiftHz, 1000.0 / Equations::shiftHz, 5000.0 / Equations::shiftHz,
                                30000.0 / Equations::shiftHz };

    // The resonance with the highest peak lies where 1 - 1/mu comes nearest to the imaginary axis.
    double least = 1.0, resonance = 0.0;
    for (const auto mu : eigenvalues)
        if (mu.imag() > 0.0)
            if (const auto pole = 1.0 - 1.0 / mu; std::abs (pole.real()) < least * std::abs (pole.imag()))
            {
                least = std::abs (pole.real() / pole.imag());
                resonance = std::abs (pole.imag());
            }
    if (resonance > 0.0 && resonance < 20.0)
        spots.push_back (resonance);

    const auto inputs = (int)state.columns.cols();
    std::vector<std::complex<double>> quick ((size_t)inputs), slow ((size_t)inputs);
    Eigen::VectorXd apart = Eigen::VectorXd::Zero (inputs), largest = Eigen::VectorXd::Zero (inputs);
    for (const auto w : spots)
    {
        responses (w, 0, inputs, quick.data());
        denseResponses (state, w, slow.data());
        for (int k = 0; k < inputs; ++k)
        {
            apart (k) = std::max (apart (k), std::abs (quick[(size_t)k] - slow[(size_t)k]));
            largest (k) = std::max (largest (k), std::abs (slow[(size_t)k]));
        }
    }

    // What no arithmetic in double precision keeps, the Hessenberg form does not keep either.
    for (int k = 0; k < inputs; ++k)
    {
        const auto kept = 1e-13 * (state.row.norm() * state.columns.col (k).norm() + std::abs (state.direct (k)));
        wellConditioned = wellConditioned && apart (k) <= 2e-12 * largest (k) + kept; // 1e-4 dB at 120 dB below the loudest
    }
}
}
