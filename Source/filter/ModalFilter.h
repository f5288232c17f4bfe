#pragma once

#include <complex>
#include <vector>

namespace coldiron
{
/** An immutable filter: y = direct x + sum Re (2 residue_p state_p), state_p <- pole_p state_p + x (previous).
    Complex poles stand once for their pair; real poles have real residues that are halved in the sum's 2. */
struct ModalFilter
{
    double sampleRate = 0.0; ///< [Hz]
    double direct = 1.0;
    std::vector<std::complex<double>> poles;    ///< in z, inside the unit circle
    std::vector<std::complex<double>> residues; ///< as many as poles; already halved where the pole is real

    /** Largest deviation from its design target, 20 Hz to min (20 kHz, 0.45 fs) [dB]. */
    double worstErrorDb = 0.0;
    bool capped = false; ///< the target asked for more than the soft cap gives

    std::complex<double> response (double hz) const;
    double gainDb (double hz) const;
    ModalFilter scaled (double gain) const; ///< @param gain  linear
    static ModalFilter silence (double sampleRate);
    static ModalFilter unity (double sampleRate);
};
}
