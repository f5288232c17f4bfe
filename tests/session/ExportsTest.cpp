// Texts that are saved of a job: their names, with the controls as they stand, and never over the job's own files.
#include "Folder.h"
#include "Sessions.h"

#include <catch2/catch.hpp>

#include <fstream>
#include <sstream>

namespace exportsTest
{
using namespace coldiron;
using sessions::shippedPresets;
using sessions::twoOptions;
namespace fs = std::filesystem;

namespace
{
std::string contentsOf (const fs::path& file)
{
    std::ifstream stream (file, std::ios::binary);
    std::ostringstream text;
    text << stream.rdbuf();
    return text.str();
}
}

TEST_CASE ("what is saved is called after the job and what it is of")
{
    Session session (shippedPresets());
    REQUIRE (session.jobEditor.setText (twoOptions));
    const auto& exports = session.exports;
    CHECK (exports.drawing (asRecorded).fileName == "Two options, as it is wiring.svg");
    CHECK (exports.ohmTable (OptionId::C).fileName == "Two options, C ohms.csv");
    CHECK (exports.netlist (OptionId::A).fileName == "Two options, A.cir");
    CHECK (exports.takeCard().fileName == "Two options, take card.html");

    REQUIRE (session.jobEditor.edit ("/title", R"("  ../a/b: Gr\u00fcn? ")"));
    CHECK (exports.takeCard().fileName == "ab Grn, take card.html");
    REQUIRE (session.jobEditor.edit ("/title", R"("///")"));
    CHECK (exports.takeCard().fileName == "job, take card.html");
}

TEST_CASE ("a netlist is of the controls as they stand, a drawing of the option asked for")
{
    Session session (shippedPresets());
    REQUIRE (session.jobEditor.setText (twoOptions));
    const auto before = session.exports.netlist (OptionId::A).make();
    CHECK (session.exports.netlist (OptionId::A).make() == before);
    session.controls.setKnob (OptionId::A, "bridge-tone", 2.0); // live, not in the job's text
    CHECK (session.exports.netlist (OptionId::A).make() != before);
    CHECK (session.exports.drawing (OptionId::C).make() != session.exports.drawing (OptionId::A).make());
    CHECK (session.exports.ohmTable (OptionId::C).make().find ("ohms,low,high") != std::string::npos);
}

TEST_CASE ("a text is written whole, and not over a take of the job")
{
    const ScratchFolder folder ("exports");
    std::ofstream (folder.path / "verse.wav") << "a take";
    Session session (shippedPresets());
    REQUIRE (session.jobEditor.setText (twoOptions));
    REQUIRE (session.jobEditor.edit ("/takes", R"([ { "file": ")" + (folder.path / "verse.wav").string() + R"(" } ])"));
    const auto card = session.exports.takeCard();
    session.exports.write (folder.path / "card.html", card);
    CHECK (contentsOf (folder.path / "card.html") == card.make());
    CHECK_THROWS (session.exports.write (folder.path / "verse.wav", card));
    CHECK (contentsOf (folder.path / "verse.wav") == "a take");
}
}
