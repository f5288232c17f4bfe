#include "job/Readers.h"

#include "files/Limits.h"
#include "files/Quantity.h"
#include "files/RegularFile.h"
#include "guitar/Grounds.h"
#include "job/AudiblePath.h"

#include <algorithm>

namespace coldiron
{
namespace
{
class JobReader
{
public:
    JobReader (const Json& tree, const std::filesystem::path& jobFolder, Library& lib)
        : json (tree), folder (jobFolder), library (lib), diagnostics (lib.faultList()), reader (tree, "a job", diagnostics)
    {
    }

    std::optional<Job> run()
    {
        const auto before = diagnostics.raised();
        job.title = reader.text ("title");
        reader.text ("about");
        const auto client = reader.text ("client"); // an older word for the same
        job.wish = reader.text ("wish", client);
        reader.text ("notes");
        const auto* agreed = reader.value ("agreed");
        if (const auto* heard = reader.value ("heard"))
            job.heard = readHeard (*heard, diagnostics);
        if (const auto* blind = reader.value ("blind"))
            job.blind = readBlindResults (*blind, diagnostics);
        readLoads();
        readHum();
        const auto* guitar = reader.needed ("guitar", "\"guitar\": the name of a preset, or an object");
        const auto* takes = reader.value ("takes");
        const auto* options = reader.value ("options");
        reader.finish();
        if (guitar != nullptr)
        {
            if (auto read = readGuitarOf (*guitar))
            {
                job.guitar = std::move (*read);
                known = true;
                checkAnythingHeard (job.guitar.harness, *guitar, "the guitar");
                noteFloating (job.guitar.harness, {}, *guitar, "the guitar");
            }
        }
        readTakes (takes);
        readOptions (options);
        if (agreed != nullptr && (options == nullptr || options->find (agreed->text) == nullptr))
            addDiagnostic (diagnostics, *agreed,
                           "\"agreed\": found \"" + agreed->text + "\", expected the letter of one of the options");
        if (diagnostics.raised() != before)
            return std::nullopt;
        job.agreed = agreed != nullptr ? agreed->text : std::string();
        chooseTakes();
        return std::move (job);
    }

private:
    const Json& json;
    const std::filesystem::path& folder;
    Library& library;
    Diagnostics& diagnostics;
    ObjectReader reader;
    Job job;
    bool known = false; ///< the guitar could be read
    size_t rewireCount = 0;

    void readLoads()
    {
        if (const auto* recording = reader.value ("recording"))
            job.recording = readLoad (*recording, {}, diagnostics);
        job.listening = job.recording;
        if (const auto* listening = reader.value ("listening"))
            job.listening = readLoad (*listening, {}, diagnostics);
        if (const auto* after = reader.value ("after_the_jack"))
        {
            job.outputChain = readOutputChain (*after, folder, diagnostics);
            job.outputChainLine = after->line;
        }
    }

    /** Words; a job of before says true for a change and false for none. */
    std::optional<HumAnswers::Touch> readTouch (ObjectReader& answers)
    {
        using Touch = HumAnswers::Touch;
        const auto* said = answers.value ("touched");
        if (said == nullptr)
            return {};
        if (said->kind == Json::Kind::boolean)
            return answers.flag ("touched") ? Touch::changes : Touch::same;
        for (const auto& [word, touch] :
             { std::pair { "falls", Touch::falls }, { "rises", Touch::rises }, { "same", Touch::same } })
            if (said->kind == Json::Kind::text && said->text == word)
                return touch;
        answers.fault (*said, "touched: found " + said->kindName() + ", expected \"falls\", \"rises\" (or crackles) or \"same\"");
        return {};
    }

    void readHum()
    {
        const auto* json = reader.value ("hum");
        if (json == nullptr)
            return;
        ObjectReader answers (*json, "the answers about hum", diagnostics);
        const auto answer = [&] (const char* key, std::optional<bool>& place)
        {
            const bool said = answers.flag (key);
            if (json->find (key) != nullptr)
                place = said;
        };
        job.hum.touched = readTouch (answers);
        answer ("turned", job.hum.turned);
        answer ("everywhere", job.hum.everywhere);
        answers.finish();
    }

    std::optional<Guitar> readGuitarOf (const Json& value)
    {
        const auto resolved = library.resolve ("guitar", value);
        return resolved ? readGuitar (*resolved, library) : std::nullopt;
    }

