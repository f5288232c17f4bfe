#include "support/PluckedStringPhrases.h"
#include "support/PluckedStringWriter.h"

namespace coldiron::support
{
// Eight bars in A minor and a last chord left to ring: low strings, chords and the top of the neck, loud and soft,
// so that a change of wiring shows in each register.
Phrase demoSong()
{
    PhraseWriter song ("demo song", 96, 2024);

    // 1, 2: an arpeggio let ring
    song.picking (0.14, 4.5);
    song.row ({ { 1, 0 }, { 2, 2 }, { 3, 2 }, { 4, 1 }, { 5, 0 }, { 4, 1 }, { 3, 2 }, { 5, 3 } }, 0, 0.5, 2.2, 0.8);
    song.row ({ { 0, 1 }, { 2, 3 }, { 3, 2 }, { 4, 1 }, { 5, 0 }, { 4, 1 }, { 3, 2 }, { 2, 3 } }, 4, 0.5, 2.0, 0.8);

    // 3: a riff low on the neck
    song.picking (0.09, 3.0);
    song.note (0, 5, 8, 0.7, 1.1).note (0, 5, 8.75, 0.2, 0.7, 1.2);
    song.row ({ { 0, 8 }, { 1, 5 }, { 1, 7 }, { 1, 5 }, { 0, 8 }, { 0, 5 } }, 9, 0.5, 0.48, 1.0);

    // 4: the palm on the strings
    song.picking (0.07, 2.5);
    song.row ({ { 0, 3 }, { 0, 3 }, { 0, 3 }, { 1, 2 }, { 0, 0 }, { 0, 0 }, { 0, 0 } }, 12, 0.5, 0.5, 1.1, 1.3);
    song.note (0, 3, 15.5, 0.5, 1.1);

    // 5, 6: barre chords across all strings
    song.picking (0.11, 3.5);
    const std::vector<int> f { 1, 3, 3, 2, 1, 1 }, g { 3, 5, 5, 4, 3, 3 }, am { 5, 7, 7, 5, 5, 5 }, e7 { 0, 2, 0, 1, 0, 0 };
    song.strum (f, 16, 1.4, 0.8).strum (f, 17.5, 0.5, 0.6, false);
    song.strum (g, 18, 1.4, 0.8).strum (g, 19.5, 0.5, 0.6, false);
    song.strum (am, 20, 1.4, 0.9).strum (am, 21.5, 0.5, 0.6, false);
    song.strum (e7, 22, 2.0, 0.85);

    // 7: high up the neck
    song.picking (0.12, 3.0);
    song.row ({ { 4, 13 }, { 5, 12 }, { 5, 15 } }, 24, 0.5, 0.5, 1.2).note (5, 17, 25.5, 1.0, 1.3);
    song.row ({ { 5, 15 }, { 5, 12 }, { 4, 13 } }, 26.5, 0.5, 0.5, 1.2);

    // 8: in pairs, back down
    song.note (3, 14, 28, 1.0).note (4, 13, 28.02, 0.98).note (3, 12, 29, 1.0).note (4, 12, 29.02, 0.98);
    song.note (3, 9, 30, 1.0).note (4, 10, 30.02, 0.98).note (2, 10, 31, 1.0).note (3, 9, 31.02, 0.98, 0.9);

    // and rest
    song.picking (0.14, 5.0).strum ({ -1, 0, 2, 2, 0, 0 }, 32, 5.0, 0.9);
    return song.done (38);
}
}
