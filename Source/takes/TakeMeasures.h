#pragma once

#include "concurrency/WorkerPool.h"
#include "filter/ModalFilter.h"
#include "metering/Spectrum.h"
#include "metering/TakeFaults.h"
#include "takes/TakeFile.h"

namespace coldiron
{
/** What is told of a take. */
struct TakeMeasures
{
    TakeInfo info;
    double lufs = 0.0; ///< -infinity for silence
    Spectrum spectrum;
    NoiseFloor noise;
    std::vector<TakeFault> faults;
};

/** All of it in one pass and in constant memory. @throws TakeError */
TakeMeasures measureTake (const std::filesystem::path&, WorkerPool&);

/** The loudness of a take through each of these filters, likewise. [LUFS] */
std::vector<double> loudnessThrough (const std::filesystem::path&, const std::vector<ModalFilter>&, WorkerPool&);
}
