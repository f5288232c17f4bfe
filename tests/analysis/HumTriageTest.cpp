// What hum asks for, by what it changes with: grounding and shielding where the strings' touch changes it, wiring where
// turning does, neither where every guitar has it. Common practice of the trade, no source.
// Cautions: never remove an amplifier's earth, interiors hold lethal voltages even when off: common practice of the trade.

#include "analysis/HumTriage.h"

#include <catch2/catch.hpp>

namespace humTriageTest
{
using namespace coldiron;
using Touch = HumAnswers::Touch;

namespace
{
bool says (const std::string& text, const std::string& words) { return text.find (words) != std::string::npos; }
}

TEST_CASE ("what is mended elsewhere comes before a rewire", "[hum-triage]")
{
    CHECK (humAdvice ({}).empty());
    CHECK (humInShort ({}).empty());
    HumAnswers hum;
    hum.turned = true;
    CHECK (says (humAdvice (hum), "wiring can help"));
    CHECK (humCaution (hum).empty());
    for (const auto touch : { Touch::falls, Touch::rises, Touch::changes })
    {
        hum.touched = touch;
        CHECK (says (humAdvice (hum), "then a rewire helps"));
        CHECK (says (humCaution (hum), "never remove that earth"));
        CHECK (says (humInShort (hum), "before any rewire"));
    }
    hum.everywhere = true;
    CHECK (says (humAdvice (hum), "No rewire cures it"));
    CHECK (says (humCaution (hum), "qualified people only"));
    hum = { Touch::same, false, false };
    CHECK (says (humAdvice (hum), "volume to 0"));
    hum = { Touch::same, std::nullopt, std::nullopt };
    CHECK (says (humAdvice (hum), "Ask the rest"));
}

TEST_CASE ("touch tells two faults apart", "[hum-triage]")
{
    HumAnswers falls, rises;
    falls.touched = Touch::falls;
    rises.touched = Touch::rises;
    CHECK (says (humAdvice (falls), "Shielding first"));
    CHECK (says (humAdvice (falls), "cable"));
    CHECK_FALSE (says (humAdvice (falls), "string ground"));
    CHECK (says (humAdvice (rises), "string ground first"));
    CHECK (says (humAdvice (rises), "wiring, and a joint cures it"));
    CHECK (humInShort (falls) != humInShort (rises));
    const auto& question = humQuestions()[1];
    REQUIRE (question.answers.size() == 3);
    CHECK (question.answers[*question.given (falls)].words == "Falls");
    CHECK (question.answers[*question.given (rises)].words == "Rises");
    CHECK_FALSE (question.given ({}).has_value());
}

TEST_CASE ("the answers are read from a job, and what is no answer is refused", "[hum-triage]")
{
    const PresetFolders folders ({ std::filesystem::path (COLDIRON_SOURCE) / "presets" });
    const auto read = [&] (const std::string& hum, Diagnostics& diagnostics) {
        return readJobText (R"({ "coldiron": "job 1", "guitar": "one-humbucker", "hum": )" + hum + " }", {}, folders,
                            diagnostics);
    };
    Diagnostics diagnostics;
    const auto job = read (R"({ "touched": true, "turned": false })", diagnostics);
    REQUIRE (job);
    CHECK (job->hum == HumAnswers { Touch::changes, false, std::nullopt });
    for (const auto& [word, touch] : { std::pair { "\"falls\"", Touch::falls },
                                       { "\"rises\"", Touch::rises },
                                       { "\"same\"", Touch::same },
                                       { "false", Touch::same } })
        CHECK (read ("{ \"touched\": " + std::string (word) + " }", diagnostics)->hum.touched == touch);
    CHECK_FALSE (read (R"({ "touched": "yes" })", diagnostics));
    CHECK (says (diagnostics.front().text(), "falls"));
    CHECK_FALSE (read (R"({ "loud": true })", diagnostics));
    CHECK (diagnostics.size() == 2);
}
}
