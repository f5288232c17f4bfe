// A host of our own on the bundles as they were built: VST3 and LV2.
#include "Processors.h"

#include <catch2/catch.hpp>

#include <functional>

namespace hostTest
{
using namespace coldiron;
using namespace processors;
using sessions::noise;
using sessions::residualDb;

namespace
{
struct Host
{
    juce::AudioPluginFormatManager formats;

    Host()
    {
        formats.addFormat (new juce::VST3PluginFormat());
        formats.addFormat (new juce::LV2PluginFormat());
    }

    std::unique_ptr<juce::AudioPluginInstance> load (const juce::String& kind)
    {
        for (auto* format : formats.getFormats())
        {
            if (format->getName() != kind)
                continue;
            juce::OwnedArray<juce::PluginDescription> found;
            if (kind == "LV2") // found by its folder, named by its URI
            {
                format->searchPathsForPlugins (
                    juce::FileSearchPath (juce::File (COLDIRON_LV2).getParentDirectory().getFullPathName()), false);
                format->findAllTypesForFile (found, "urn:coldiron:plugin");
            }
            else
                format->findAllTypesForFile (found, COLDIRON_VST3);
            if (found.isEmpty())
                return nullptr;
            juce::String fault;
            auto instance = formats.createPluginInstance (*found[0], 48000.0, 256, fault);
            UNSCOPED_INFO (fault);
            return instance;
        }
        return nullptr;
    }
};

void prepare (juce::AudioPluginInstance& plugin)
{
    plugin.enableAllBuses();
    plugin.setNonRealtime (true);
    plugin.setRateAndBufferSizeDetails (48000.0, 256);
    plugin.prepareToPlay (48000.0, 256);
}

void letMessagesRun (int ms) { juce::MessageManager::getInstance()->runDispatchLoopUntil (ms); }

/** Where our state stands in what a host keeps: both formats put JUCE's base64 ("LENGTH.CHARACTERS") into a text. */
std::pair<size_t, size_t> stateWithin (const std::string& kept)
{
    std::pair<size_t, size_t> longest { 0, 0 };
    for (size_t at = 0; at < kept.size();)
    {
        const auto isDigit = [&] (size_t i) { return i < kept.size() && kept[i] >= '0' && kept[i] <= '9'; };
        const auto isCode = [&] (size_t i)
        { return i < kept.size() && (std::isalnum (static_cast<unsigned char> (kept[i])) || kept[i] == '.' || kept[i] == '+'); };
        if (! isDigit (at) || (at > 0 && isCode (at - 1)))
        {
            ++at;
            continue;
        }
        size_t end = at;
        while (isDigit (end))
            ++end;
        const bool dotted = end < kept.size() && kept[end] == '.';
        while (isCode (end))
            ++end;
        if (dotted && end - at > longest.second)
            longest = { at, end - at };
        at = end;
    }
    return longest;
}

std::string textOf (const juce::MemoryBlock& block) { return { static_cast<const char*> (block.getData()), block.getSize() }; }

/** The JSON of ours within what the host keeps; null where there is none. */
JobTree documentIn (const juce::MemoryBlock& kept)
{
    const std::string raw = textOf (kept);
    const auto [at, length] = stateWithin (raw);
    juce::MemoryBlock inner;
    if (length == 0 || ! inner.fromBase64Encoding (juce::String (raw.substr (at, length))))
        return {};
    std::string text = textOf (inner);
    if (const auto end = text.rfind ('}'); end != std::string::npos) // JUCE's wrapper adds bytes of its own behind
        for (size_t close = end; close != std::string::npos && close > 0; close = text.rfind ('}', close - 1))
            if (JobTree tree = JobTree::parse (text.substr (0, close + 1), nullptr, false); tree.is_object())
                return tree;
    return {};
}

/** What the host would keep with another state of ours in it. */
juce::MemoryBlock withState (const juce::MemoryBlock& kept, const juce::MemoryBlock& ours)
{
    std::string raw = textOf (kept);
    const auto [at, length] = stateWithin (raw);
    raw.replace (at, length, ours.toBase64Encoding().toStdString());
    return { raw.data(), raw.size() };
}

/** What a second instance must have of the first. Empty: all of it. */
juce::String differences (juce::AudioPluginInstance& a, juce::AudioPluginInstance& b)
{
    juce::StringArray wrong;
    const auto x = noise (24000);
    for (auto* plugin : { &a, &b })
        prepare (*plugin);
    for (int round = 0; round < 3; ++round) // an LV2 is given its state after it was prepared, and answers within its audio
    {
        for (auto* plugin : { &a, &b })
            run (*plugin, { x, x }, 2);
        letMessagesRun (100);
    }
    // An LV2 host keeps control values of its own beside the plugin's; there the plugin's are compared in its state below.
    const bool holdsThePlugins = a.getPluginDescription().pluginFormatName != "LV2";
    if (a.getParameters().size() != b.getParameters().size())
        wrong.add ("number of parameters");
    else if (holdsThePlugins)
        for (int i = 0; i < a.getParameters().size(); ++i)
            if (std::abs (a.getParameters()[i]->getValue() - b.getParameters()[i]->getValue()) > 1e-6f)
                wrong.add ("parameter " + a.getParameters()[i]->getName (64) + " "
                           + juce::String (a.getParameters()[i]->getValue()) + " "
                           + juce::String (b.getParameters()[i]->getValue()));
    if (const double db = residualDb (run (b, { x, x }, 2)[0], run (a, { x, x }, 2)[0]); db > -120.0)
        wrong.add ("audio " + juce::String (db) + " dB");
    return wrong.joinIntoString (", ");
}

/** Turns the knobs a host would turn, in an instance that holds our job. */
void arrange (juce::AudioPluginInstance& plugin)
{
    prepare (plugin);
    for (auto* parameter : plugin.getParameters())
    {
        const auto name = parameter->getName (64);
        if (name == "Option")
            parameter->setValueNotifyingHost (1.0f / 8.0f);
        if (name == "Output trim")
            parameter->setValueNotifyingHost (0.4f);
    }
    const auto x = noise (4800);
    run (plugin, { x, x }, 2);
    letMessagesRun (100);
}
}

TEST_CASE ("the built bundles load, and tell of themselves")
{
    Host host;
    for (const char* kind : { "VST3", "LV2" })
    {
        INFO (kind);
        auto plugin = host.load (kind);
        REQUIRE (plugin != nullptr);
        CHECK (plugin->getName() == "Coldiron");
        CHECK (plugin->getLatencySamples() == 0);
        prepare (*plugin);
        CHECK (plugin->getLatencySamples() == 0);
        CHECK (parameterNamed (*plugin, "Option") != nullptr);
        const auto x = noise (4800);
        CHECK (run (*plugin, { x, x }, 2)[0] == x); // as recorded: the take as it is
    }
}

TEST_CASE ("the LV2 manifest says the URI that projects will look for")
{
    const juce::String manifest = juce::File (COLDIRON_LV2).getChildFile ("manifest.ttl").loadFileAsString();
    CHECK (manifest.contains ("<urn:coldiron:plugin>"));
    CHECK_FALSE (manifest.contains ("file://"));
    CHECK_FALSE (juce::File (COLDIRON_LV2).getChildFile ("dsp.ttl").loadFileAsString().contains ("file://"));
}

TEST_CASE ("a state set in one instance makes another the same: parameters, document and audio")
{
    Host host;
    for (const char* kind : { "VST3", "LV2" })
    {
        INFO (kind);
        auto first = host.load (kind), second = host.load (kind), untouched = host.load (kind);
        REQUIRE (first != nullptr);
        REQUIRE (second != nullptr);
        REQUIRE (untouched != nullptr);

        juce::MemoryBlock state;
        if (juce::String (kind) == "LV2") // the text around it has no length to mend
        {
            first->getStateInformation (state);
            state = withState (state, stateOfTwoOptions (OptionId::C, 4.0));
            first->setStateInformation (state.getData(), static_cast<int> (state.getSize()));
            letMessagesRun (100);
        }
        arrange (*first);
        first->getStateInformation (state);
        REQUIRE (documentIn (state).is_object());

        second->setStateInformation (state.getData(), static_cast<int> (state.getSize()));
        letMessagesRun (100);
        CHECK (differences (*first, *second) == "");
        juce::MemoryBlock again;
        second->getStateInformation (again);
        CHECK (documentIn (again) == documentIn (state)); // the job, every knob and lever of every option

        // A plugin that stores nothing is what the third instance is: the comparison notices.
        CHECK (differences (*first, *untouched) != "");
        juce::MemoryBlock blank;
        untouched->getStateInformation (blank);
        CHECK (documentIn (blank) != documentIn (state));
    }
}

TEST_CASE ("a bundle plays what the command computes")
{
    const auto ours = stateOfTwoOptions (OptionId::C, 4.0);
    const std::string text = textOf (ours);
    Host host;
    auto plugin = host.load ("VST3");
    REQUIRE (plugin != nullptr);
    juce::MemoryBlock kept;
    plugin->getStateInformation (kept);

    // The host's XML has a length in its head, so it is taken apart and put together by JUCE.
    const auto xml = juce::AudioProcessor::getXmlFromBinary (kept.getData(), static_cast<int> (kept.getSize()));
    REQUIRE (xml != nullptr);
    auto* component = xml->getChildByName ("IComponent");
    REQUIRE (component != nullptr);
    component->deleteAllTextElements();
    component->addTextElement (ours.toBase64Encoding());
    juce::AudioProcessor::copyXmlToBinary (*xml, kept);
    plugin->setStateInformation (kept.getData(), static_cast<int> (kept.getSize()));
    letMessagesRun (100);
    prepare (*plugin);

    Session reference (sessions::shippedPresets());
    REQUIRE (reference.restore (text));
    const auto x = noise (48000);
    const auto y = run (*plugin, { x, x }, 2)[0];
    CHECK (residualDb (y, sessions::offline (reference, OptionId::C, 48000.0, x)) < -90.0);
    CHECK (residualDb (y, x) > -60.0); // not simply passed through
}

TEST_CASE ("crafted states do the host no harm")
{
    Host host;
    for (const char* kind : { "VST3", "LV2" })
    {
        auto plugin = host.load (kind);
        REQUIRE (plugin != nullptr);
        arrange (*plugin);
        juce::MemoryBlock good, after;
        plugin->getStateInformation (good);
        for (size_t size : { size_t (0), size_t (1), size_t (7), good.getSize() / 2 })
            plugin->setStateInformation (good.getData(), static_cast<int> (size));
        letMessagesRun (50);
        plugin->getStateInformation (after);
        CHECK (documentIn (after)["job"] == documentIn (good)["job"]);
    }
}
}
