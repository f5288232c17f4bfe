#include "support/JobFixture.h"

#include "files/Json.h"

namespace jsonTest
{
using namespace coldiron;
using support::has;

TEST_CASE ("Every value and key knows its line, numbers at the end of a line too")
{
    Json json;
    Diagnostics diagnostics;
    REQUIRE (parseJson (
        "// a remark\n{ \"a\": 1,\n  \"b\": [ 2,\n    -3.5e2\n  ],\n  /* two\n lines */ \"c\":\n    true,\n  \"d\": \"x\" }\n",
        "f", json, diagnostics));
    REQUIRE (diagnostics.empty());
    CHECK (json.line == 2);
    CHECK (json.find ("a")->line == 2);
    CHECK (json.find ("b")->line == 3);
    CHECK (json.find ("b")->items.at (0).line == 3);
    CHECK (json.find ("b")->items.at (1).line == 4);
    CHECK (json.find ("b")->items.at (1).number == -350.0);
    CHECK (json.find ("c")->line == 8);
    CHECK (json.memberLines == std::vector<int> { 2, 3, 7, 9 });
    CHECK (json.dump() == R"({"a":1,"b":[2,-350],"c":true,"d":"x"})");
}

TEST_CASE ("Duplicate keys are faults at the second one, and reading goes on")
{
    Json json;
    Diagnostics diagnostics;
    REQUIRE (parseJson ("{ \"a\": 1,\n \"b\": { \"x\": 1,\n \"x\": 2 },\n \"a\": 3 }", "f", json, diagnostics));
    REQUIRE (diagnostics.size() == 2);
    CHECK (has (diagnostics, 3, { "\"x\"", "twice" }));
    CHECK (has (diagnostics, 4, { "\"a\"", "twice" }));
    CHECK (json.find ("a")->number == 1.0);
}

TEST_CASE ("A syntax fault says its line and ends the file")
{
    const auto fails = [] (const std::string& text, int line)
    {
        Json json;
        Diagnostics diagnostics;
        INFO (text);
        CHECK_FALSE (parseJson (text, "f", json, diagnostics));
        REQUIRE (diagnostics.size() == 1);
        CHECK (diagnostics[0].line == line);
        CHECK (diagnostics[0].text().find ("f:" + std::to_string (line) + ": ") == 0);
        CHECK (diagnostics[0].message.find ("json.exception") == std::string::npos);
    };
    fails ("{ \"a\": 1\n  \"b\": 2 }", 2);
    fails ("{ \"a\": 1,\n\n  b: 2 }", 3);
    fails ("{ \"a\": 1 }\n\n x", 3);
    fails ("", 1);
    fails ("{ \"a\": 1e999 }", 1);
    fails ("{ \"a\":\n \"\xff\" }", 2);
    fails ("[1,\n", 2);
    fails ("{ \"a\":\n NaN }", 2);
}

TEST_CASE ("Nesting stops at 64")
{
    Json json;
    Diagnostics diagnostics;
    CHECK (parseJson (std::string (64, '[') + std::string (64, ']'), "f", json, diagnostics));
    CHECK (diagnostics.empty());
    CHECK_FALSE (parseJson (std::string (65, '[') + std::string (65, ']'), "f", json, diagnostics));
    CHECK (has (diagnostics, 1, { "64" }));
    diagnostics.clear();
    CHECK_FALSE (parseJson (std::string (1000000, '['), "f", json, diagnostics));
    CHECK (diagnostics.size() == 1);
}
}
