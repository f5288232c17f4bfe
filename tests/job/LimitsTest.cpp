// Files far larger than any job of a guitar: refused in words, at once, and never with a list of faults without end.

#include "support/JobFixture.h"

#include "files/Limits.h"
#include "job/Readers.h"

namespace limitsTest
{
using namespace coldiron;

namespace
{
std::string times (size_t count, const std::string& item)
{
    std::string list;
    for (size_t i = 0; i < count; ++i)
        list += (i == 0 ? "" : ", ") + item;
    return list;
}

template <typename Make>
std::string numbered (size_t count, Make make)
{
    std::string list;
    for (size_t i = 0; i < count; ++i)
        list += (i == 0 ? "" : ", ") + make (std::to_string (i));
    return list;
}

std::string job (const std::string& more, const std::string& parts = "", const std::string& wires = "")
{
    return R"({ "coldiron": "job 1", "guitar": { "coldiron": "guitar 1", "scale_mm": 648, "strings": ["E2", "A2"],
  "parts": { "p": { "pickup": "humbucker-moderate", "bridge_mm": 44 }, "jack": { "jack": "mono" })"
           + (parts.empty() ? "" : ", " + parts) + R"( },
  "wires": [ ["p.north.start", "jack.tip"], ["p.north.finish", "p.south.finish"], ["p.south.start", "ground"])"
           + (wires.empty() ? "" : ", " + wires) + " ] }" + (more.empty() ? "" : ",\n" + more) + " }";
}

std::string switches (size_t count, size_t positions)
{
    const auto table = numbered (positions, [] (const std::string& i) { return "\"p" + i + "\": [[\"a\", \"b\"]]"; });
    return numbered (
        count, [&] (const std::string& i)
        { return "\"s" + i + "\": { \"switch\": { \"points\": [\"a\", \"b\"], \"positions\": { " + table + " } } }"; });
}

std::string resistors (size_t count)
{
    return numbered (count, [] (const std::string& i) { return "\"r" + i + "\": { \"resistor\": \"1k\" }"; });
}

/** One fault, that says what was found and how much is allowed. */
void refuses (const std::string& what, const std::string& text, const std::vector<std::string>& words)
{
    const auto diagnostics = support::faultsOf (text);
    INFO (what << (diagnostics.empty() ? "" : ": " + diagnostics.front().text()));
    REQUIRE (diagnostics.size() == 1);
    CHECK (diagnostics.front().message.size() < 300);
    for (const auto& word : words)
        CHECK (diagnostics.front().message.find (word) != std::string::npos);
}
}

TEST_CASE ("Fifty faults are listed, and one line that there are more")
{
    const auto diagnostics = support::faultsOf (job (numbered (900, [] (const std::string& i) { return "\"k" + i + "\":\n0"; })));
    REQUIRE (diagnostics.size() == Diagnostics::most + 1);
    CHECK (diagnostics.raised() > Diagnostics::most);
    CHECK (diagnostics.back().message.find ("more than 50 faults") != std::string::npos);
    for (size_t i = 0; i < Diagnostics::most; ++i)
        CHECK (diagnostics[i].message.find ("has no key \"k" + std::to_string (i) + "\"") != std::string::npos);

    Diagnostics same;
    for (int i = 0; i < 1000; ++i)
        same.push_back ({ "a", 1, "b" });
    CHECK (same.size() == 1);
    CHECK (same.raised() == 1000);
    same.clear();
    CHECK (same.empty());
}

TEST_CASE ("A file has a limit to its length, its values, keys, texts and depth")
{
    Diagnostics diagnostics;
    const support::Folder folder;
    CHECK_FALSE (readJob (folder.write ("large.json", "{ \"coldiron\": \"job 1\" }" + std::string (limits::fileBytes, ' ')),
                          support::shipped(), diagnostics));
    REQUIRE (diagnostics.size() == 1);
    CHECK (diagnostics[0].message.find ("larger than 8 MB") != std::string::npos);
    refuses ("keys", job (numbered (limits::keys + 10, [] (const std::string& i) { return "\"k" + i + "\": 0"; })),
             { "more than 1000 keys" });
    refuses ("values", job ("\"heard\": [ " + times (limits::values + 10, "0") + " ]"), { "more than 200000 values" });
    refuses ("text", job ("\"notes\": \"" + std::string (limits::textLength + 1, 'x') + "\""),
             { "100001 bytes", "100000 at most" });
    CHECK (support::faultsOf (job ("\"notes\": \"" + std::string (limits::textLength, 'x') + "\"")).empty());
}

TEST_CASE ("A guitar has a limit to its parts, wires and the ways its switches stand together")
{
    CHECK (support::faultsOf (job ("", resistors (limits::parts - 2))).empty());
    refuses ("parts", job ("", resistors (limits::parts - 1)), { "\"parts\": found 201", "200 at most" });
    refuses ("wires", job ("", "", "[" + times (limits::wirePoints, "\"ground\"") + "]"),
             { "\"wires\": found 10006", "10000 at most" });
    CHECK (support::faultsOf (job ("", switches (2, 48))).empty());
    CHECK (support::faultsOf (job ("", switches (14, 2))).empty()); // 16384
    refuses ("switches", job ("", switches (5, 48)), { "more than 20000 ways" });
    refuses ("lugs",
             job ("", "\"s\": { \"switch\": { \"points\": [ "
                          + numbered (101, [] (const std::string& i) { return "\"p" + i + "\""; })
                          + " ], \"positions\": { \"a\": [] } } }"),
             { "found 101 lugs", "2 to 100" });
    // What a rewire fits counts too.
    refuses ("fitted",
             job ("\"options\": { \"A\": { \"rewires\": [ { \"use\": { \"coldiron\": \"rewire 1\", \"name\": \"More\", "
                  "\"steps\": [ { \"fit\": \"x\", \"as\": { \"resistor\": 1 } } ] } } ] } }",
                  resistors (limits::parts - 2)),
             { "201 parts", "200 at most" });
}

TEST_CASE ("A job has a limit to its takes and rewires")
{
    refuses ("takes", job ("\"takes\": [ " + times (limits::takes + 1, "{ \"file\": \"a.wav\" }") + " ]"),
             { "\"takes\": found 201", "200 at most" });
    const std::string use =
        "{ \"use\": { \"coldiron\": \"rewire 1\", \"name\": \"X\", \"steps\": [ { \"solder\": [\"p.shield\", \"ground\"] } ] } }";
    refuses ("rewires", job ("\"options\": { \"A\": { \"rewires\": [ " + times (limits::rewires + 1, use) + " ] } }"),
             { "\"rewires\": found 51", "50 at most" });
}

TEST_CASE ("A rewire with its names filled in has a limit to its length")
{
    const auto filled = [] (size_t names, size_t length)
    {
        std::string text;
        for (size_t i = 0; i < names; ++i)
            text += "{n}";
        return job ("\"options\": { \"A\": { \"rewires\": [ { \"use\": { \"coldiron\": \"rewire 1\", \"name\": \"X\", \"asks\": "
                    "{ \"n\": \"value\" },\n\"steps\": [ { \"solder\": [\""
                    + text + "\", \"ground\"] } ] }, \"n\": \"" + std::string (length, 'q') + "\" } ] } }");
    };
    // 3 GB as written: 30,000 names of 100,000 letters.
    const auto diagnostics = support::faultsOf (filled (30000, 100000));
    REQUIRE (diagnostics.size() >= 1);
    CHECK (diagnostics[0].message.find ("longer than 100000 bytes") != std::string::npos);
    CHECK (support::faultsOf (filled (10, 100))[0].message.find ("longer")
           == std::string::npos); // there is no such point, and no more is wrong
}

TEST_CASE ("Where so many steps would have to be tried in other orders it says so")
{
    const auto step = [] (const std::string& i) { return "{ \"fit\": \"x" + i + "\", \"as\": { \"resistor\": 1 } }"; };
    const std::string many =
        "{ \"use\": { \"coldiron\": \"rewire 1\", \"name\": \"Many\", \"steps\": [ " + numbered (100, step) + " ] } }";
    const std::string undo = "{ \"use\": { \"coldiron\": \"rewire 1\", \"name\": \"Undo\", \"steps\": [ "
                             + numbered (100, [] (const std::string& i) { return "{ \"remove\": \"x" + i + "\" }"; }) + " ] } }";
    const auto diagnostics = support::faultsOf (
        job ("\"options\": { \"A\": { \"rewires\": [ " + times (8, many + ", " + undo) + ", " + many + ", " + many + " ] } }"));
    REQUIRE (diagnostics.size() == 1);
    CHECK (diagnostics[0].message.find ("not tried in another order") != std::string::npos);
}
}
