#pragma once

#include "Sessions.h"

/** States of a session, damaged in every way that was thought of. */
namespace damaged
{
using namespace coldiron;

/** Two options whose rewires fit the same switch: the second finds what is left of it by the first. */
inline const char* usedTwice = R"({ "coldiron": "job 1", "title": "Twice", "guitar": "two-humbuckers-four-knobs",
  "options": {
    "A": { "name": "Bridge", "rewires": [ { "use": "series-parallel", "pickup": "bridge", "pot": "bridge-volume" } ],
           "setting": { "bridge-volume-pull": "up" } },
    "B": { "name": "Neck", "rewires": [ { "use": "series-parallel", "pickup": "neck", "pot": "neck-volume" } ],
           "setting": { "neck-volume-pull": "up" } } } })";

inline JobTree goodState()
{
    Session session (sessions::shippedPresets());
    session.jobEditor.setText (usedTwice);
    session.monitor.hear (OptionId::A);
    session.output.setTrimDb (-3.0);
    return JobTree::parse (session.state());
}

inline const std::vector<std::string>& wrongValues()
{
    static const std::vector<std::string> values {
        "null",  "true",        "-1", "1e308",  "-1e308",    "0.5", "99999999999999999999", "\"\"",
        "\"x\"", "\"../../x\"", "[]", "[null]", "[[[[1]]]]", "{}",  R"({"":{"":null}})",    R"([{"a":[1,2]},"x",1e400])",
    };
    return values;
}

inline std::vector<std::string> brokenPresets (const std::string& good)
{
    std::vector<std::string> broken {
        "",
        "{",
        "[]",
        "null",
        "7",
        "\"x\"",
        "{}",
        std::string (100000, '['),
        std::string (100000, '{'),
        "{\"a\":" + std::string (200, '['),
        std::string ("\0\xff\xfe", 3),
        good + good,
        good.substr (0, good.size() / 2),
        R"({ "coldiron": "switch 1" })",
        R"({ "coldiron": "switch 1", "points": [], "positions": {} })",
        R"({ "coldiron": "switch 1", "points": ["a"], "positions": {} })",
        R"({ "coldiron": "switch 1", "points": ["a", "a-up", "a-down", "b", "b-up", "b-down"], "positons": { "down": [], "up": [] } })",
        R"({ "coldiron": "switch 1", "points": ["a"], "positions": { "down": 3 } })",
        R"({ "coldiron": "switch 1", "positions": [ [ ["a", "b"] ] ] })"
    };
    for (const char* key : { "\"positions\"", "\"points\"", "\"coldiron\"", "\"name\"", "\"coils\"", "\"parts\"", "\"wires\"",
                             "\"steps\"", "\"asks\"", "\"up\"", "\"down\"" })
        if (const size_t at = good.find (key); at != std::string::npos)
        {
            std::string other = good;
            broken.push_back (other.replace (at, std::string (key).size(), "\"posed\""));
        }
    return broken;
}

/** What is damaged, and the state. */
struct State
{
    std::string what, text;
};

/** Every key of a state spoilt, and left out. */
inline std::vector<State> keysSpoilt (const JobTree& good)
{
    std::vector<State> states;
    for (const auto& [key, value] : good.items())
    {
        JobTree damaged = good;
        damaged.erase (key);
        states.push_back ({ key + " left out", damaged.dump() });
        damaged = good;
        damaged[key] = "SPOILT";
        const std::string text = damaged.dump();
        for (const std::string& wrong : wrongValues())
        {
            std::string spoilt = text;
            states.push_back ({ key + ": " + wrong, spoilt.replace (spoilt.find ("\"SPOILT\""), 8, wrong) });
        }
    }
    return states;
}

/** Every preset of a state broken. */
inline std::vector<State> presetsBroken (const JobTree& good)
{
    std::vector<State> states;
    for (const auto& [key, text] : good["presets"].items())
        for (const std::string& broken : brokenPresets (text.get<std::string>()))
        {
            JobTree damaged = good;
            damaged["presets"][key] = broken;
            states.push_back (
                { key + ": " + broken.substr (0, 80), damaged.dump (-1, ' ', false, JobTree::error_handler_t::replace) });
        }
    return states;
}
}
