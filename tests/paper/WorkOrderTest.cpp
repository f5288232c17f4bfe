#include "paper/WorkOrder.h"
#include "analysis/BenchPlan.h"
#include "support/JobFixture.h"

#include <catch2/catch.hpp>

namespace workOrderTest
{
using namespace coldiron;
using namespace coldiron::support;

size_t countOf (const std::string& text, const std::string& what)
{
    size_t count = 0;
    for (size_t at = text.find (what); at != std::string::npos; at = text.find (what, at + what.size()))
        ++count;
    return count;
}

Job jobOf (const std::string& text)
{
    Diagnostics diagnostics;
    auto job = readJobText (text, "/", shipped(), diagnostics);
    for (const auto& one : diagnostics)
        UNSCOPED_INFO (one.text());
    REQUIRE (job.has_value());
    return std::move (*job);
}

const std::string job = R"({ "coldiron": "job 1", "title": "A bench", "wish": "quiet, <b>bright</b> & mine",
  "guitar": "two-humbuckers-four-knobs",
  "options": { "A": { "name": "Bridge in parallel",
     "rewires": [ { "use": "series-parallel", "pickup": "bridge", "pot": "bridge-volume" } ] } } })";

TEST_CASE ("a work order has every step of the plan, its parts and its readings, and no markup of the client's", "[paper]")
{
    const auto read = jobOf (job);
    const auto& option = *read.find ("A");
    const auto plan = planBench (option.guitar.harness, option.harness);
    const auto html = workOrderHtml (read, option, "2026-11-26");
    CHECK (countOf (html, "class=\"no\"") == static_cast<size_t> (plan.toMake));
    CHECK (countOf (html, "<svg xmlns") == 2); // before and after
    CHECK (html.find ("quiet, &lt;b&gt;bright&lt;/b&gt; &amp; mine") != std::string::npos);
    CHECK (html.find ("<b>bright") == std::string::npos);
    CHECK (html.find ("default-src 'none'") != std::string::npos);
    CHECK (html.find ("http://") == html.find ("http://www.w3.org/2000/svg")); // nothing is fetched
    CHECK (html.find ("<script") == std::string::npos);
    CHECK (html.find ("2026-11-26") != std::string::npos);
    CHECK (html.find ("500KM") != std::string::npos); // the push-pull's pot, IEC 60062
    CHECK (html.find ("down: a rings to a down and b rings to b down, nothing else") != std::string::npos);
    CHECK (html.find ("Local codes and licensed practice govern") != std::string::npos);
    CHECK (html.find ("\xe2\x80\xa6") == std::string::npos); // no step ends in an ellipsis
}

TEST_CASE ("an option that changes nothing has no parts and no joints", "[paper]")
{
    auto text = job;
    text.replace (text.find ("{ \"use\""), text.find ("} ] }") - text.find ("{ \"use\"") + 1, "");
    const auto read = jobOf (text);
    const auto html = workOrderHtml (read, *read.find ("A"));
    CHECK (countOf (html, "class=\"no\"") == 0);
    CHECK (html.find ("0 parts to fit, 0 solder points to open, 0 solder points to make") != std::string::npos);
}
}
