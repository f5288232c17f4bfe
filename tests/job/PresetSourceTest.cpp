#include "support/JobFixture.h"

#include "files/JsonCounts.h"

#include <atomic>
#include <thread>

namespace presetSourceTest
{
using namespace coldiron;
using support::Folder;

const char* switchText =
    R"({ "coldiron": "switch 1", "name": "Mine", "points": ["a", "b"], "positions": { "up": [["a", "b"]] } })";

/** An hour ago, so that its state is told from a later one by the clock. */
void settle (const std::filesystem::path& file, int minutesAgo = 60)
{
    std::filesystem::last_write_time (file, std::filesystem::file_time_type::clock::now() - std::chrono::minutes (minutesAgo));
}

TEST_CASE ("The first source that has a preset wins, whether it lies in a folder or is carried")
{
    const Folder first, second;
    first.write ("switches/mine.json", "1");
    second.write ("switches/mine.json", "2");
    second.write ("switches/other.json", "3");
    const PresetFolders folders ({ first.path, second.path });
    CHECK (folders.find ("switches", "mine")->text == "1");
    CHECK (folders.find ("switches", "mine")->file == first.path / "switches/mine.json");
    CHECK (folders.find ("switches", "other")->text == "3");
    CHECK (folders.find ("tapers", "mine") == nullptr);
    CHECK (folders.find ("switches", "../switches/mine") == nullptr);

    const auto carried = std::make_shared<const CarriedPresets> (
        std::map<std::string, std::string> { { "switches/mine", "4" }, { "tapers/t", "5" } });
    const auto all = folders.behind (carried);
    CHECK (all.find ("switches", "mine")->text == "4");
    CHECK (all.find ("switches", "mine")->file.empty());
    CHECK (all.find ("switches", "mine")->label == "switches/mine, kept with the job");
    CHECK (all.find ("switches", "other")->text == "3");
    CHECK (all.find ("tapers", "t")->text == "5");
    CHECK (all.list ("switches") == std::vector<std::string> { "mine", "other" });
    CHECK (all.list ("tapers") == std::vector<std::string> { "t" });
    CHECK (all.folders() == std::vector<std::filesystem::path> { first.path, second.path });
    CHECK (folders.find ("switches", "mine")->text == "1"); // the others are as they were
}

TEST_CASE ("A preset is parsed once however often it is asked for, and again when its file has changed")
{
    const Folder folder;
    const auto file = folder.write ("switches/mine.json", switchText);
    settle (file);
    const PresetFolders presets ({ folder.path });
    const auto copy = presets;
    const auto before = textsParsed();
    const auto once = presets.find ("switches", "mine");
    CHECK (presets.find ("switches", "mine") == once);
    CHECK (copy.find ("switches", "mine") == once);
    CHECK (textsParsed() == before + 1);
    CHECK (once->json->textAt ("name") == "Mine");

    folder.write ("switches/mine.json", std::string (switchText) + "\n");
    CHECK (presets.find ("switches", "mine")->text == std::string (switchText) + "\n");
    folder.write ("switches/mine.json", switchText); // of the length it had, within the same tick
    CHECK (presets.find ("switches", "mine")->text == switchText);
    settle (file, 30);
    CHECK (presets.find ("switches", "mine") != once);
    std::filesystem::remove (file);
    CHECK (presets.find ("switches", "mine") == nullptr);
}

TEST_CASE ("A preset that is no JSON keeps its faults for everyone who uses it")
{
    const Folder folder;
    settle (folder.write ("switches/mine.json", "{ \"coldiron\": \"switch 1\",\n oops }"));
    settle (folder.write ("switches/empty.json", ""));
    const PresetFolders presets ({ folder.path });
    for (int reading = 0; reading < 2; ++reading)
    {
        const auto preset = presets.find ("switches", "mine");
        CHECK_FALSE (preset->json.has_value());
        REQUIRE (preset->faults.size() == 1);
        CHECK (preset->faults[0].line == 2);
        CHECK (presets.find ("switches", "empty")->faults[0].message.find ("\"switch 1\"") != std::string::npos);
    }
}

TEST_CASE ("Threads may ask for the same presets at once")
{
    const auto presets = support::shipped().behind (
        std::make_shared<const CarriedPresets> (std::map<std::string, std::string> { { "switches/mine", switchText } }));
    std::atomic<int> found { 0 };
    std::vector<std::thread> threads;
    for (int i = 0; i < 4; ++i)
        threads.emplace_back (
            [&]
            {
                for (const auto& name : presets.list ("switches"))
                    found += presets.find ("switches", name)->json.has_value() ? 1 : 0;
            });
    for (auto& thread : threads)
        thread.join();
    CHECK (found == 4 * static_cast<int> (presets.list ("switches").size()));
    CHECK (found >= 40);
}
}