    /** Reads the uses and applies them. The uses are kept also where they are refused. */
    std::optional<Harness> rewired (ObjectReader& entry, const Guitar& guitar, std::vector<RewireUse>& uses)
    {
        const auto* list = entry.value ("rewires");
        if (list == nullptr)
            return guitar.harness;
        if (list->kind != Json::Kind::list)
        {
            addDiagnostic (diagnostics, *list,
                           "\"rewires\": found " + list->kindName() + ", expected a list of { \"use\": \"NAME\", ... }");
            return std::nullopt;
        }
        rewireCount += list->items.size();
        if (list->items.size() > limits::rewires || rewireCount > limits::allRewires)
        {
            addDiagnostic (diagnostics, *list,
                           "\"rewires\": found " + std::to_string (list->items.size()) + ", expected "
                               + std::to_string (limits::rewires) + " at most, and " + std::to_string (limits::allRewires)
                               + " in the whole job");
            return std::nullopt;
        }
        bool fine = true;
        Harness soFar = guitar.harness; // defaults may be taken from what the rewires before have fitted
        for (const auto& item : list->items)
        {
            auto use = readRewireUse (item, soFar, library);
            fine = fine && use.has_value();
            if (! use)
                continue;
            Diagnostics ignored; // told when all are applied, with the orders that work
            if (auto next = applyRewires (soFar, { *use }, {}, ignored))
                soFar = std::move (*next);
            uses.push_back (std::move (*use));
        }
        if (! fine)
            return std::nullopt;
        const auto file = list->file != nullptr ? *list->file : std::string();
        auto harness = applyRewires (guitar.harness, uses, file, diagnostics);
        if (! harness)
            return std::nullopt;
        if (const auto why = whyUnheard (*harness, guitar.strings); ! why.empty())
        {
            addDiagnostic (diagnostics, *list, why);
            return std::nullopt;
        }
        return harness;
    }

    /** Notes grounds that float in a wiring, apart from those that float before it. */
    void noteFloating (const Harness& harness, const std::vector<SolderPoint>& before, const Json& at, const std::string& what)
    {
        for (const auto& point : floatingGrounds (harness))
            if (std::find (before.begin(), before.end(), point) == before.end())
                job.warnings.push_back (
                    { at.file != nullptr ? *at.file : std::string(), at.line, what + ": " + floatingInWords (point) });
    }

    /** @returns whether anything is heard at any setting */
    bool checkAnythingHeard (const Harness& harness, const Json& at, const std::string& what)
    {
        const auto path = bestPath (harness);
        if (path != Path::open)
            addDiagnostic (diagnostics, at,
                           what + ": " + pathInWords (path) + " at any setting; check the wires from the pickups to the jack");
        return path == Path::open;
    }

    void readTakes (const Json* list)
    {
        if (list == nullptr)
            return;
        if (list->kind != Json::Kind::list)
        {
            addDiagnostic (diagnostics, *list,
                           "\"takes\": found " + list->kindName()
                               + ", expected a list of { \"file\": \"verse.wav\", \"setting\": { } }");
            return;
        }
        if (list->items.size() > limits::takes)
        {
            addDiagnostic (diagnostics, *list,
                           "\"takes\": found " + std::to_string (list->items.size()) + ", expected "
                               + std::to_string (limits::takes) + " at most");
            return;
        }
        for (const auto& item : list->items)
            readTake (item);
    }

    void readTake (const Json& item)
    {
        ObjectReader entry (item, "a take", diagnostics);
        TakeEntry take;
        const auto* file = entry.needed ("file", "\"file\": the recording, relative to the job");
        take.file = inFolder (folder, entry.text ("file"));
        take.line = file != nullptr ? file->line : item.line;
        if (file != nullptr && file->kind == Json::Kind::text && file->text.empty())
            addDiagnostic (diagnostics, *file, "\"file\": found an empty name, expected the recording, relative to the job");
        entry.text ("name");
        take.strings = entry.texts ("strings");
        const auto* setting = entry.value ("setting");
        auto harness = known ? rewired (entry, job.guitar, take.rewires) : std::nullopt;
        entry.value ("rewires");
        entry.finish();
        if (known)
            checkStrings (entry.value ("strings"));
        if (harness)
        {
            take.harness = std::move (*harness);
            const auto before = diagnostics.raised();
            take.setting = readSetting (setting, take.harness, diagnostics);
            if (diagnostics.raised() == before)
                if (const auto path = pathAt (take.harness, take.setting); path != Path::open)
                    addDiagnostic (
                        diagnostics, setting != nullptr ? *setting : item,
                        "the take: " + pathInWords (path)
                            + " where the controls stood, so nothing can have been recorded; correct \"setting\" or the guitar");
        }
        job.takes.push_back (std::move (take));
    }

    void checkStrings (const Json* list)
    {
        if (list == nullptr || list->kind != Json::Kind::list)
            return;
        std::vector<std::string> names;
        for (const auto& string : job.guitar.strings)
            names.push_back (string.name);
        for (const auto& item : list->items)
            if (item.kind == Json::Kind::text && std::find (names.begin(), names.end(), item.text) == names.end())
                addDiagnostic (diagnostics, item, "the guitar has no string \"" + item.text + "\"; it has " + listed (names));
    }

