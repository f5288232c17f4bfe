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
    CHECK (humCause ({}) == HumCause::notAsked);
    HumAnswers hum;
    hum.turned = true;
    CHECK (humCause (hum) == HumCause::magnetic);
    for (const auto touch : { Touch::falls, Touch::rises, Touch::changes })
    {
        hum.touched = touch;
        CHECK (humCause (hum) == HumCause::touch);
    }
    hum.everywhere = true;
    CHECK (humCause (hum) == HumCause::elsewhere);
    CHECK (humCause ({ Touch::same, false, false }) == HumCause::none);
    CHECK (humCause ({ Touch::same, std::nullopt, std::nullopt }) == HumCause::open);
}

TEST_CASE ("an answer given is found among those that can be", "[hum-triage]")
{
    const auto& questions = humQuestions();
    REQUIRE (questions.size() == 3);
    HumAnswers hum;
    for (const auto& question : questions)
        CHECK_FALSE (question.given (hum).has_value());
    hum = { Touch::rises, false, true };
    CHECK (questions[0].given (hum) == 1);
    CHECK (questions[1].given (hum) == 2);
    CHECK (questions[2].given (hum) == 0);
    hum.touched = Touch::falls;
    CHECK (questions[1].given (hum) == 1);
    CHECK (questions[1].answers[1] == "\"falls\"");
    hum.touched = Touch::changes; // an old job's `true`: which way was not said
    CHECK_FALSE (questions[1].given (hum).has_value());
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
