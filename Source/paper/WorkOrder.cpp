#include "paper/WorkOrder.h"

#include "analysis/BenchPlan.h"
#include "analysis/OhmRows.h"
#include "analysis/StrikeTable.h"
#include "paper/Drawing.h"
#include "paper/DrawingSvg.h"
#include "paper/Html.h"
#include "wording/BenchWords.h"
#include "wording/OhmWords.h"
#include "wording/PartWords.h"
#include "wording/Say.h"

#include <algorithm>
#include <map>

namespace coldiron
{
namespace
{
using wording::say;

constexpr const char* orderStyle = R"(
@page{margin:13mm 12mm 14mm}*{box-sizing:border-box;margin:0}html{-webkit-print-color-adjust:exact;print-color-adjust:exact}
body{font:400 13px/1.42 B612,Verdana,"DejaVu Sans",sans-serif;color:#1C2A33;background:#fff;max-width:186mm;margin:0 auto;overflow-wrap:anywhere}
@media screen{body{padding:24px 12px}}
h1,h2,h3{font-family:"Routed Gothic","DejaVu Sans Condensed",B612,sans-serif;font-weight:400;break-after:avoid}
h1{font-size:27px;line-height:1.15;margin:3px 0 6px}h2{font-size:19px;margin:18px 0 5px}h3{font-size:15px;margin:10px 0 3px}
.m{color:#55656C}.top{display:grid;grid-template-columns:1fr auto;gap:20px}.tag{width:92px;height:104px}
table{width:100%;border-collapse:collapse}tr{break-inside:avoid}td,th{padding:4.5px 8px 4.5px 0;border-bottom:.8px solid #B9C2C0;text-align:left;vertical-align:top;font-weight:400}
th{color:#55656C;font-size:11.5px;padding-bottom:2px}thead{display:table-header-group}td.n,th.n{text-align:right;white-space:nowrap}
.ck{display:inline-block;width:13px;height:13px;border:1.4px solid #1C2A33;border-radius:2px;vertical-align:-2px;margin-right:6px}
.no{display:inline-block;min-width:25px;padding:0 4px;border:1.6px solid #C23A12;border-radius:4px;font-weight:700;font-size:12px;text-align:center}
.step{display:grid;grid-template-columns:22px 40px 1fr;gap:0 4px;padding:4.5px 0;border-bottom:.8px solid #B9C2C0;break-inside:avoid}
.step ul{list-style:none;padding:0;margin:1px 0 0;color:#3B4A52}.step li{padding-left:12px;text-indent:-12px}.step li::before{content:"\2013\00a0 "}
.row{display:grid;grid-template-columns:22px 1fr;padding:4px 0;break-inside:avoid}
.line{display:inline-block;border-bottom:1px solid #55656C;min-width:70px;height:1em}.wide{min-width:190px}
.warn{border-left:4px solid #1C2A33;padding:1px 0 1px 12px;margin-top:8px;break-inside:avoid}.warn p{margin:2px 0}
.sheet{break-before:page}.draw{break-inside:avoid;margin-top:4px;text-align:center}.draw svg{width:100%;height:auto;max-height:218mm}
.sign{display:flex;flex-wrap:wrap;gap:14px 30px;margin-top:16px;break-inside:avoid}
)";

class Order
{
public:
    Order (const Job& j, const Option& o, const std::string& d)
        : job (j), option (o), date (d), before (o.guitar.harness), after (o.harness), plan (planBench (before, after))
    {
    }

    std::string html()
    {
        head();
        parts();
        readings (say ("Ohms at the jack, as found"), before,
                  say ("All knobs at 10, guitar unplugged, cable in the jack. Write down what the meter says before anything is "
                       "opened."));
        drawings();
        steps();
        readings (say ("Ohms at the jack, before it is closed"), after,
                  say ("All knobs at 10. The band is the worst case of the parts' tolerances from 15 to 30 °C; outside of it, "
                       "look for the fault "
                       "before you close."));
        strikes();
        lastChecks();
        out += "</body></html>\n";
        return std::move (out);
    }

private:
    const Job& job;
    const Option& option;
    const std::string& date;
    const Harness& before;
    const Harness& after;
    const BenchPlan plan;
    std::string out;

    static std::string esc (const std::string& text) { return escapedMarkup (text); }

    void head()
    {
        const auto title = option.name.empty() ? say ("Option {letter}", option.letter) : option.name;
        out += "<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">\n<meta name=\"viewport\" "
               "content=\"width=device-width, "
               "initial-scale=1\">\n<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src "
               "'unsafe-inline'\">\n<title>"
               + esc (say ("Work order: {title}", title)) + "</title>\n<style>" + orderStyle + "</style></head><body>\n";
        std::string over = job.title.empty() ? job.guitar.name : job.title;
        if (! date.empty())
            over += ", " + date;
        out += "<div class=\"top\"><div><p class=\"m\">" + esc (say ("Work order. {job}", over)) + "</p><h1>" + esc (title)
               + "</h1><p>" + esc (option.guitar.name)
               + (job.wish.empty() ? std::string() : ". \xe2\x80\x9c" + esc (job.wish) + "\xe2\x80\x9d") + "</p>";
        out += "<p><b>" + esc (counts()) + "</b></p>";
        for (const auto& use : option.rewires)
        {
            if (! use.gives.empty())
                out += "<p>" + esc (say ("Gives: {what}", use.gives)) + "</p>";
            if (! use.costs.empty())
                out += "<p>" + esc (say ("Costs: {what}", use.costs)) + "</p>";
        }
        out +=
            "</div><svg class=\"tag\" viewBox=\"0 0 92 104\" role=\"img\" aria-label=\""
            + esc (say ("Option {letter}", option.letter))
            + "\"><path d=\"M14 1H78L91 14V98a5 5 0 0 1 -5 5H6a5 5 0 0 1 -5 -5V14Z\" fill=\"#fff\" stroke=\"#1C2A33\" "
              "stroke-width=\"2\"/>"
              "<circle cx=\"46\" cy=\"13\" r=\"5\" fill=\"none\" stroke=\"#1C2A33\" stroke-width=\"2\"/><text x=\"46\" y=\"82\" "
              "text-anchor=\"middle\" font-family=\"Routed Gothic,B612,sans-serif\" font-size=\"58\" fill=\"#1C2A33\">"
            + esc (option.letter) + "</text></svg></div>\n";
        out += "<div class=\"warn\">";
        for (const auto& caution : wording::benchCautions (before, after))
            out += "<p>" + esc (caution) + "</p>";
        out += "</div>\n";
    }

    std::string counts() const
    {
        const auto fitted = buyUnits().size();
        return say ("{parts}, {open} to open, {make} to make.",
                    fitted == 1 ? say ("1 part to fit") : say ("{n} parts to fit", static_cast<int> (fitted)),
                    plan.toOpen == 1 ? say ("1 solder point") : say ("{n} solder points", plan.toOpen),
                    plan.toMake == 1 ? say ("1 solder point") : say ("{n} solder points", plan.toMake));
    }

    /** What is bought as one thing, in the order of the steps; parts that only hang on another by their legs stand alone here. */
    std::vector<std::vector<std::string>> buyUnits() const
    {
        std::vector<std::vector<std::string>> units;
        for (const auto& step : plan.steps)
            if (step.kind == BenchStep::Kind::prepare)
            {
                std::vector<std::string> unit;
                for (const auto& name : step.parts)
                {
                    const auto* part = after.find (name);
                    const bool hasLegs = part->as<PickupPart>() == nullptr && part->isLead (part->points().front());
                    if (hasLegs)
                        units.push_back ({ name });
                    else
                        unit.push_back (name);
                }
                if (! unit.empty())
                    units.push_back (unit);
            }
        return units;
    }

    void parts()
    {
        out += "<h2>" + say ("Parts") + "</h2><table><thead><tr><th>" + say ("part") + "</th><th>" + say ("for") + "</th><th>"
               + say ("code") + "</th><th>" + say ("tolerance") + "</th><th>" + say ("check that it fits") + "</th><th>"
               + say ("price") + "</th></tr></thead><tbody>\n";
        for (const auto& unit : buyUnits())
        {
            const auto line = wording::buyLine (after, unit);
            std::string fits;
            for (const auto& fit : line.fits)
                fits += "<div><span class=\"ck\"></span>" + esc (fit) + "</div>";
            out += "<tr><td><span class=\"ck\"></span>" + esc (line.what) + "</td><td>"
                   + esc (wording::partTitle (*after.find (unit.front()))) + "</td><td>" + esc (line.code) + "</td><td>"
                   + esc (line.tolerance) + "</td><td>" + fits + "</td><td><span class=\"line\"></span></td></tr>\n";
        }
        out += "<tr><td colspan=\"5\"><span class=\"ck\"></span>"
               + esc (say ("Hookup wire, sleeving, solder. The code is IEC 60062's: K, M, n or µ stand for the decimal point, "
                           "the last letter is "
                           "the tolerance."))
               + "</td><td><span class=\"line\"></span></td></tr></tbody></table>\n";
    }

    static std::string leversIn (const std::vector<std::pair<std::string, std::string>>& levers)
    {
        std::vector<std::string> words;
        for (const auto& [lever, position] : levers)
            words.push_back (say ("{switch} {position}", wording::plainName (lever), wording::plainName (position)));
        return words.empty() ? say ("as it stands") : wording::capitalised (wording::listOf (words));
    }

    void readings (const std::string& title, const Harness& harness, const std::string& how)
    {
        out += "<h2>" + esc (title) + "</h2><p>" + esc (how) + "</p><table><thead><tr><th>" + say ("switches")
               + "</th><th class=\"n\">" + say ("must read") + "</th><th class=\"n\">" + say ("passes from")
               + "</th><th class=\"n\">" + say ("to") + "</th><th>" + say ("reads") + "</th></tr></thead><tbody>\n";
        const auto row = [this] (const std::string& where, const OhmReading& reading)
        {
            const bool isNumber = reading.isNumber();
            out += "<tr><td>" + esc (where) + "</td><td class=\"n\">"
                   + esc (isNumber ? wording::quantity (reading.ohms, "Ω") : wording::noOhms (reading)) + "</td><td class=\"n\">"
                   + (isNumber ? esc (wording::quantity (reading.lowOhms, "Ω")) : std::string()) + "</td><td class=\"n\">"
                   + (isNumber ? esc (wording::quantity (reading.highOhms, "Ω")) : std::string())
                   + "</td><td><span class=\"line\"></span></td></tr>\n";
        };
        for (const auto& reading : rowsThatDiffer (ohmTable (harness)))
            row (leversIn (reading.levers), reading);
        for (const auto& [volume, reading] : volumesApart (harness))
            row (say ("{volume} at 10, every other volume at 0", wording::title (volume)), reading);
        out += "</tbody></table>\n";
    }

    void drawing (const std::string& title, const Harness& from, const Harness& to)
    {
        out += "<div class=\"sheet\"><h2>" + esc (title) + "</h2><p class=\"m\">"
               + esc (say ("Seen from the back, lugs towards you. On a switch find the common with a meter: makers place their "
                           "lugs differently."))
               + "</p><div class=\"draw\">" + drawingSvg (drawWiring (from, to)) + "</div></div>\n";
    }

    void drawings()
    {
        drawing (say ("The wiring as it is"), before, before);
        drawing (say ("The wiring as it shall be, what changes marked"), before, after);
    }

    void step (const std::string& number, const std::string& what, const std::vector<std::string>& lines)
    {
        out += "<div class=\"step\"><span class=\"ck\"></span><span>"
               + (number.empty() ? std::string() : "<span class=\"no\">" + esc (number) + "</span>") + "</span><div>"
               + esc (what);
        if (! lines.empty())
        {
            out += "<ul>";
            for (const auto& line : lines)
                out += "<li>" + esc (line) + "</li>";
            out += "</ul>";
        }
        out += "</div></div>\n";
    }

    /** Which coil leads have which colours, as typed in the pickup. */
    std::vector<std::string> leadColours() const
    {
        std::vector<std::string> lines;
        for (const auto& part : before.parts())
            if (const auto* pickup = part.as<PickupPart>())
                for (const auto& [lead, colour] : pickup->pickup.colours)
                    lines.push_back (say ("{lead}: {colour}", wording::point (before, part.name + "." + lead), colour));
        return lines;
    }

    void steps()
    {
        out += "<div class=\"sheet\"><h2>" + say ("Before the iron") + "</h2>\n";
        step ({}, say ("Photograph the cavity. Tag every lead that comes off"), leadColours());
        step ({}, say ("Ohms at the jack as found are written down; they pass, or why not is known"), {});
        for (const auto& one : plan.steps)
            if (one.kind == BenchStep::Kind::prepare)
                for (const auto& name : one.parts)
                    if (const auto* lever = after.find (name)->as<SwitchPart>())
                        step ({},
                              say ("Ring out the new switch with a meter, lug pairs vary: {switch}",
                                   wording::partTitle (*after.find (name))),
                              wording::ringOut (lever->type));

        section (say ("Off and out"), BenchStep::Kind::unsolder, BenchStep::Kind::takeOut);
        bool hasNew = false;
        for (const auto& one : plan.steps)
            hasNew = hasNew || one.kind == BenchStep::Kind::prepare;
        if (hasNew)
        {
            out += "<h2>" + say ("New parts, out of the guitar") + "</h2>\n";
            for (const auto& one : plan.steps)
                if (one.kind == BenchStep::Kind::prepare || one.isOutOfGuitar)
                    step (one);
            out += "<h2>" + say ("Mount") + "</h2>\n";
            for (const auto& one : plan.steps)
                if (one.kind == BenchStep::Kind::mount)
                    step (one);
        }
        out += "<h2>" + say ("In the guitar: grounds first, then pickup leads, then the rest. One lug, one heat") + "</h2>\n";
        for (const auto& one : plan.steps)
            if ((one.kind == BenchStep::Kind::solder && ! one.isOutOfGuitar) || one.kind == BenchStep::Kind::insulate)
                step (one);
        out += "</div>\n";
    }

    void section (const std::string& title, BenchStep::Kind first, BenchStep::Kind second)
    {
        bool isOpen = false;
        for (const auto& one : plan.steps)
            if (one.kind == first || one.kind == second)
            {
                if (! isOpen)
                    out += "<h2>" + esc (title) + "</h2>\n";
                isOpen = true;
                step (one);
            }
    }

    void step (const BenchStep& one)
    {
        const bool isNumbered = one.kind == BenchStep::Kind::solder;
        step (isNumbered ? std::to_string (one.number) : std::string(), wording::benchStep (one, before, after),
              wording::benchEnds (one, before, after));
    }

    void strikes()
    {
        const auto rows = strikeTable (after, option.listening);
        if (rows.empty() || rows.front().coils.empty())
            return;
        const auto coilName = [] (const CoilStrike& coil)
        {
            return coil.coil.empty() ? wording::pickupTitle (coil.pickup)
                                     : say ("{pickup}, {coil}", wording::pickupTitle (coil.pickup), coil.coil);
        };
        out += "<h2>" + say ("Tap and kick") + "</h2><p>"
               + esc (say ("Tap: plugged into an amplifier turned low, a screwdriver's tip lightly on a pole of each coil. Kick: "
                           "an analogue meter, or a "
                           "digital one with a bar, at the jack on its lowest DC volts; pull the steel away quickly. Which way "
                           "is + depends on the "
                           "probes: coils with the same sign must kick the same way."))
               + "</p><table><thead><tr><th>" + say ("switches") + "</th>";
        for (const auto& coil : rows.front().coils)
            out += "<th>" + esc (coilName (coil)) + "</th>";
        out += "</tr></thead><tbody>\n";
        for (const auto& row : rows)
        {
            out += "<tr><td><span class=\"ck\"></span>" + esc (leversIn (row.levers)) + "</td>";
            for (const auto& coil : row.coils)
            {
                const auto tap = coil.tap == CoilStrike::Tap::loud   ? say ("loud")
                                 : coil.tap == CoilStrike::Tap::weak ? say ("weak")
                                                                     : say ("none");
                out +=
                    "<td>"
                    + esc (coil.kick == 0 ? tap : say ("{tap}, {sign}", tap, std::string (coil.kick > 0 ? "+" : "\xe2\x88\x92")))
                    + "</td>";
            }
            out += "</tr>\n";
        }
        out += "</tbody></table>\n";
    }

    void lastChecks()
    {
        out += "<h2>" + say ("Before the guitar goes out") + "</h2>\n";
        for (const auto& line :
             { say ("Every joint of the list is bright, no strand stands off, nothing can touch the shielding"),
               say ("Ohms and taps pass in every row above, with the plate on as well"),
               say ("Touch test: plugged in and turned up, hum falls or stays when strings, knobs and plate are touched; it "
                    "never rises"),
               say ("Hum check: stand where it hums most, turn slowly, each switch position; louder than before in one position "
                    "only is "
                    "what a split or a single coil does, in all of them is a ground"),
               say ("Each knob and switch does what the page says, without crackling; strings clear of everything; knobs tight"),
               say ("Old parts in a bag with the guitar's name on it") })
            out += "<div class=\"row\"><span class=\"ck\"></span><span>" + esc (line) + "</span></div>\n";
        out += "<div class=\"sign\"><span>" + say ("Minutes") + " <span class=\"line\"></span></span><span>" + say ("Price")
               + " <span class=\"line\"></span></span><span>" + say ("Agreed, and holes to be drilled if any")
               + " <span class=\"line wide\"></span></span><span>" + say ("Date")
               + " <span class=\"line\"></span></span></div>\n";
    }
};
}

std::string workOrderHtml (const Job& job, const Option& option, const std::string& date)
{
    return Order (job, option, date).html();
}
}
