#pragma once

#include "job/Job.h"
#include "render/FileRenderer.h"

namespace coldiron
{
/** What is written of a take as recorded: now.wav, now-2.wav ... @param take  index */
RenderPiece recordedPiece (const Job&, int take);

/** What is written of an option on the take it is derived from: A.wav ... Its take's name is empty where the job has none. */
RenderPiece optionPiece (const Job&, const Option&);
}
