#include "job/Fields.h"
#include "job/Readers.h"

#include "files/RegularFile.h"

namespace coldiron
{
OutputChainChoice readOutputChain (const Json& json, const std::filesystem::path& folder, Diagnostics& diagnostics)
{
    ObjectReader reader (json, "the sound after the jack", diagnostics);
    OutputChainChoice choice;
    const std::string sound = reader.word ("sound", { "none", "amplifier", "file" }, "none");
    choice.sound = sound == "amplifier" ? OutputSound::amplifier : sound == "file" ? OutputSound::file : OutputSound::none;
    const std::string file = reader.text ("file");
    choice.driveDb = reader.quantity (fields::drive);
    reader.finish();
    if (! file.empty())
        choice.file = inFolder (folder, file);
    else if (choice.sound == OutputSound::file)
        addDiagnostic (
            diagnostics, json,
            "\"sound\" is \"file\" and no \"file\" is named; expected an impulse response, a WAV up to 2 s, relative to the job");
    return choice;
}
}
