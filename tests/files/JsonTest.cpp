#include "support/JobFixture.h"

#include "files/Json.h"
#include "files/JsonCounts.h"
#include "files/JsonText.h"

#include <nlohmann/json.hpp>

#include <fstream>
#include <limits>
#include <sstream>

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

/** Every preset and job there is, and texts with what they lack. */
std::vector<std::pair<std::string, std::string>> texts()
{
    std::vector<std::pair<std::string, std::string>> all {
        { "numbers", R"({ "a": [1, 1.0, -0.5, 1e-9, 12345678, 1e22, 0.1, 5e-5, 0.0001, 650.0, 4294967296, -7, 0.0] })" },
        { "texts", "{ \"k\\u00e9y \\\"q\\\"\": \"a\\nb\\t\\\\ \\u0001 \\u20ac \\ud83d\\ude00 /\" }" },
        { "shapes", R"({ "a": {}, "b": [], "c": [[], {}, [1, [2]]], "d": null, "e": true, "f": { "g": { "h": false } } })" }
    };
    for (const auto& entry : std::filesystem::recursive_directory_iterator (std::filesystem::path (COLDIRON_SOURCE) / "presets"))
        if (entry.path().extension() == ".json")
        {
            std::ostringstream text;
            text << std::ifstream (entry.path()).rdbuf();
            all.emplace_back (entry.path().string(), text.str());
        }
    return all;
}

TEST_CASE ("A value is written as the library writes it, number by number")
{
    for (const auto& [name, text] : texts())
    {
        INFO (name);
        Json json;
        Diagnostics diagnostics;
        REQUIRE (parseJson (text, name, json, diagnostics));
        const auto oracle = nlohmann::ordered_json::parse (text, nullptr, true, true);
        CHECK (json.write() == oracle.dump());
        CHECK (json.write (2) == oracle.dump (2));
    }
    for (const double value : { 3.0, -12.25, 1e300, 5e-324, 0.1 + 0.2, std::numeric_limits<double>::infinity() })
        CHECK (Json (value).write() == nlohmann::json (value).dump());
    CHECK (Json (3).write() == "3");
    CHECK (Json (size_t { 1 } << 40).write() == "1099511627776");
    CHECK (Json (true).write() == "true");
    CHECK (Json ("\xff").write() == "\"\xef\xbf\xbd\""); // no UTF-8
    CHECK (Json (650.0).dump() == "650");
    CHECK (Json (650.0).write() == "650.0");
}

TEST_CASE ("A value is edited in place, and reaching for what is not there changes nothing")
{
    Json json;
    Diagnostics diagnostics;
    REQUIRE (
        parseJson (R"({ "guitar": "two", "parts": { "volume": { "pot": "500k" } }, "wires": [1] })", "f", json, diagnostics));
    CHECK (json.set ({ "parts", "tone", "pot" }, "250k"));
    CHECK (json.set ({ "parts", "volume", "taper" }, "log-15"));
    CHECK_FALSE (json.set ({ "guitar", "parts" }, 1)); // in a text
    CHECK_FALSE (json.set ({ "wires", "0" }, 1));      // in a list
    CHECK (json.dump()
           == R"({"guitar":"two","parts":{"volume":{"pot":"500k","taper":"log-15"},"tone":{"pot":"250k"}},"wires":[1]})");
    CHECK (json.find ({ "parts", "tone", "pot" })->text == "250k");
    CHECK (json.find (std::vector<std::string> { "parts", "bass", "pot" }) == nullptr);
    CHECK (json.members.size() == json.memberLines.size());
    CHECK (json.erase ("wires"));
    CHECK_FALSE (json.erase ("wires"));
    json["heard"].add ("A");
    json["heard"].add ("B");
    CHECK (json["heard"] == Json (std::vector<std::string> { "A", "B" }));
    CHECK (json.memberLines == std::vector<int> { 1, 1, 0 });
    CHECK (std::as_const (json).textAt ("guitar") == "two");
    CHECK (std::as_const (json).textAt ("parts").empty());
}

TEST_CASE ("Objects merge deeply, and null takes away")
{
    auto json = Json::object ({ { "a", Json::object ({ { "b", 1 }, { "c", 2 } }) }, { "d", "x" } });
    json.merge (Json::object ({ { "a", Json::object ({ { "b", Json() }, { "e", Json::list ({ 1, 2 }) } }) },
                                { "f", Json::object ({ { "g", Json() } }) } }));
    CHECK (json.dump() == R"({"a":{"c":2,"e":[1,2]},"d":"x","f":{}})");
}

TEST_CASE ("Values are the same wherever they stand")
{
    const auto parsed = [] (const std::string& text)
    {
        Json json;
        Diagnostics diagnostics;
        REQUIRE (parseJson (text, "f", json, diagnostics));
        return json;
    };
    CHECK (parsed ("{ \"a\": [1, { \"b\": \"x\" }] }") == parsed ("// y\n{\n\"a\":\n[ 1.0, { \"b\": \"x\" } ] }"));
    CHECK_FALSE (parsed ("{ \"a\": 1, \"b\": 2 }") == parsed ("{ \"b\": 2, \"a\": 1 }"));
    CHECK_FALSE (parsed ("[1]") == parsed ("[\"1\"]"));
    CHECK_FALSE (parsed ("[1]") == parsed ("[1, 1]"));
    CHECK_FALSE (parsed ("[true]") == parsed ("[false]"));
}

TEST_CASE ("Parsing and writing are counted, and a text may hold more where that is asked for")
{
    const auto parsed = textsParsed(), written = textsWritten();
    Json json;
    Diagnostics diagnostics;
    const auto text = quotedJson (std::string (200000, 'x'));
    CHECK (parseJson (text, "f", json, diagnostics));
    CHECK (has (diagnostics, 1, { "200000 bytes" }));
    diagnostics.clear();
    JsonLimits most;
    most.textLength = 300000;
    CHECK (parseJson (text, "f", json, diagnostics, most));
    CHECK (diagnostics.empty());
    CHECK (json.text.size() == 200000);
    CHECK (textsParsed() == parsed + 2);
    CHECK (textsWritten() == written + 1);
}
}
