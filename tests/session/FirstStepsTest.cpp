// The line of the first minutes goes on by what the person does, and by nothing else.

#include "session/FirstSteps.h"
#include "Sessions.h"

#include <catch2/catch.hpp>

#include <fstream>

namespace firstStepsTest
{
using namespace coldiron;
using At = FirstSteps::Step;

TEST_CASE ("with a take the line goes from listening to the person's own guitar", "[first]")
{
    MainView sight;
    sight.options = { OptionId::A, OptionId::C };
    sight.hasTake = true;
    FirstSteps line (sight);
    CHECK (line.step() == At::hearFirst);
    CHECK (line.words (false).find ("Space") != std::string::npos);
    CHECK (line.words (true).find ("Space") == std::string::npos); // a host keeps its space bar
    CHECK_FALSE (line.see (sight));
    sight.heard = OptionId::A;
    sight.volumes = { 10.0 };
    CHECK (line.see (sight));
    CHECK (line.step() == At::raiseHum);
    CHECK (line.words (false).find ("press C") != std::string::npos); // the second tag's own letter
    sight.hums = true;
    line.see (sight);
    CHECK (line.step() == At::hearSecond);
    sight.heard = OptionId::C;
    line.see (sight);
    CHECK (line.step() == At::turnVolume);
    sight.heard = OptionId::A; // another option stands elsewhere: that is no turning
    sight.volumes = { 7.0 };
    line.see (sight);
    CHECK (line.step() == At::turnVolume);
    sight.volumes = { 6.0 };
    line.see (sight);
    CHECK (line.step() == At::openDrawing);
    sight.drawingOpen = true;
    line.see (sight);
    CHECK (line.step() == At::pickGuitar);
    sight.guitarPicked = true;
    sight.hasTake = false;
    sight.options = { OptionId::A };
    line.see (sight);
    CHECK (line.step() == At::typeOhms);
    sight.ohmsKnown = true;
    line.see (sight);
    CHECK (line.step() == At::dropTake);
    sight.hasTake = true;
    line.see (sight);
    CHECK (line.step() == At::starterSet);
    sight.options = { OptionId::A, OptionId::B, OptionId::C };
    line.see (sight);
    CHECK (line.step() == At::done);
    CHECK (line.words (false).empty());
}

TEST_CASE ("without a take the line is honest and begins at the guitar; ohms can be passed over", "[first]")
{
    Session session (sessions::shippedPresets());
    FirstSteps line (sightOf (session, false, false));
    CHECK (line.step() == At::pickGuitar);
    REQUIRE (session.jobEditor.newJob ("one-humbucker"));
    line.see (sightOf (session, false, true));
    CHECK (line.step() == At::typeOhms);
    line.skip();
    CHECK (line.step() == At::dropTake);
}

TEST_CASE ("a person ahead of the line takes it along", "[first]")
{
    MainView sight;
    sight.options = { OptionId::A, OptionId::B };
    sight.hasTake = true;
    FirstSteps line (sight);
    sight.guitarPicked = true;
    line.see (sight);
    CHECK (line.step() == At::starterSet); // guitar and take are there
}

TEST_CASE ("the demo is a job whose take is on disk", "[first]")
{
    namespace fs = std::filesystem;
    const auto root = fs::temp_directory_path() / "coldiron-first";
    fs::create_directories (root / "demo");
    fs::create_directories (root / "presets");
    PresetFolders presets;
    presets = PresetFolders ({ root / "presets" });
    CHECK (demoJob (presets).empty());
    std::ofstream (root / "demo" / "hum-1-bridge-pickup.json") << "{}";
    CHECK (demoJob (presets).empty()); // without its take
    std::ofstream (root / "demo" / "demo-take.wav") << "RIFF";
    CHECK (demoJob (presets) == root / "demo" / "hum-1-bridge-pickup.json");
    fs::remove_all (root);
}
}
