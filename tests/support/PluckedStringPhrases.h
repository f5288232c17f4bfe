#pragma once

#include "support/PluckedString.h"

namespace coldiron::support
{
/** Short takes for measuring: chords, barre, low riff, high lead, palm mute, arpeggio and more. All our own. */
std::vector<Phrase> guitarPhrases();
std::vector<Phrase> bassPhrases();

/** The demo's take: a phrase across the whole neck, about 24 seconds. */
Phrase demoSong();
}
