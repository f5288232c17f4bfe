// A contributor's walk: a part of one's own as data alone, used, and heard.

#include "support/JobFixture.h"

#include "response/GuitarResponse.h"

#include <cmath>

namespace ownPartsTest
{
using namespace coldiron;

TEST_CASE ("A rotary and a rewire in one's own folder are found by name, used and heard")
{
    const support::Folder folder;
    folder.write ("switches/rotary-of-mine.json", R"({ "coldiron": "switch 1", "name": "Six positions, one pole",
  "points": ["a", "a-1", "a-2", "a-3", "a-4", "a-5", "a-6"],
  "positions": { "1": [["a", "a-1"]], "2": [["a", "a-2"]], "3": [["a", "a-3"]], "4": [["a", "a-4"]], "5": [["a", "a-5"]], "6": [["a", "a-6"]] } })");
    folder.write ("rewires/load-selector.json",
                  R"({ "coldiron": "rewire 1", "name": "Six loads across the jack", "asks": { "jack": "part" },
  "gives": "Five more resonances.", "costs": "A hole.", "needs": ["a rotary"],
  "steps": [ { "fit": "loads", "as": { "switch": "rotary-of-mine" } }, { "solder": ["loads.a", "{jack}.tip"] },
             { "fit": "load-2", "as": { "capacitor": "1n" } }, { "solder": ["loads.a-2", "load-2.1"] }, { "solder": ["load-2.2", "ground"] },
             { "fit": "load-3", "as": { "capacitor": "4.7n" } }, { "solder": ["loads.a-3", "load-3.1"] }, { "solder": ["load-3.2", "ground"] } ] })");

    // The same folder beside the shipped one, as --presets and the user's own folder do it.
    auto presets = PresetFolders::standard ({ folder.path });
    CHECK (presets.find ("switches", "rotary-of-mine")->file.parent_path() == folder.path / "switches");
    presets = support::shipped().behind (folder.path);

    Diagnostics diagnostics;
    const auto job = readJobText (R"({ "coldiron": "job 1", "guitar": "one-humbucker", "options": {
  "A": { "rewires": [ { "use": "load-selector", "jack": "jack" } ] },
  "B": { "rewires": [ { "use": "load-selector", "jack": "jack" } ], "setting": { "loads": "2" } },
  "C": { "rewires": [ { "use": "load-selector", "jack": "jack" } ], "setting": { "loads": 3 } } } })",
                                  "/", presets, diagnostics);
    REQUIRE (diagnostics.empty());
    REQUIRE (job.has_value());
    const auto db = [&job] (const char* letter, double hz)
    { return 20.0 * std::log10 (std::abs (job->optionConfig (*job->find (letter)).response().unisonResponse (hz))); };
    const double plain = 20.0 * std::log10 (std::abs (job->recordedConfig (-1).response().unisonResponse (5000.0)));
    CHECK (std::abs (db ("A", 5000.0) - plain) < 1e-6);
    CHECK (db ("B", 5000.0) < plain - 3.0);
    CHECK (db ("C", 5000.0) < db ("B", 5000.0) - 3.0);
}
}
