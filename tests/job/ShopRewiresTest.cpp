// The jobs most asked for in a shop, each as a rewire that does what its name says. Which jobs: common practice of the
// trade, no source. Ohms: series and parallel of the pickups' own, [calc].
#include "support/Rewired.h"

#include "job/AudiblePath.h"

namespace shopRewiresTest
{
using namespace coldiron;
using namespace coldiron::support;
using Heard = std::set<std::string>;

namespace
{
Setting levers (const std::map<std::string, std::string>& positions)
{
    Setting setting;
    setting.levers = positions;
    return setting;
}

constexpr double single = 6200.0, hot = 14000.0, volume = 500e3;

void checkOhms (const Harness& harness, const std::map<std::string, std::string>& at, double expected)
{
    CHECK (ohmsAt (harness, at) == Approx (expected).epsilon (1e-5));
}
}

TEST_CASE ("Auto-split splits the humbucker between the positions, and taken out it is whole again", "[shop]")
{
    const auto guitar = guitarOf ("humbucker-single-single-no-split");
    const std::map<std::string, std::string> two { { "blade", "middle-bridge" } }, one { { "blade", "bridge" } };
    checkOhms (guitar.harness, two, parallel ({ single, hot, volume }));
    const auto split = rewired (guitar, { { "auto-split", { { "pickup", "bridge" }, { "blade", "blade" } } } });
    checkOhms (split, two, parallel ({ single, hot / 2, volume }));
    checkOhms (split, one, parallel ({ hot, volume }));
    CHECK (whyRefused (guitar, { { "auto-split", { { "pickup", "bridge" }, { "blade", "blade" } } },
                                 { "auto-split", { { "pickup", "bridge" }, { "blade", "blade" } } } })
               .find ("splits bridge already")
           != std::string::npos);

    for (const char* name : { "humbucker-single-humbucker", "humbucker-single-single" })
    {
        const auto own = guitarOf (name);
        checkOhms (own.harness, two, parallel ({ single, hot / 2, volume }));
        checkOhms (rewired (own, { { "auto-split-off", { { "pickup", "bridge" } } } }), two, parallel ({ single, hot, volume }));
    }
    CHECK (rewired (guitar, { { "auto-split", { { "pickup", "bridge" }, { "blade", "blade" } } },
                              { "auto-split-off", { { "pickup", "bridge" } } } })
               .landings()
               .at ("bridge.north.finish")
               .lug.empty());
    CHECK (whyRefused (guitar, { { "auto-split-off", { { "pickup", "bridge" } } } }).size() > 20);
}

TEST_CASE ("Series or parallel works on a guitar that splits by itself, and the blade still splits", "[shop]")
{
    const auto guitar = guitarOf ("humbucker-single-humbucker");
    const std::map<std::string, std::string> bridge { { "blade", "bridge" } }, between { { "blade", "middle-bridge" } };
    const auto with = [] (std::map<std::string, std::string> at, const std::string& lever, const std::string& position)
    {
        at[lever] = position;
        return at;
    };
    const auto pull = rewired (guitar, { { "series-parallel", { { "pickup", "bridge" }, { "pot", "volume" } } } });
    checkOhms (pull, bridge, parallel ({ hot, volume }));
    checkOhms (pull, between, parallel ({ single, hot / 2, volume }));
    checkOhms (pull, with (bridge, "volume-pull", "up"), parallel ({ hot / 4, volume }));
    const auto toggle = rewired (guitar, { { "series-parallel-toggle", { { "pickup", "bridge" } } } });
    checkOhms (toggle, between, parallel ({ single, hot / 2, volume }));
    checkOhms (toggle, with (bridge, "bridge-toggle", "up"), parallel ({ hot / 4, volume }));
    const auto three = rewired (guitar, { { "series-split-parallel", { { "pickup", "bridge" } } } });
    checkOhms (three, with (bridge, "bridge-toggle", "middle"), parallel ({ hot / 2, volume }));
    checkOhms (three, with (bridge, "bridge-toggle", "up"), parallel ({ hot / 4, volume }));
    checkOhms (rewired (guitar, { { "parallel", { { "pickup", "bridge" } } } }), bridge, parallel ({ hot / 4, volume }));
    const auto open = rewired (guitar, { { "split-open", { { "pickup", "bridge" }, { "pot", "volume" } } } });
    checkOhms (open, with (bridge, "volume-pull", "up"), parallel ({ hot / 2, volume }));
}

TEST_CASE ("Neck-on and bridge-on ask for no lug", "[shop]")
{
    struct Way
    {
        const char* guitar;
        const char* selector;
        const char* pot;
    };
    for (const auto& way :
         { Way { "three-single-coils", "blade", "middle-tone" }, Way { "two-humbuckers-four-knobs", "selector", "neck-tone" },
           Way { "two-single-coils-blade", "blade", "tone" }, Way { "humbucker-single-single", "blade", "tone" } })
    {
        INFO (way.guitar);
        const auto guitar = guitarOf (way.guitar);
        const auto pull = std::string (way.pot) + "-pull";
        const Arguments asks { { "pot", way.pot }, { "switch", way.selector } };
        const auto neck = rewired (guitar, { { "neck-on", asks } }), bridge = rewired (guitar, { { "bridge-on", asks } });
        CHECK (heard (guitar, neck, levers ({ { way.selector, "bridge" } })) == Heard { "bridge" });
        CHECK (heard (guitar, neck, levers ({ { way.selector, "bridge" }, { pull, "up" } })) == Heard { "bridge", "neck" });
        CHECK (heard (guitar, bridge, levers ({ { way.selector, "neck" }, { pull, "up" } })) == Heard { "bridge", "neck" });
    }
}

TEST_CASE ("Three single coils give seven sounds", "[shop]")
{
    const auto guitar = guitarOf ("three-single-coils");
    const auto harness = rewired (guitar, { { "seven-sounds", { { "pot", "neck-tone" }, { "blade", "blade" } } } });
    std::set<Heard> sounds, before;
    for (const char* blade : { "neck", "neck-middle", "middle", "middle-bridge", "bridge" })
    {
        before.insert (heard (guitar, guitar.harness, levers ({ { "blade", blade } })));
        for (const char* pull : { "down", "up" })
            sounds.insert (heard (guitar, harness, levers ({ { "blade", blade }, { "neck-tone-pull", pull } })));
    }
    CHECK (before.size() == 5);
    CHECK (sounds.size() == 7); // every set of the three but none
}

TEST_CASE ("The bridge pickup gets a tone", "[shop]")
{
    const auto guitar = guitarOf ("three-single-coils");
    const auto harness = rewired (guitar, { { "bridge-tone", { { "tone", "middle-tone" }, { "blade", "blade" } } } });
    auto bridge = levers ({ { "blade", "bridge" } });
    const double open = levelDb (guitar, harness, bridge, 3000.0);
    bridge.knobs["middle-tone"] = 0.0;
    CHECK (levelDb (guitar, guitar.harness, bridge, 3000.0) > open - 1.0);
    CHECK (levelDb (guitar, harness, bridge, 3000.0) < open - 15.0);
}

TEST_CASE ("Single coils see 250k and the humbucker 500k", "[shop]")
{
    const auto guitar = guitarOf ("humbucker-single-single-no-split");
    const auto harness = rewired (guitar, { { "single-coil-load", { { "blade", "blade" } } } });
    checkOhms (harness, { { "blade", "bridge" } }, parallel ({ hot, volume }));
    for (const char* blade : { "neck", "middle" })
        checkOhms (harness, { { "blade", blade } }, parallel ({ single, volume, 470e3 }));
    checkOhms (harness, { { "blade", "neck-middle" } }, parallel ({ single, single, volume, 470e3 }));
    // The pole is used once.
    CHECK (whyRefused (guitarOf ("humbucker-single-single"), { { "single-coil-load", { { "blade", "blade" } } } }).find ("in use")
           != std::string::npos);
}

TEST_CASE ("A four-position blade adds both in series, end to end", "[shop]")
{
    const auto guitar = guitarOf ("two-single-coils-blade");
    const auto harness = rewired (guitar, { { "blade-4-series", { { "blade", "blade" } } } });
    checkOhms (harness, { { "blade", "bridge" } }, parallel ({ single, 250e3 }));
    checkOhms (harness, { { "blade", "both" } }, parallel ({ single, single, 250e3 }));
    checkOhms (harness, { { "blade", "neck" } }, parallel ({ single, 250e3 }));
    checkOhms (harness, { { "blade", "series" } }, parallel ({ 2 * single, 250e3 }));
    CHECK (heard (guitar, harness, levers ({ { "blade", "series" } })) == Heard { "bridge", "neck" });
    CHECK (heard (guitar, harness, levers ({ { "blade", "bridge" } })) == Heard { "bridge" });
    // The guitar that has one from the start is wired so too.
    const auto own = guitarOf ("two-single-coils-blade-4");
    for (const double hz : { 100.0, 1000.0, 4000.0 })
        for (const char* blade : { "bridge", "both", "neck", "series" })
            CHECK (levelDb (guitar, harness, levers ({ { "blade", blade } }), hz)
                   == Approx (levelDb (own, own.harness, levers ({ { "blade", blade } }), hz)).margin (0.05));
    CHECK (difference (guitar.harness, harness).size() > 4); // bench steps
}

TEST_CASE ("A knob turns a humbucker into a split", "[shop]")
{
    const auto guitar = guitarOf ("one-humbucker-volume");
    const auto harness = rewired (guitar, { { "split-knob", { { "pickup", "bridge" } } } });
    Setting setting;
    CHECK (levelDb (guitar, harness, setting, 300.0) == Approx (levelDb (guitar, guitar.harness, setting, 300.0)).margin (0.3));
    setting.knobs["bridge-split"] = 0.0;
    const auto split = rewired (guitar, { { "split-shorted", { { "pickup", "bridge" }, { "pot", "volume" } } } });
    for (const double hz : { 100.0, 1000.0, 4000.0 })
        CHECK (levelDb (guitar, harness, setting, hz)
               == Approx (levelDb (guitar, split, levers ({ { "volume-pull", "up" } }), hz)).margin (0.01));
}

TEST_CASE ("A latching kill switch is silent while it is on, beside a momentary one", "[shop]")
{
    const auto guitar = guitarOf ("one-humbucker");
    const auto harness = rewired (guitar, { { "kill-switch", {} }, { "kill-latching", {} } });
    CHECK (pathAt (harness, {}) == Path::open);
    CHECK (pathAt (harness, levers ({ { "kill-latching", "on" } })) == Path::shorted);
    CHECK (pathAt (harness, levers ({ { "kill", "pressed" } })) == Path::shorted);
}

TEST_CASE ("The six-way selector takes a notch at each of five places, and none at the first", "[shop]")
{
    const auto guitar = guitarOf ("two-humbuckers-four-knobs");
    const auto harness = rewired (guitar, { { "notch-rotary", {} } });
    const char* positions[] = { "2", "3", "4", "5", "6" };
    const double farads[] = { 1e-9, 3.3e-9, 10e-9, 33e-9, 220e-9 };
    for (int i = 0; i < 5; ++i)
    {
        const double hz = 1.0 / (2.0 * 3.14159265358979 * std::sqrt (1.5 * farads[i])); // [calc] series resonance
        INFO (positions[i] << ": " << hz << " Hz");
        CHECK (levelDb (guitar, harness, levers ({ { "notch", positions[i] } }), hz)
               < levelDb (guitar, harness, levers ({ { "notch", "1" } }), hz) - 3.0);
        CHECK (levelDb (guitar, harness, levers ({ { "notch", "1" } }), hz)
               == Approx (levelDb (guitar, guitar.harness, {}, hz)).margin (1e-9));
    }
}

TEST_CASE ("A stacked single coil is quiet, and plays nearly as loud", "[shop]")
{
    const auto guitar = guitarOf ("three-single-coils");
    const auto harness = rewired (guitar, { { "stacked-for-single", { { "pickup", "bridge" } } } });
    const auto bridge = levers ({ { "blade", "bridge" } });
    const auto hum = [&] (const Harness& h)
    { return 20.0 * std::log10 (std::abs (configOf (guitar, h, bridge).response().hum (150.0)) + 1e-15); };
    CHECK (hum (harness) < hum (guitar.harness) - 25.0);
    CHECK (levelDb (guitar, harness, bridge, 500.0) > levelDb (guitar, guitar.harness, bridge, 500.0) - 3.0);
    // A buck coil in line brings the resonance down, but not to a humbucker's.
    CHECK (levelDb (guitar, harness, bridge, 3000.0) > levelDb (guitar, harness, bridge, 500.0));
}

TEST_CASE ("The offset guitar has two circuits that do not meet", "[shop]")
{
    const auto guitar = guitarOf ("two-circuit-offset");
    CHECK (heard (guitar, guitar.harness, levers ({ { "selector", "bridge" } })) == Heard { "bridge" });
    CHECK (heard (guitar, guitar.harness, levers ({ { "selector", "both" } })) == Heard { "bridge", "neck" });
    for (const char* selector : { "neck", "both", "bridge" })
        CHECK (heard (guitar, guitar.harness, levers ({ { "selector", selector }, { "circuit", "rhythm" } }))
               == Heard { "neck" });
    auto rhythm = levers ({ { "circuit", "rhythm" } });
    const double before = levelDb (guitar, guitar.harness, rhythm, 500.0);
    rhythm.knobs["volume"] = 0.0;
    CHECK (levelDb (guitar, guitar.harness, rhythm, 500.0) == Approx (before).margin (0.01));
}

TEST_CASE ("A second push-pull on one pot is refused, and another is asked for", "[shop]")
{
    const auto guitar = guitarOf ("two-humbuckers-four-knobs");
    const auto why = whyRefused (guitar, { { "series-parallel", { { "pickup", "bridge" }, { "pot", "bridge-volume" } } },
                                           { "phase-pull", { { "pickup", "neck" }, { "pot", "bridge-volume" } } } });
    CHECK (why.find ("bridge-volume already has a push-pull") != std::string::npos);
    CHECK (why.find ("choose another") != std::string::npos);
}

TEST_CASE ("A rewire asked for by another name is found, and the fault says the one to write", "[shop]")
{
    const auto asked = [] (const std::string& name)
    {
        return faultsOf ("{ \"coldiron\": \"job 1\", \"guitar\": \"two-humbuckers-four-knobs\", \"options\": { \"A\": { "
                         "\"rewires\": [\n { \"use\": \""
                         + name + "\", \"pickup\": \"bridge\", \"pot\": \"bridge-volume\" } ] } } }");
    };
    for (const char* name : { "coil-split", "Coil Split" })
    {
        const auto diagnostics = asked (name);
        REQUIRE (diagnostics.size() == 1);
        CHECK (has (diagnostics, 2, { "also called so", "\"split-shorted\"", "\"split-open\"", "use one of them" }));
    }
    CHECK (has (asked ("fifties-wiring"), 2, { "\"tone-on-output\"", "use that" }));
    CHECK (has (asked ("split-shortd"), 2, { "did you mean \"split-shorted\"" }));
}
}
