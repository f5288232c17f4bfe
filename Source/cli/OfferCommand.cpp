#include "cli/Command.h"
#include "cli/OfferText.h"
#include "cli/Words.h"
#include "files/Limits.h"
#include "job/Reader.h"
#include "offer/OptionText.h"

#include <CLI/CLI.hpp>
#include <iostream>

namespace coldiron::cli
{
namespace
{
struct OfferArguments
{
    std::string job;
    std::vector<std::string> wishes;
    bool add = false, json = false;
};

std::string textOf (const std::string& path)
{
    Diagnostics diagnostics;
    const auto text = wholeText (path, "a job", limits::fileBytes, diagnostics);
    if (! text)
        throw JobDiagnostic (diagnostics.front().text());
    return *text;
}

bool sameOption (const Option& a, const Option& b) { return a.harness.sameAs (b.harness) && a.setting == b.setting; }

/** A job's text as it grows, every state of it read back before it counts. */
class GrowingJob
{
public:
    GrowingJob (const std::string& path, const PresetFolders& folders)
        : file (path), presets (folders), text (textOf (path)), job (read (text))
    {
    }

    void add (const StarterOption& option, Added& added)
    {
        const auto more = withOptions (text, { option });
        if (! more)
            throw JobDiagnostic (file + ": \"options\" cannot be added to; expected an object");
        if (more->letters.empty())
        {
            ++added.left;
            return;
        }
        auto grown = read (more->text);
        const auto& fresh = *grown.find (more->letters.front());
        for (size_t i = 0; i < job.options.size(); ++i)
        {
            if (! sameOption (job.options[i], grown.options.at (i)) || job.options[i].name != grown.options[i].name)
                throw JobDiagnostic (file + ": nothing was written: option " + job.options[i].letter
                                     + " would not stay as it is");
            if (sameOption (job.options[i], fresh))
            {
                added.alreadyThere.push_back (option.name + " (as " + job.options[i].letter + ")");
                return;
            }
        }
        added.letters.push_back (fresh.letter);
        added.names.push_back (fresh.name);
        text = more->text;
        job = std::move (grown);
    }

    void write() const { writeWhole (file, text); }

private:
    const std::string file;
    const PresetFolders& presets;
    std::string text;
    Job job;

    Job read (const std::string& from) const
    {
        Diagnostics diagnostics;
        auto result = readJobText (from, std::filesystem::absolute (file).parent_path(), presets, diagnostics);
        if (! result || ! diagnostics.empty())
            throw JobDiagnostic (file + ": nothing was written: "
                                 + (diagnostics.empty() ? "it would not be read back" : diagnostics.front().message));
        return std::move (*result);
    }
};

WishOffer offerOf (const std::string& wish, const Job& job, const PresetFolders& presets)
{
    const auto from = job.takes.empty() ? Setting() : job.takes.front().setting;
    Diagnostics diagnostics;
    auto offer = offerForWish (wish, job.guitar, from, job.listening, presets, diagnostics);
    for (const auto& fault : diagnostics)
        std::cerr << "note: " << fault.text() << "\n";
    if (offer.match == WordMatch::none)
    {
        std::string known;
        for (const auto& set : presetNames ("starters", presets, diagnostics))
            known += (known.empty() ? "" : ", ") + set.name;
        throw UsageError ("nothing here is called, or answers, \"" + wish + "\"; wishes are: " + known
                          + "; `coldiron presets rewires` lists what can be done");
    }
    return offer;
}

int offer (const OfferArguments& asked, const Common& common)
{
    const auto job = openJob (asked.job, common);
    const auto presets = common.presets();
    auto wishes = asked.wishes;
    if (asked.add && wishes.empty() && ! job.wish.empty())
        wishes = { job.wish };
    if (asked.add && wishes.empty())
        throw UsageError ("--add needs a wish: say --wish \"it hums\" or the name of a rewire; without --add all is listed");
    if (wishes.empty())
        wishes = { "" };

    std::optional<GrowingJob> growing;
    if (asked.add)
        growing.emplace (asked.job, presets);
    std::string text, json;
    bool added = false, nothing = false;
    for (const auto& wish : wishes)
    {
        const auto found = offerOf (wish, job, presets);
        Added now;
        if (growing)
            for (const auto& option : found.options())
                growing->add (option, now);
        added = added || ! now.letters.empty();
        text += (wish.empty() ? "" : "Wish: " + wish + "\n\n") + offerText (found) + (growing ? addedText (now, asked.job) : "");
        if (growing && found.options().empty())
        {
            text += asked.job + ": nothing was added: none of it can be done on this guitar\n";
            nothing = true;
        }
        nothing = nothing || now.left > 0;
        json += (json.empty() ? "" : ",\n") + offerJson (found, growing ? &now : nullptr);
    }
    if (added)
        growing->write();
    if (asked.json)
        text = "[\n" + json + "\n]\n";
    else if (added)
        text +=
            "Next: coldiron render " + shellWord (asked.job) + " --out sounds; coldiron compare " + shellWord (asked.job) + "\n";
    else if (! asked.add)
        text = job.guitar.name + ", from " + (job.takes.empty() ? "all knobs at 10" : "the take's setting") + "\n\n" + text
               + "To put it into the job: coldiron offer " + shellWord (asked.job) + " --wish WORDS --add\n";
    writeWhole ("-", text);
    return nothing ? exitBadJob : exitOk;
}
}

void addOffer (CLI::App& app, Common& common, Action& action)
{
    auto* command =
        app.add_subcommand ("offer", "Which starter sets and rewires fit this guitar, why others do not; puts them into the job");
    auto asked = std::make_shared<OfferArguments>();
    command->add_option ("JOB", asked->job, "The job's file")->required();
    command->add_option ("--wish", asked->wishes, "What the client says, or what the trade calls the rewire; may be repeated")
        ->type_name ("WORDS")
        ->expected (1)
        ->multi_option_policy (CLI::MultiOptionPolicy::TakeAll);
    command->add_flag (
        "--add", asked->add,
        "Write what fits into the job as options: up to three of the first starter set that answers, else of the rewires");
    command->add_flag ("--json", asked->json, "For programs: a list, one object for each wish");
    addPresetFolders (*command, common);
    command->callback ([asked, &common, &action] { action = [asked, &common] { return offer (*asked, common); }; });
}
}
