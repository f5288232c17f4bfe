// A blend goes from one pickup by way of both to the other, and its knob rests at the detent in the middle: common practice
// of the trade, no source.
#include "support/Rewired.h"

namespace blendTest
{
using namespace coldiron;
using namespace coldiron::support;
using Heard = std::set<std::string>;

namespace
{
Setting at (const std::string& knob, double value)
{
    Setting setting;
    setting.knobs[knob] = value;
    return setting;
}
}

TEST_CASE ("A blend leaves one pickup at each end and both at its detent, however the volumes were wired", "[blend]")
{
    struct Way
    {
        const char* guitar;
        std::map<std::string, std::string> levers;
    };
    for (const auto& way :
         { Way { "two-humbuckers-four-knobs", { { "selector", "both" } } }, Way { "bass-two-single-coils", {} },
           Way { "bass-5-two-single-coils", {} }, Way { "bass-concentric", {} }, Way { "bass-split-coil-and-single", {} } })
        for (const char* preset : { "blend", "blend-with-master" })
        {
            INFO (way.guitar << " " << preset);
            const auto guitar = guitarOf (way.guitar);
            const auto harness = rewired (guitar, { { preset, { { "first", "neck-volume" }, { "second", "bridge-volume" } } } });
            auto setting = at ("blend", 0.0);
            setting.levers = way.levers;
            CHECK (heard (guitar, harness, setting) == Heard { "bridge" });
            setting.knobs["blend"] = 10.0;
            CHECK (heard (guitar, harness, setting) == Heard { "neck" });
            setting.knobs.clear();
            CHECK (heard (guitar, harness, setting) == Heard { "bridge", "neck" });
        }
}

TEST_CASE ("All at 10 means a blend at its detent", "[blend]")
{
    const auto guitar = guitarOf ("bass-blend");
    CHECK (heard (guitar, guitar.harness, {}) == Heard { "bridge", "neck" });
    for (const auto& control : controls (guitar.harness))
        CHECK (control.rest == (control.name == "blend" ? 5.0 : 10.0));
    // [calc] two coils of 7.5k, three tracks of 500k to ground, all in parallel.
    CHECK (ohmsAt (guitar.harness, {}) == Approx (parallel ({ 7500.0, 7500.0, 500e3, 500e3, 500e3 })).epsilon (1e-6));
}

TEST_CASE ("The rest of a pot is 0 to 10, and one for all pots of a shaft", "[blend]")
{
    const auto with = [] (const std::string& first, const std::string& second)
    {
        return faultsOf (R"({ "coldiron": "job 1", "guitar": { "like": "bass-blend", "parts": {
 "blend-neck": { "rest": )"
                         + first + " },\n \"blend-bridge\": { \"rest\": " + second + " } } } }");
    };
    CHECK (with ("4", "4").empty());
    CHECK (has (with ("11", "5"), 2, { "\"rest\"", "from 0 to 10" }));
    const auto diagnostics = with ("4", "5");
    REQUIRE (diagnostics.size() == 1);
    CHECK (diagnostics.front().message.find ("one shaft stands in one place") != std::string::npos);
}
}
