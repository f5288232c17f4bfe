#include "paper/TakeCard.h"

#include "files/Quantity.h"
#include "response/PickupsHeard.h"
#include "response/Volumes.h"

#include <algorithm>

namespace coldiron
{
namespace
{
CircuitConfig sideAt (const Guitar& guitar, const Setting& setting)
{
    StringSet strings;
    strings.strings = guitar.strings;
    strings.played.assign (guitar.strings.size(), true);
    return { guitar.harness, setting, {}, strings };
}

std::string plain (std::string name)
{
    std::replace (name.begin(), name.end(), '-', ' ');
    return name;
}

std::string wordsOf (const Guitar& guitar, const Setting& setting)
{
    std::string words;
    for (const auto& control : controls (guitar.harness))
    {
        const auto lever = setting.levers.find (control.name);
        const auto knob = setting.knobs.find (control.name);
        std::string part;
        if (lever != setting.levers.end())
            part = plain (control.name) + " to " + plain (lever->second);
        else if (knob != setting.knobs.end())
            part = plain (control.name) + " to " + std::to_string (static_cast<int> (knob->second));
        if (! part.empty())
            words += (words.empty() ? "" : ", ") + part;
    }
    return words.empty() ? "as it stands" : words;
}

/** Positions of all switches, up to 200, the first switch slowest. */
std::vector<Setting> leverSettings (const Guitar& guitar)
{
    std::vector<Setting> settings (1);
    for (const auto& control : controls (guitar.harness))
    {
        if (control.positions.empty())
            continue;
        std::vector<Setting> next;
        for (const auto& setting : settings)
            for (const auto& position : control.positions)
                if (next.size() < 200)
                {
                    next.push_back (setting);
                    next.back().levers[control.name] = position;
                }
        settings = std::move (next);
    }
    return settings;
}

/** The same with all volumes but one at 0, and blends at either end. */
std::vector<Setting> withVolumesDown (const Guitar& guitar, const std::vector<Setting>& levers)
{
    std::vector<std::string> knobs = volumeKnobs (guitar.harness, {});
    std::vector<Setting> settings;
    for (const auto& setting : levers)
    {
        for (const auto& kept : knobs)
        {
            settings.push_back (setting);
            for (const auto& knob : knobs)
                if (knob != kept)
                    settings.back().knobs[knob] = 0.0;
        }
        for (const auto& knob : knobs)
        {
            settings.push_back (setting);
            settings.back().knobs[knob] = 0.0;
        }
    }
    return settings;
}

std::string escapedHtml (const std::string& text)
{
    std::string result;
    for (const char c : text)
        result += c == '<' ? "&lt;" : c == '>' ? "&gt;" : c == '&' ? "&amp;" : c == '"' ? "&quot;" : std::string (1, c);
    return result;
}

std::string listedPickups (const std::set<std::string>& pickups)
{
    std::string words;
    for (const auto& pickup : pickups)
        words += (words.empty() ? "" : " and ") + plain (pickup);
    return words + (pickups.size() == 1 ? " pickup alone" : " pickups together");
}

constexpr const char* style = R"(
@page{size:A4;margin:0}*{box-sizing:border-box;margin:0}html{-webkit-print-color-adjust:exact;print-color-adjust:exact}
body{font:400 13.5px/1.42 B612,Verdana,"DejaVu Sans",sans-serif;color:#1C2A33;background:#fff;width:794px;min-height:1122px;padding:38px 46px 30px;margin:0 auto}
h1,h2{font-family:"Routed Gothic","DejaVu Sans Condensed",B612,sans-serif;font-weight:400}h1{font-size:28px;line-height:1.15;margin:3px 0 6px}h2{font-size:18px;margin:20px 0 5px}
.m{color:#55656C}.top{display:grid;grid-template-columns:1fr auto;gap:20px}.tag{width:104px;height:88px}
table{width:100%;border-collapse:collapse}td,th{padding:6.5px 8px 6.5px 0;border-bottom:.8px solid #B9C2C0;text-align:left;vertical-align:top;font-weight:400}th{color:#55656C;font-size:12px;padding-bottom:2px}
.ck{display:inline-block;width:13px;height:13px;border:1.4px solid #1C2A33;border-radius:2px;vertical-align:-2px;margin:2px 6px 0 0}
.two{display:grid;grid-template-columns:1fr 1fr;gap:0 34px}.row{display:grid;grid-template-columns:22px 1fr;padding:6px 0;border-bottom:.8px solid #B9C2C0}
.key{border-left:4px solid #1C2A33;padding:1px 0 1px 12px;margin-top:20px}.s{display:inline-block;min-width:30px;margin-right:9px;white-space:nowrap}
.line{display:inline-block;border-bottom:1px solid #55656C;width:96px}.foot{font-size:12px;margin-top:12px}
)";

std::string row (const std::string& words);

/** What to play: a bass is not asked for chords. */
std::string playedRows (const Guitar& guitar)
{
    StringSet strings;
    strings.strings = guitar.strings;
    if (strings.isBass())
        return row ("a line on the low strings, fingers") + row ("long notes on each string, let them ring")
               + row ("a line high up the neck") + row ("the low line again with a pick, or slapped");
    return row ("a low riff") + row ("open chords, let them ring") + row ("a line high up the neck")
           + row ("low strings muted with the palm");
}

std::string row (const std::string& words)
{
    return "<div class=\"row\"><span class=\"ck\"></span><span>" + words + "</span></div>";
}
}

namespace
{
/** "All knobs at 10", and which of them rest elsewhere: a blend in its detent. */
std::string knobsOpen (const Guitar& guitar)
{
    std::string words = "All knobs at 10";
    for (const auto& control : controls (guitar.harness))
        if (control.positions.empty() && control.rest != 10.0)
            words += ", " + escapedHtml (plain (control.name)) + " at " + quantityText (control.rest) + ", its detent";
    return words;
}
}

std::vector<TakePlan> takePlans (const Guitar& guitar)
{
    std::vector<TakePlan> alone, together;
    const auto levers = leverSettings (guitar);
    const auto add = [&] (std::vector<TakePlan>& plans, const std::set<std::string>& pickups, Setting setting)
    {
        if (std::any_of (plans.begin(), plans.end(), [&] (const TakePlan& plan) { return plan.pickups == pickups; }))
            return;
        for (const auto& control : controls (guitar.harness)) // what stands there anyway need not be said, but the one switch is
            if (const auto found = setting.levers.find (control.name);
                found != setting.levers.end() && control.positions.size() == 2 && found->second == control.standard)
                setting.levers.erase (found);
        plans.push_back ({ pickups, setting, wordsOf (guitar, setting) });
    };
    for (const auto& setting : levers)
    {
        const auto heard = pickupsHeard (sideAt (guitar, setting));
        if (! heard.empty())
            add (heard.size() == 1 ? alone : together, heard, setting);
    }
    for (const auto& setting : withVolumesDown (guitar, levers))
        if (const auto heard = pickupsHeard (sideAt (guitar, setting)); heard.size() == 1)
            add (alone, heard, setting);
    for (int knob : { 0, 10 }) // a blend: either end
        for (const auto& control : controls (guitar.harness))
            if (control.positions.empty())
            {
                Setting setting;
                setting.knobs[control.name] = knob;
                if (const auto heard = pickupsHeard (sideAt (guitar, setting)); heard.size() == 1)
                    add (alone, heard, setting);
            }
    alone.insert (alone.end(), together.begin(), together.end());
    return alone;
}

std::string takeCardHtml (const Guitar& guitar, const std::string& title, const std::string& wish)
{
    std::string html = "<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">\n"
                       "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src "
                       "'unsafe-inline'\">\n<title>Take card"
                       + (title.empty() ? std::string() : ": " + escapedHtml (title)) + "</title>\n<style>" + style
                       + "</style></head><body>\n";
    html += "<div class=\"top\"><div><p class=\"m\">" + escapedHtml (title.empty() ? "Coldiron" : title)
            + "</p><h1>Take card: how to record</h1><p>" + escapedHtml (guitar.name)
            + (wish.empty() ? std::string() : ". \xe2\x80\x9c" + escapedHtml (wish) + "\xe2\x80\x9d")
            + "</p></div>"
              "<svg class=\"tag\" viewBox=\"0 0 104 88\" aria-hidden=\"true\"><path d=\"M16 1H88L103 16V82a5 5 0 0 1 -5 5H6a5 5 "
              "0 0 1 -5 -5V16Z\" fill=\"#1C2A33\"/>"
              "<circle cx=\"52\" cy=\"13\" r=\"5.5\" fill=\"#fff\"/><path d=\"M14 52h4M24 42v20M30 34v36M36 46v12M42 30v44M48 "
              "40v24M54 36v32M60 46v12M66 28v48M72 40v24M78 46v12M84 50v4M88 52h4\" stroke=\"#fff\" stroke-width=\"2.6\" "
              "stroke-linecap=\"round\"/></svg></div>\n";

    html += "<div class=\"two\"><div><h2>Before</h2>" + row (knobsOpen (guitar) + ", push-pulls down, switch as in the table")
            + row ("Guitar straight into a DI or a high-impedance input, no amplifier, no effects, no pedal in between")
            + row ("24 bits, 44.1 kHz or more, one mono file a take")
            + row ("Loudest note at about \xe2\x88\x92"
                   "12 dBFS, never at 0: turn the input down, not the guitar")
            + "</div><div><h2>Note down</h2>" + row ("Cable <span class=\"line\"></span> m, about 100 pF each")
            + row ("Input of the DI <span class=\"line\"></span> \xce\xa9, if it says")
            + row ("Who plays, with what pick <span class=\"line\"></span>")
            + row ("Strings: leave the old ones on. New ones change more than most rewires do") + "</div></div>\n";

    html += "<h2>The takes</h2><table><tr><th style=\"width:24px\"></th><th>set</th><th>heard</th><th>file</th><th>anything not "
            "at 10</th></tr>\n";
    const auto plans = takePlans (guitar);
    const size_t most = 8;
    for (size_t i = 0; i < plans.size() && i < most; ++i)
        html += "<tr><td><span class=\"ck\"></span></td><td><b>" + escapedHtml (plans[i].words) + "</b></td><td>"
                + escapedHtml (listedPickups (plans[i].pickups))
                + "</td><td><span class=\"line\"></span></td><td><span class=\"line\"></span></td></tr>\n";
    html += "</table>";
    if (plans.size() > most)
        html += "<p class=\"m\" style=\"margin-top:4px\">and " + std::to_string (plans.size() - most)
                + " more positions, if there is time.</p>";

    html +=
        "\n<div class=\"two\"><div><h2>Play the same each time, 30 seconds</h2>" + playedRows (guitar)
        + "</div><div><h2>Then do not play, 10 seconds</h2>" + row ("5 seconds, both hands resting on the strings")
        + row ("5 seconds, hands off") + row ("5 seconds more, hands off, turning slowly")
        + "<p style=\"margin-top:6px\">With the hands on, the hum <span class=\"ck\"></span>falls: shielding or a bad cable "
          "screen. <span class=\"ck\"></span>rises or crackles: missing string ground, or a fault. Mend that first. "
          "<span class=\"ck\"></span>follows turning: magnetic, through the coils; there a rewire can help.</p></div></div>\n";

    html += "<div class=\"key\"><b>Tick the strings the riff uses.</b> Each pickup hears each string at another place, so a riff "
            "on two strings changes otherwise than one across all of them does. Of all that can be noted here this helps the "
            "estimate most.<div style=\"margin-top:6px\">";
    for (const auto& string : guitar.strings)
        html += "<span class=\"s\"><span class=\"ck\"></span>" + escapedHtml (string.name) + "</span>";
    html += "</div></div>\n<p class=\"m foot\">One take for each pickup: an option is surest from a take through the coils it "
            "uses. The same phrase twice differs by about 1.6 dB in tone; a rewire that differs less is not worth the "
            "iron.</p>\n</body></html>\n";
    return html;
}
}
