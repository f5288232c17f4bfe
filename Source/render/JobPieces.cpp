#include "render/JobPieces.h"

namespace coldiron
{
namespace
{
std::filesystem::path fileOf (const Job& job, int take)
{
    return job.takes.empty() ? std::filesystem::path() : job.takes.at (static_cast<size_t> (take)).file;
}
}

RenderPiece recordedPiece (const Job& job, int take)
{
    const std::string name = take == 0 ? "now.wav" : "now-" + std::to_string (take + 1) + ".wav";
    return { name, fileOf (job, take), job.recordedConfig (take), {} };
}

RenderPiece optionPiece (const Job& job, const Option& option)
{
    return { option.letter + ".wav", fileOf (job, option.take), job.recordedConfig (job.takes.empty() ? -1 : option.take),
             job.optionConfig (option) };
}
}
