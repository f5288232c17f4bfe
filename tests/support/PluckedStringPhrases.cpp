#include "support/PluckedStringPhrases.h"
#include "support/PluckedStringWriter.h"

namespace coldiron::support
{
std::vector<Phrase> guitarPhrases()
{
    std::vector<Phrase> phrases;

    PhraseWriter open ("open chords", 100, 101);
    open.picking (0.12, 4.0).strum ({ 0, 2, 2, 0, 0, 0 }, 0, 1.4).strum ({ 0, 2, 2, 0, 0, 0 }, 1.5, 0.5, 0.7, false);
    open.strum ({ 3, 2, 0, 0, 0, 3 }, 2, 1.9, 1.0)
        .strum ({ -1, 3, 2, 0, 1, 0 }, 4, 1.4)
        .strum ({ -1, -1, 0, 2, 3, 2 }, 5.5, 2.0, 0.9);
    phrases.push_back (open.done (8));

    PhraseWriter barre ("barre chords", 110, 102);
    barre.picking (0.10, 3.5).strum ({ 3, 5, 5, 4, 3, 3 }, 0, 1.0).strum ({ 3, 5, 5, 4, 3, 3 }, 1, 0.4, 0.8, false);
    barre.strum ({ 5, 7, 7, 5, 5, 5 }, 2, 1.5).strum ({ 8, 10, 10, 9, 8, 8 }, 4, 1.5).strum ({ 7, 9, 9, 8, 7, 7 }, 6, 1.8, 0.9);
    phrases.push_back (barre.done (8));

    PhraseWriter low ("low riff", 120, 103);
    low.picking (0.08, 3.0).row ({ { 0, 0 }, { 0, 3 }, { 0, 5 }, { 1, 2 }, { 1, 0 }, { 0, 3 }, { 0, 0 }, { 0, 2 } }, 0, 0.5, 0.5);
    low.row ({ { 0, 3 }, { 1, 2 }, { 1, 3 }, { 1, 5 }, { 0, 5 }, { 0, 3 } }, 4, 0.5, 0.5).note (0, 0, 7, 1.5, 1.1);
    phrases.push_back (low.done (9));

    PhraseWriter lead ("high lead", 104, 104);
    lead.picking (0.13, 3.0).row ({ { 4, 12 }, { 4, 15 }, { 5, 12 }, { 5, 15 }, { 5, 14 }, { 5, 12 }, { 4, 15 }, { 3, 14 } }, 0,
                                  0.5, 0.5);
    lead.note (4, 12, 4, 1.0).note (5, 17, 5, 0.5).note (5, 19, 5.5, 2.0, 1.1);
    phrases.push_back (lead.done (8));

    PhraseWriter mute ("palm mute", 126, 105);
    mute.picking (0.07, 2.5).row ({ { 0, 0 }, { 0, 0 }, { 0, 0 }, { 1, 2 }, { 0, 0 }, { 0, 0 }, { 1, 3 }, { 1, 2 } }, 0, 0.5, 0.5,
                                  1.0, 1.2);
    mute.row ({ { 0, 3 }, { 0, 3 }, { 1, 0 }, { 1, 0 }, { 0, 5 }, { 0, 5 } }, 4, 0.5, 0.5, 1.0, 0.8)
        .strum ({ 0, 2, 2, -1, -1, -1 }, 7, 1.0, 1.0, true, 1.0);
    phrases.push_back (mute.done (8.5));

    PhraseWriter arpeggio ("arpeggio", 92, 106);
    arpeggio.picking (0.15, 5.0).row ({ { 1, 3 }, { 2, 2 }, { 3, 0 }, { 4, 1 }, { 5, 0 }, { 4, 1 }, { 3, 0 }, { 2, 2 } }, 0, 0.5,
                                      1.8);
    arpeggio.row ({ { 0, 3 }, { 2, 0 }, { 3, 0 }, { 4, 3 }, { 5, 3 }, { 4, 3 } }, 4, 0.5, 1.8, 0.9);
    phrases.push_back (arpeggio.done (8));

    PhraseWriter power ("power chords", 118, 107);
    power.picking (0.09, 2.5).strum ({ 5, 7, 7, -1, -1, -1 }, 0, 1.4).strum ({ 8, 10, 10, -1, -1, -1 }, 1.5, 0.5);
    power.strum ({ 3, 5, 5, -1, -1, -1 }, 2, 1.5).strum ({ -1, 5, 7, 7, -1, -1 }, 4, 1.9).strum ({ 0, 2, 2, -1, -1, -1 }, 6, 2.0);
    phrases.push_back (power.done (8.5));

    PhraseWriter stops ("double stops", 96, 108);
    stops.picking (0.12, 4.5);
    const int pairs[][3] = { { 3, 5, 5 }, { 3, 7, 8 }, { 3, 9, 10 }, { 3, 7, 8 }, { 3, 4, 5 }, { 3, 2, 3 } };
    double beat = 0.0;
    for (const auto& p : pairs)
    {
        stops.note (p[0], p[1], beat, 0.95).note (4, p[2], beat + 0.01, 0.94);
        beat += 1.0;
    }
    stops.note (2, 7, 6.0, 1.5).note (3, 5, 6.02, 1.5, 0.9);
    phrases.push_back (stops.done (8));

    PhraseWriter walk ("middle walk", 112, 109);
    walk.picking (0.11, 3.5).row ({ { 2, 5 }, { 2, 7 }, { 3, 4 }, { 3, 5 }, { 3, 7 }, { 2, 7 }, { 2, 5 }, { 1, 7 } }, 0, 0.5,
                                  0.5);
    walk.row ({ { 2, 5 }, { 3, 5 }, { 2, 7 }, { 3, 7 }, { 2, 9 } }, 4, 0.5, 0.6).note (2, 7, 6.5, 1.5);
    phrases.push_back (walk.done (8.5));

    return phrases;
}

std::vector<Phrase> bassPhrases()
{
    std::vector<Phrase> phrases;

    PhraseWriter roots ("bass roots", 108, 201);
    roots.picking (0.12, 5.0).row ({ { 0, 3 }, { 0, 3 }, { 0, 3 }, { 0, 3 }, { 0, 5 }, { 0, 5 }, { 0, 0 }, { 0, 0 } }, 0, 0.5,
                                   0.5);
    roots.row ({ { 1, 3 }, { 1, 3 }, { 1, 5 }, { 1, 5 }, { 0, 3 } }, 4, 0.5, 0.5).note (0, 0, 6.5, 1.5);
    phrases.push_back (roots.done (8.5));

    PhraseWriter walking ("bass walking", 116, 202);
    walking.picking (0.15, 6.0).row ({ { 1, 0 }, { 1, 4 }, { 2, 2 }, { 2, 4 }, { 2, 0 }, { 1, 4 }, { 1, 2 }, { 0, 4 } }, 0, 1.0,
                                     0.95);
    phrases.push_back (walking.done (8.5));

    PhraseWriter octaves ("bass octaves", 112, 203);
    octaves.picking (0.11, 4.0).row ({ { 1, 3 }, { 3, 5 }, { 1, 3 }, { 3, 5 }, { 1, 5 }, { 3, 7 }, { 0, 5 }, { 2, 7 } }, 0, 0.5,
                                     0.45);
    octaves.row ({ { 0, 3 }, { 2, 5 }, { 0, 3 }, { 2, 5 }, { 1, 0 }, { 2, 2 } }, 4, 0.5, 0.45).note (1, 3, 7, 1.0);
    phrases.push_back (octaves.done (8.5));

    PhraseWriter fill ("bass high fill", 100, 204);
    fill.picking (0.10, 3.5).row ({ { 2, 12 }, { 3, 9 }, { 3, 12 }, { 3, 14 }, { 3, 12 }, { 2, 14 }, { 2, 12 }, { 3, 11 } }, 0,
                                  0.5, 0.5);
    fill.note (2, 10, 4, 1.0, 1.0, 0.8).note (2, 12, 5, 1.0, 1.0, 0.8).note (3, 9, 6, 1.5);
    phrases.push_back (fill.done (8));

    return phrases;
}
}
