#include "wording/NewJobText.h"

#include "files/JsonText.h"
#include "files/Quantity.h"
#include "wording/ControlWords.h"
#include "wording/Say.h"

#include <algorithm>

namespace coldiron::wording
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
    const auto all = controlUses (config);
    const bool isOnlyOne = numPickups (config.harness) == 1;
    std::string text;
    for (size_t i = 0; i < all.size(); ++i)
    {
        const auto& one = all[i].control;
        const auto lever = setting.levers.find (one.name);
        const auto value = ! one.positions.empty() ? quotedJson (lever != setting.levers.end() ? lever->second : one.standard)
                                                   : quantityText (setting.knob (one.name, one.rest));
        const auto begin = "    " + quotedJson (one.name) + ": " + value + (i + 1 < all.size() ? "," : "");
        text += "    " + comment + padded (begin, 38) + "// " + oneLine (control (all[i], isOnlyOne)) + "\n";
        for (const auto& use : all[i].positions)
            text += "    " + comment + std::string (38, ' ') + "//   " + padded (quotedJson (use.position), 18)
                    + oneLine (position (use, isOnlyOne)) + "\n";
    }
    return text;
}

std::string commented (const std::string& words) { return "// " + words + "\n"; }

std::string takeLines (const NewJob& job, const CircuitConfig& config)
{
    if (job.takes.empty())
        return "  \"takes\": [\n    "
               + commented (
                   say ("None yet. Record one clean DI take, note where every control stood, and take the // away in front "
                        "of these lines:"))
               + "    // { \"file\": \"take.wav\",\n"
                 "    //   \"setting\": {\n"
               + settingLines (config, job.setting, "// ") + "    //   } }\n  ],\n";
    std::string text =
        "  "
        + commented (say ("Each take: its file, seen from this job's folder, and where every control stood while it "
                          "was recorded."))
        + "  \"takes\": [\n";
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
    { return padded ("  " + key + ": " + value + ",", 48) + commented (oneLine (about)); };
    return commented (
               say ("A job: one guitar, its takes and the options to be heard on them. What stands behind // is for people."))
           + "{\n" + line ("\"coldiron\"", "\"job 1\"", say ("what kind of file this is; leave it so"))
           + line ("\"title\"", quotedJson (job.title), say ("whose guitar, for you and the client"))
           + line ("\"wish\"", quotedJson (job.wish), say ("what the client wants, in their words"))
           + line ("\"guitar\"", quotedJson (job.guitar.preset), job.guitar.name) + "  "
           + commented (say ("What hung on the jack: the cable (about 100 pF a metre) and the input; here the usual ones."))
           + "  \"recording\": { \"cable\": \"" + cable + "\", \"input\": { \"resistance\": \"" + ohms + "\", \"capacitance\": \""
           + farads + "\" } },\n\n" + takeLines (job, config) + "\n  "
           + commented (
               say ("Options, letters A to H. `coldiron offer` says which fit this guitar, and with --add writes them here:"))
           + "  //   \"A\": { \"name\": ..., \"rewires\": [ { \"use\": REWIRE, ... } ], \"setting\": { ... } }\n  "
           + commented (say ("A setting names what stands elsewhere than in the take.")) + "  \"options\": {\n  }\n}\n";
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
