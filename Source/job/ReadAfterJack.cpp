#include "job/Readers.h"

#include "job/RegularFile.h"

namespace coldiron
{
AfterJackChoice readAfterJack (const Json& json, const std::filesystem::path& folder, Faults& faults)
{
    ObjectReader reader (json, "the sound after the jack", faults);
    AfterJackChoice choice;
    const std::string sound = reader.word ("sound", { "none", "amplifier", "file" }, "none");
    choice.sound = sound == "amplifier" ? AfterSound::amplifier : sound == "file" ? AfterSound::file : AfterSound::none;
    const std::string file = reader.text ("file");
    choice.driveDb = reader.quantity ("drive_db", "dB", 0.0, 24.0, 0.0);
    reader.finish();
    if (! file.empty())
        choice.file = inFolder (folder, file);
    else if (choice.sound == AfterSound::file)
        addFault (faults, json, "\"sound\" is \"file\" and no \"file\" is named; expected an impulse response, a WAV up to 2 s, relative to the job");
    return choice;
}
}
