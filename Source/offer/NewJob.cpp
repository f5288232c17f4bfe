#include "offer/NewJob.h"

#include "files/JsonText.h"
#include "files/Quantity.h"
#include "job/ControlWords.h"

#include <algorithm>

namespace coldiron
{
namespace
{
/** For a comment, that ends with its line. */
std::string oneLine (std::string text)
{
    std::replace_if (
        text.begin(), text.end(), [] (unsigned char c) { return c < 0x20 || c == 0x7f; }, ' ');
    return text;
}

std::string padded (std::string text, size_t width)
{
    text.resize (std::max (text.size() + 2, width), ' ');
    return text;
}

/** The controls as a setting, one a line, each with what it is behind it. @param comment  begins each line: "// " or nothing */
std::string settingLines (const CircuitConfig& config, const Setting& setting, const std::string& comment)
{
    const auto all = controlWords (config);
    std::string text;
    for (size_t i = 0; i < all.size(); ++i)
    {
        const auto& [control, about, positions] = all[i];
        const auto lever = setting.levers.find (control.name);
        const auto value = ! positions.empty() ? quotedJson (lever != setting.levers.end() ? lever->second : control.standard)
                                               : quantityText (setting.knob (control.name, control.rest));
        const auto begin = "    " + quotedJson (control.name) + ": " + value + (i + 1 < all.size() ? "," : "");
        text += "    " + comment + padded (begin, 38) + "// " + oneLine (about) + "\n";
        for (const auto& [position, heard] : positions)
            text +=
                "    " + comment + std::string (38, ' ') + "//   " + padded (quotedJson (position), 18) + oneLine (heard) + "\n";
    }
    return text;
}

std::string takeLines (const NewJob& job, const CircuitConfig& config)
{
    if (job.takes.empty())
        return "  \"takes\": [\n"
               "    // None yet. Record one clean DI take, note where every control stood, and take the // away in front of "
               "these lines:\n"
               "    // { \"file\": \"take.wav\",\n"
               "    //   \"setting\": {\n"
               + settingLines (config, job.setting, "// ") + "    //   } }\n  ],\n";
    std::string text = "  // Each take: its file, seen from this job's folder, and where every control stood while it was "
                       "recorded.\n  \"takes\": [\n";
    for (size_t i = 0; i < job.takes.size(); ++i)
        text += "    { \"file\": " + quotedJson (job.takes[i]) + ",\n      \"setting\": {\n"
                + settingLines (config, job.setting, "") + "      } }" + (i + 1 < job.takes.size() ? "," : "") + "\n";
    return text + "  ],\n";
}
}

std::string newJobText (const NewJob& job)
{
    StringSet strings;
    strings.strings = job.guitar.strings;
    strings.played.assign (job.guitar.strings.size(), true);
    const Load load;
    const CircuitConfig config { job.guitar.harness, {}, load, strings };
    const auto cable = quantityText (load.cableFarads), ohms = quantityText (load.inputOhms),
               farads = quantityText (load.inputFarads);
    const auto line = [] (const std::string& key, const std::string& value, const std::string& about)
    { return padded ("  " + key + ": " + value + ",", 48) + "// " + oneLine (about) + "\n"; };
    return "// A job: one guitar, its takes and the options to be heard on them. What stands behind // is for people.\n{\n"
           + line ("\"coldiron\"", "\"job 1\"", "what kind of file this is; leave it so")
           + line ("\"title\"", quotedJson (job.title), "whose guitar, for you and the client")
           + line ("\"wish\"", quotedJson (job.wish), "what the client wants, in their words")
           + line ("\"guitar\"", quotedJson (job.guitar.preset), job.guitar.name)
           + "  // What hung on the jack: the cable (about 100 pF a metre) and the input; here the usual ones.\n"
             "  \"recording\": { \"cable\": \""
           + cable + "\", \"input\": { \"resistance\": \"" + ohms + "\", \"capacitance\": \"" + farads + "\" } },\n\n"
           + takeLines (job, config)
           + "\n  // Options, letters A to H. `coldiron offer` says which fit this guitar, and with --add writes them here:\n"
             "  //   \"A\": { \"name\": ..., \"rewires\": [ { \"use\": REWIRE, ... } ], \"setting\": { ... } }\n"
             "  // A setting names what stands elsewhere than in the take.\n"
             "  \"options\": {\n  }\n}\n";
}

std::string titleFrom (const std::filesystem::path& path)
{
    auto title = path.stem().string();
    std::replace (title.begin(), title.end(), '-', ' ');
    std::replace (title.begin(), title.end(), '_', ' ');
    if (! title.empty())
        title[0] = static_cast<char> (std::toupper (static_cast<unsigned char> (title[0])));
    return title;
}
}
