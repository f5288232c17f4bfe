// What hum asks for, by what it changes with: grounding and shielding where the strings' touch changes it, wiring where
// turning does, neither where every guitar has it. Common practice of the trade, no source.
// Cautions: never remove an amplifier's earth, interiors hold lethal voltages even when off: common practice of the trade.

#include "wording/HumTriageWords.h"

#include <catch2/catch.hpp>

#include <set>

namespace humTriageWordsTest
{
using namespace coldiron;
using namespace coldiron::wording;
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
    CHECK (humAnswer (question, *question.given (falls)) == "Falls");
    CHECK (humAnswer (question, *question.given (rises)) == "Rises");
    CHECK (says (humAnswerMeans (question, 2), "Wiring cures it"));
}

TEST_CASE ("every question, answer and meaning is a sentence of its own", "[hum-triage]")
{
    std::set<std::string> all;
    size_t count = 0;
    for (const auto& question : humQuestions())
    {
        CHECK (humQuestion (question).back() == '?');
        all.insert (humQuestion (question));
        ++count;
        for (size_t answer = 0; answer < question.answers.size(); ++answer, ++count)
        {
            CHECK_FALSE (humAnswer (question, answer).empty());
            CHECK (humAnswerMeans (question, answer).back() == '.');
            all.insert (humAnswerMeans (question, answer));
        }
    }
    CHECK (all.size() == count);
}
}