    void readOptions (const Json* object)
    {
        if (object == nullptr)
            return;
        if (object->kind != Json::Kind::object)
        {
            addDiagnostic (diagnostics, *object,
                           "\"options\": found " + object->kindName() + ", expected { \"A\": { ... }, \"B\": { ... } }");
            return;
        }
        for (size_t i = 0; i < object->members.size(); ++i)
        {
            const auto& [letter, value] = object->members[i];
            if (diagnostics.isFull())
                return;
            if (letter.size() != 1 || letter[0] < 'A' || letter[0] > 'H')
                addDiagnostic (diagnostics, value.file != nullptr ? *value.file : std::string(), object->memberLines[i],
                               "an option is called \"" + letter + "\"; options carry letters A to H");
            readOption (letter, value);
        }
    }

    int takeOf (ObjectReader& entry)
    {
        const auto* value = entry.value ("take");
        if (value == nullptr)
            return 0;
        const auto count = job.takes.size();
        if (value->kind == Json::Kind::number && value->number >= 1.0 && value->number <= static_cast<double> (count)
            && value->number == static_cast<int> (value->number))
            return static_cast<int> (value->number) - 1;
        addDiagnostic (diagnostics, *value,
                       "\"take\": found " + value->kindName() + ", expected "
                           + (count == 0 ? "no \"take\", since the job has none"
                                         : "1 to " + std::to_string (count) + ", counted from 1 in \"takes\""));
        return 0;
    }

    void readOption (const std::string& letter, const Json& value)
    {
        ObjectReader entry (value, "an option", diagnostics);
        Option option;
        option.letter = letter;
        option.name = entry.text ("name");
        entry.text ("about");
        entry.text ("notes");
        if (entry.value ("take") != nullptr)
            option.ownTake = takeOf (entry);
        option.take = option.settingTake = option.ownTake.value_or (0);
        option.listening = job.listening;
        if (const auto* listening = entry.value ("listening"))
            option.listening = readLoad (*listening, job.listening, diagnostics);
        const auto* own = entry.value ("guitar");
        auto guitar = own != nullptr ? readGuitarOf (*own) : known ? std::optional<Guitar> (job.guitar) : std::nullopt;
        auto harness = guitar ? rewired (entry, *guitar, option.rewires) : std::nullopt;
        const auto* setting = entry.value ("setting");
        entry.value ("rewires");
        entry.finish();
        if (! harness)
            return;
        option.guitar = std::move (*guitar);
        option.harness = std::move (*harness);
        noteFloating (option.harness, own != nullptr ? std::vector<SolderPoint> {} : floatingGrounds (option.guitar.harness),
                      value, "option " + letter);
        const auto before = diagnostics.raised();
        const auto ownSetting = readSetting (setting, option.harness, diagnostics);
        if (diagnostics.raised() == before)
        {
            option.setting = inherited (option.harness, option.settingTake);
            for (const auto& [name, knob] : ownSetting.knobs)
                option.setting.knobs[name] = knob;
            for (const auto& [name, position] : ownSetting.levers)
                option.setting.levers[name] = position;
            checkHeard (option, value, setting);
        }
        job.options.push_back (std::move (option));
    }

    /** Where there are several takes each option is derived from the nearest. Its setting stays that of the first: which
        take is nearest depends on the setting. */
    void chooseTakes()
    {
        for (auto& option : job.options)
            if (job.takes.size() > 1 && ! option.ownTake)
                option.take = std::max (0, job.takeChoice (option).take);
    }

    /** The take's setting, as far as the option has the same controls. */
    Setting inherited (const Harness& harness, int take) const
    {
        Setting setting;
        if (job.takes.empty())
            return setting;
        const auto& from = job.takes[static_cast<size_t> (take)].setting;
        for (const auto& control : controls (harness))
        {
            if (const auto knob = from.knobs.find (control.name); knob != from.knobs.end() && control.positions.empty())
                setting.knobs.insert (*knob);
            if (const auto lever = from.levers.find (control.name);
                lever != from.levers.end()
                && std::find (control.positions.begin(), control.positions.end(), lever->second) != control.positions.end())
                setting.levers.insert (*lever);
        }
        return setting;
    }

    void checkHeard (const Option& option, const Json& value, const Json* setting)
    {
        const auto path = pathAt (option.harness, option.setting);
        if (path == Path::open || ! checkAnythingHeard (option.harness, value, "option " + option.letter))
            return;
        const auto& at = setting != nullptr ? *setting : value;
        job.warnings.push_back ({ at.file != nullptr ? *at.file : std::string(), at.line,
                                  "option " + option.letter + " is silent at its setting: " + pathInWords (path) });
    }
};
}

std::optional<Job> readJobTree (const Json& json, const std::filesystem::path& folder, Library& library)
{
    return JobReader (json, folder, library).run();
}
}
