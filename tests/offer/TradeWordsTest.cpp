// What a client says and what another bench calls a thing find it: common practice of the trade, no source.
#include "support/JobFixture.h"

#include "offer/OfferWish.h"

#include <algorithm>

namespace tradeWordsTest
{
using namespace coldiron;

namespace
{
std::vector<std::string> presetsOf (const std::vector<PresetNames>& all)
{
    std::vector<std::string> presets;
    for (const auto& names : all)
        presets.push_back (names.preset);
    return presets;
}

bool finds (const std::string& kind, const std::string& words, const std::string& preset)
{
    auto match = WordMatch::none;
    Diagnostics diagnostics;
    const auto found = presetsOf (bestNamed (words, presetNames (kind, support::shipped(), diagnostics), match));
    CHECK (diagnostics.empty());
    INFO (words << " finds " << found.size());
    return std::find (found.begin(), found.end(), preset) != found.end();
}
}

TEST_CASE ("Endings and small words do not matter")
{
    CHECK (wordStems ("It hums") == wordStems ("humming"));
    CHECK (wordStems ("brighter") == wordStems ("bright"));
    CHECK (wordStems ("noisy") == wordStems ("noise"));
    CHECK (wordStems ("split") == wordStems ("splitting"));
    CHECK (wordStems ("the volumes of it") == wordStems ("volume"));
    CHECK (wordStems ("hum") != wordStems ("humbucker"));
    CHECK (wordStems ("kill") != wordStems ("skill"));
    CHECK (wordStems ("it is the").size() == 3); // nothing else is there
    CHECK (wordStems ("...").empty());
}

TEST_CASE ("A name itself goes before one that is nearly it, that before words in it, words in a name before words told")
{
    CHECK (matchWords ("Coil-Split", { "split-shorted", "coil split" }).match == WordMatch::exact);
    CHECK (matchWords ("it is too dark", { "too dark", "gets darker turned down" }).match == WordMatch::same);
    CHECK (matchWords ("split", { "coil split" }).match == WordMatch::named);
    CHECK (matchWords ("split bright", { "coil split" }, "brighter").match == WordMatch::told);
    CHECK (matchWords ("split parrot", { "coil split" }).match == WordMatch::some);
    CHECK (matchWords ("parrot", { "coil split" }, "brighter").match == WordMatch::none);
    CHECK (matchWords ("it hums and squeals", { "hum", "squeal" }) == WordScore { WordMatch::told, 0 });
    CHECK (matchWords ("hums, squeals on stage", { "hum", "squeal" }) > matchWords ("hums, squeals on stage", { "hum" }));
    CHECK (matchWords ("", { "coil split" }).match == WordMatch::none);
}

TEST_CASE ("The trade's other names find rewires")
{
    CHECK (finds ("rewires", "coil-split", "split-shorted"));
    CHECK (finds ("rewires", "Coil Split", "split-open"));
    CHECK (finds ("rewires", "fifties wiring", "tone-on-output"));
    CHECK (finds ("rewires", "pan pot", "blend"));
    CHECK (finds ("rewires", "mute button", "kill-switch"));
    CHECK (finds ("rewires", "treble-bleed-cap", "treble-bleed-cap"));
    CHECK_FALSE (finds ("rewires", "treble-bleed-cap", "treble-bleed-series"));
    CHECK (finds ("starters", "It hums where I play", "quieter"));
}

TEST_CASE ("A preset that cannot be read is passed over by words and kept by its name")
{
    support::Folder folder;
    folder.write ("rewires/broken.json", "{ \"name\": ");
    const auto presets = support::shipped().behind (folder.path);
    auto match = WordMatch::none;
    Diagnostics diagnostics;
    CHECK (presetsOf (bestNamed ("broken", presetNames ("rewires", presets, diagnostics), match))
           == std::vector<std::string> { "broken" });
    CHECK (match == WordMatch::exact);
    CHECK (diagnostics.size() == 1);
}
}
