// Options put into a job's text: what a person wrote there stays, byte for byte. JSON by RFC 8259, read with comments.
#include "support/JobFixture.h"

#include "offer/OptionText.h"

#include <nlohmann/json.hpp>

namespace optionTextTest
{
using namespace coldiron;

namespace
{
StarterOption optionNamed (const std::string& name)
{
    StarterOption option;
    option.name = name;
    option.rewires = { { "split-shorted", { { "pickup", "bridge" }, { "pot", "volume" } } } };
    option.setting.levers["volume-pull"] = "up";
    option.setting.knobs["volume"] = 7.5;
    return option;
}

/** An independent reading: the JSON library's own parser with comments passed over. */
nlohmann::ordered_json parsed (const std::string& text) { return nlohmann::ordered_json::parse (text, nullptr, true, true); }

/** Every piece of the old text, between the places where something was put in, is still there in its order. */
bool keepsAll (const std::string& before, const std::string& after)
{
    size_t at = 0;
    for (const char c : before)
    {
        at = after.find (c, at);
        if (at == std::string::npos)
            return false;
        ++at;
    }
    return true;
}

OptionsAdded added (const std::string& text, const std::vector<std::string>& names)
{
    std::vector<StarterOption> options;
    for (const auto& name : names)
        options.push_back (optionNamed (name));
    auto result = withOptions (text, options);
    REQUIRE (result.has_value());
    return *result;
}
}

TEST_CASE ("Options go into a job's text where they belong, and all else stays")
{
    const std::vector<std::string> jobs {
        "{ \"coldiron\": \"job 1\" }",
        "{}",
        "{ \"coldiron\": \"job 1\", \"options\": {} }",
        "{\n  \"options\": {\n  }\n}\n",
        "{\n  \"options\": {\n    // none yet }\n  },\n  \"notes\": \"a } in a text\" // and one } here\n}\n",
        "// first }\n{ \"options\": { \"A\": { \"name\": \"kept\" } /* A is his */ } }",
        "{\n\t\"options\": {\n\t\t\"A\": { \"name\": \"kept\" } // the client's favourite\n\t}\n}",
        "{\r\n  \"options\": {\r\n    \"A\": { \"name\": \"kept\" },\r\n    \"C\": {}\r\n  }\r\n}\r\n",
        "{ \"notes\": 12 }",
        "{ \"notes\": \"x\"}",
        "{ \"takes\": []\n  // the end\n}",
    };
    for (const auto& job : jobs)
    {
        INFO (job);
        const auto before = parsed (job);
        const auto result = added (job, { "one \"quoted\"", "two", "three" });
        INFO (result.text);
        CHECK (result.letters.size() == 3);
        CHECK (keepsAll (job, result.text));
        auto after = parsed (result.text);
        for (size_t i = 0; i < 3; ++i)
        {
            CHECK ((! before.contains ("options") || ! before["options"].contains (result.letters[i])));
            const auto& option = after["options"][result.letters[i]];
            CHECK (option["rewires"][0]
                   == nlohmann::ordered_json { { "use", "split-shorted" }, { "pickup", "bridge" }, { "pot", "volume" } });
            CHECK (option["setting"] == nlohmann::ordered_json { { "volume", 7.5 }, { "volume-pull", "up" } });
            after["options"].erase (result.letters[i]);
        }
        CHECK (after["options"].size() == (before.contains ("options") ? before["options"].size() : 0));
        if (! before.contains ("options"))
            after.erase ("options");
        CHECK (after == before);
    }
}

TEST_CASE ("A comment behind the last option stays behind it")
{
    const auto result =
        added ("{\n  \"options\": {\n    \"A\": { \"name\": \"kept\" } // the client's favourite\n  }\n}\n", { "more" });
    CHECK (result.text.find ("\"A\": { \"name\": \"kept\" }, // the client's favourite\n    \"B\": { \"name\": \"more\"")
           != std::string::npos);
    CHECK (result.text.ends_with ("} }\n  }\n}\n"));
}

TEST_CASE ("Lines end as they did")
{
    const auto result = added ("{\r\n  \"options\": {\r\n  }\r\n}\r\n", { "more" });
    for (size_t at = result.text.find ('\n'); at != std::string::npos; at = result.text.find ('\n', at + 1))
        CHECK (result.text[at - 1] == '\r');
}

TEST_CASE ("Letters are the free ones, and what finds none is told")
{
    const auto result = added ("{ \"options\": { \"B\": {}, \"A\": {}, \"D\": {}, \"E\": {}, \"F\": {}, \"H\": {} } }",
                               { "one", "two", "three" });
    CHECK (result.letters == std::vector<std::string> { "C", "G" });
    CHECK (result.left == 1);
    const auto full = added (result.text, { "four" });
    CHECK (full.letters.empty());
    CHECK (full.left == 1);
    CHECK (full.text == result.text);
}

TEST_CASE ("Nothing is put into what is no job")
{
    for (const auto* text : { "", "[]", "{", "{ \"options\": [] }", "{ \"options\": 3 }" })
        CHECK_FALSE (withOptions (text, { optionNamed ("x") }).has_value());
}
}
