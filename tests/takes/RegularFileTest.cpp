// What is no file is refused by what it is, and never waited for.

#include "support/JobFixture.h"

#include "files/RegularFile.h"
#include "job/Readings.h"
#include "takes/ImpulseFile.h"
#include "takes/TakeFile.h"

#include <sys/socket.h>
#include <sys/stat.h>
#include <sys/un.h>

#include <cstring>

namespace regularFileTest
{
using namespace coldiron;

namespace
{
struct Way
{
    const char* what;
    std::filesystem::path path;
    std::string says;
};

std::vector<Way> ways (const support::Folder& folder)
{
    const auto pipe = folder.path / "pipe", circle = folder.path / "circle", link = folder.path / "link",
               dangling = folder.path / "dangling", ear = folder.path / "socket";
    REQUIRE (mkfifo (pipe.c_str(), 0600) == 0);
    std::filesystem::create_symlink (circle, circle);
    std::filesystem::create_symlink (pipe, link);
    std::filesystem::create_symlink (folder.path / "nowhere", dangling);
    sockaddr_un address {};
    address.sun_family = AF_UNIX;
    std::strncpy (address.sun_path, ear.c_str(), sizeof address.sun_path - 1);
    const int descriptor = ::socket (AF_UNIX, SOCK_STREAM, 0);
    REQUIRE (bind (descriptor, reinterpret_cast<sockaddr*> (&address), sizeof address) == 0);
    close (descriptor);
    return { { "a pipe", pipe, "this is a pipe" },
             { "a link to a pipe", link, "this is a pipe" },
             { "a folder", folder.path, "this is a folder" },
             { "a device", "/dev/zero", "this is a device" },
             { "a socket", ear, "this is a socket" },
             { "a circle of links", circle, "circle" },
             { "a link into nothing", dangling, "no such" },
             { "nothing", folder.path / "nothing", "no such" },
             { "a file's folder", folder.write ("file", "x") / "under", "no such" },
             { "a long name", folder.path / std::string (300, 'x'), "longer than the system allows" },
             { "no name", "", "no such" } };
}
}

TEST_CASE ("A path that is no regular file is refused by what it is, as job, preset, take, impulse response and readings")
{
    const support::Folder folder;
    for (const auto& way : ways (folder))
    {
        INFO (way.what);
        Diagnostics diagnostics;
        CHECK_FALSE (readJob (way.path, support::shipped(), diagnostics));
        REQUIRE (diagnostics.size() == 1);
        CHECK (diagnostics[0].message.find (way.says) != std::string::npos);
        diagnostics.clear();
        CHECK_FALSE (readReadings (way.path, support::shipped(), diagnostics));
        REQUIRE (diagnostics.size() == 1);
        CHECK (diagnostics[0].message.find (way.says) != std::string::npos);
        for (const bool impulse : { false, true })
        {
            std::string said;
            try
            {
                impulse ? static_cast<void> (readImpulse (way.path)) : static_cast<void> (takeInfo (way.path));
            }
            catch (const TakeError& error)
            {
                said = error.what();
            }
            INFO (said);
            CHECK (said.find (way.says) != std::string::npos);
            CHECK ((! impulse || said.find ("take", way.path.string().size()) == std::string::npos));
        }
        // As a preset it is simply none.
        const support::Folder own;
        std::filesystem::create_directories (own.path / "switches");
        std::error_code ignored;
        std::filesystem::create_symlink (way.path, own.path / "switches/mine.json", ignored);
        const PresetFolders presets { { own.path } };
        CHECK_FALSE (presets.has ("switches", "mine"));
        CHECK (presets.list ("switches").empty());
    }
}

TEST_CASE ("One link into nothing hides no other preset")
{
    const support::Folder folder;
    folder.write ("switches/good.json", "{}");
    std::filesystem::create_symlink (folder.path / "nowhere", folder.path / "switches/bad.json");
    CHECK (PresetFolders { { folder.path } }.list ("switches") == std::vector<std::string> { "good" });
}

TEST_CASE ("A folder of presets asked for by name that cannot be listed is a fault of every reading")
{
    const support::Folder folder;
    for (const auto& path : { folder.path / "nothing", folder.write ("file", "x"), folder.path / std::string (300, 'x') })
    {
        const auto presets = PresetFolders::standard ({ path });
        REQUIRE (presets.unreadable().size() == 1);
        CHECK (presets.unreadable()[0].file == path.string());
        Diagnostics diagnostics;
        CHECK_FALSE (readJobText ("{ \"coldiron\": \"job 1\", \"guitar\": \"one-humbucker\" }", "/", presets, diagnostics));
        CHECK (diagnostics[0].file == path.string());
    }
    CHECK (PresetFolders::standard ({ folder.path }).unreadable().empty());
}
}
