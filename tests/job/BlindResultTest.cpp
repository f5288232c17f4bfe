// What a job keeps of judging: options heard at true level, and blind tests.
#include "support/JobFixture.h"

namespace blindResultTest
{
using namespace coldiron;
using support::faultsOf;
using support::has;

namespace
{
std::string job (const std::string& more)
{
    return R"({ "coldiron": "job 1", "guitar": "two-humbuckers-four-knobs", "options": { "A": { "name": "One" }, "B": { "name": "Two" } },
)" + more + " }";
}

Job readJobOf (const std::string& text)
{
    const PresetFolders folders ({ std::filesystem::path (COLDIRON_SOURCE) / "presets" });
    Diagnostics diagnostics;
    auto read = readJobText (text, {}, folders, diagnostics);
    for (const auto& fault : diagnostics)
        UNSCOPED_INFO (fault.text());
    REQUIRE (read);
    return *read;
}
}

TEST_CASE ("Blind tests and what was heard are read from a job")
{
    const auto read = readJobOf (job (R"("agreed": "B", "heard": ["B", "A", "B"],
        "blind": [ { "ranking": ["B", ["A", "recorded"], "H"], "names": { "B": "Two", "H": "Gone since" }, "take": 1, "date": "2026-11-25" },
                   { "abx": ["recorded", "B"], "trials": 16, "right": 12, "about": "after lunch" } ])"));
    CHECK (read.agreed == "B");
    CHECK (read.heard == std::vector<std::string> { "A", "B" });
    REQUIRE (read.blind.size() == 2);
    CHECK (read.blind[0].ranking == std::vector<std::vector<std::string>> { { "B" }, { "A", "recorded" }, { "H" } });
    CHECK (read.blind[0].names.at ("H") == "Gone since");
    CHECK (read.blind[0].take == 1);
    CHECK (read.blind[0].date == "2026-11-25");
    CHECK (read.blind[1].kind == BlindResult::Kind::abx);
    CHECK (read.blind[1].pair == std::vector<std::string> { "recorded", "B" });
    CHECK (read.blind[1].trials == 16);
    CHECK (read.blind[1].right == 12);
    CHECK (readJobOf (job ("\"blind\": []")).blind.empty());
}

TEST_CASE ("Faults in blind tests say where and what")
{
    struct Wrong
    {
        const char* text;
        const char* says;
    };
    for (const auto& wrong :
         { Wrong { R"("heard": "A")", "expected a list" }, Wrong { R"("heard": ["K"])", "letters A to H" },
           Wrong { R"("blind": { "ranking": ["A", "B"] })", "expected a list" },
           Wrong { R"("blind": [ { "ranking": ["A"] } ])", "two to nine versions" },
           Wrong { R"("blind": [ { "ranking": ["A", "J"] } ])", "found the text \"J\"" },
           Wrong { R"("blind": [ { "ranking": ["A", ["B", "A"]] } ])", "A is there twice" },
           Wrong { R"("blind": [ { "ranking": ["A", 3] } ])", "found the number 3" },
           Wrong { R"("blind": [ { "abx": ["A"], "trials": 10, "right": 9 } ])", "two different versions" },
           Wrong { R"("blind": [ { "abx": ["A", "A"], "trials": 10, "right": 9 } ])", "two different versions" },
           Wrong { R"("blind": [ { "abx": ["A", "B"], "trials": 10, "right": 11 } ])", "no more than the 10 trials" },
           Wrong { R"("blind": [ { "abx": ["A", "B"], "trials": 4, "right": 1 } ])", "trials" },
           Wrong { R"("blind": [ { "abx": ["A", "B"], "trials": 10.5, "right": 1 } ])", "whole number" },
           Wrong { R"("blind": [ { "abx": ["A", "B"], "trials": 10 } ])", "has no \"right\"" },
           Wrong { R"("blind": [ { "date": "2026-11-25" } ])", "either \"ranking\" or \"abx\"" },
           Wrong { R"("blind": [ { "ranking": ["A", "B"], "date": "25.11.2026" } ])", "year-month-day" },
           Wrong { R"("blind": [ { "ranking": ["A", "B"], "dat": "2026-11-25" } ])", "dat" } })
    {
        INFO (wrong.text);
        const auto diagnostics = faultsOf (job (wrong.text));
        REQUIRE (diagnostics.size() == 1);
        CHECK (diagnostics.front().message.find (wrong.says) != std::string::npos);
        CHECK (diagnostics.front().line == 2);
    }
}

TEST_CASE ("Each option is derived from its own take, else from the nearest")
{
    const auto read = readJobOf (R"({ "coldiron": "job 1", "guitar": "two-humbuckers-four-knobs",
        "takes": [ { "file": "bridge.wav", "setting": { "selector": "bridge", "neck-tone": 4 } }, { "file": "neck.wav", "setting": { "selector": "neck" } } ],
        "options": { "A": { "setting": { "selector": "neck" } }, "B": {}, "C": { "take": 2, "setting": { "selector": "bridge" } } } })");
    const auto &a = *read.find ("A"), &b = *read.find ("B"), &c = *read.find ("C");
    CHECK (a.take == 1);
    CHECK (a.setting.knob ("neck-tone") == 4.0); // the setting still starts from the first take's
    CHECK (a.settingTake == 0);
    CHECK (b.take == 0);
    CHECK (c.take == 1);
    CHECK (c.ownTake == 1);
    CHECK (read.takeChoice (a).take == 1);
    CHECK (read.takeChoice (a).pickups == std::vector<std::string> { "neck" });
    CHECK (read.takeChoice (c).surer.take == 0);
    CHECK (read.takeChoice (c).surer.pickups == std::vector<std::string> { "bridge" });
}
}
