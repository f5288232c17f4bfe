#include "support/JobFixture.h"

#include "job/Readings.h"

namespace readingsTest
{
using namespace coldiron;
using namespace coldiron::support;

namespace
{
const char* const whole = "# a humbucker on the bench\n"
                          "pickup,humbucker-moderate\n"
                          "name,Walnut bridge\n"
                          "temperature,22\n"
                          "accuracy,lcr,0.5\n"
                          "dcr, 8.3k\r\n"
                          "lcr,series,120,4.6\n"
                          "lcr,parallel,1k,5.01,,47p\n"
                          "impedance,1k,30.5k,72.5\n"
                          "resonance,4.1k,220p  # with a capacitor\n"
                          "load,1M,470p,rising,north\n"
                          "response,1k,-3\n";

std::optional<ReadingsFile> read (const std::string& text, Diagnostics& diagnostics)
{
    return readReadingsText (text, "bench.csv", shipped(), diagnostics);
}
}

TEST_CASE ("Bench readings are read as written", "[readings]")
{
    Diagnostics diagnostics;
    const auto file = read (whole, diagnostics);
    for (const auto& fault : diagnostics)
        UNSCOPED_INFO (fault.text());
    REQUIRE (file);
    CHECK (file->preset == "humbucker-moderate");
    CHECK (file->generic.coils.size() == 2);
    CHECK (file->name == "Walnut bridge");
    CHECK (file->readings.celsius == 22.0);
    CHECK (file->readings.accuracy.inductance == Approx (0.005));
    REQUIRE (file->readings.readings.size() == 6);
    const auto& all = file->readings.readings;
    CHECK (all[0].as<OhmsReading>()->ohms == 8300.0);
    CHECK (all[0].line == 6);
    CHECK_FALSE (all[1].as<MeterReading>()->parallel);
    CHECK (all[2].as<MeterReading>()->parallel);
    CHECK (all[2].as<MeterReading>()->henries == 5.01);
    CHECK_FALSE (all[2].as<MeterReading>()->ohms.has_value());
    CHECK (all[2].as<MeterReading>()->addedFarads == 47e-12);
    CHECK (all[3].as<ImpedanceReading>()->degrees == 72.5);
    CHECK (all[4].as<ResonanceReading>()->hz == 4100.0);
    CHECK (all[5].as<ResponseReading>()->db == -3.0);
    REQUIRE (file->readings.sweeps.size() == 1);
    CHECK (file->readings.sweeps[0].loadFarads == 470e-12);
    CHECK (file->readings.sweeps[0].rising);
    CHECK (file->readings.sweeps[0].coil == "north");
}

TEST_CASE ("Every wrong row is named by its line, all at once", "[readings]")
{
    struct Wrong
    {
        const char* row;
        std::vector<std::string> words;
    };
    const Wrong wrong[] = { { "dcr,-8k", { "resistance", "1 to 10M ohm" } },
                            { "dcr,8.1kohm", { "8.1kohm", "no unit" } },
                            { "dcr", { "no resistance", "dcr,8.1k" } },
                            { "dcr,nan", { "nan" } },
                            { "lcr,serial,120,4.3", { "serial", "series, parallel" } },
                            { "lcr,series,0,4.3", { "frequency" } },
                            { "lcr,series,10k,-2.2", { "above resonance", "impedance row" } },
                            { "impedance,1k,30k,100", { "phase", "-90 to 90" } },
                            { "impedance,1k,30k,70,10p,5", { "too many" } },
                            { "resonance,4k,-220p", { "added capacitor" } },
                            { "response,1k,-3", { "load" } },
                            { "load,1M,470p,loud", { "loud", "flat, rising" } },
                            { "temperature,200", { "temperature" } },
                            { "accuracy,ohms,1", { "ohms", "dcr" } },
                            { "pickup,hot", { "line 1" } },
                            { "dcrr,8k", { "dcrr", "did you mean \"dcr\"" } } };
    std::string text = "pickup,humbucker-moderate\n";
    for (const auto& row : wrong)
        text += std::string (row.row) + "\n";
    Diagnostics diagnostics;
    CHECK_FALSE (read (text, diagnostics));
    int line = 1;
    for (const auto& row : wrong)
    {
        INFO (row.row);
        CHECK (has (diagnostics, ++line, row.words));
    }
    CHECK (diagnostics.front().text().rfind ("bench.csv:2:", 0) == 0);
}

TEST_CASE ("A file without a pickup, readings or sense is refused", "[readings]")
{
    for (const std::string& text : { std::string(), std::string ("dcr,8k\n"), std::string ("pickup,humbucker-moderate\n"),
                                     std::string ("pickup,no-such\ndcr,8k\n"), std::string ("\xff\xfe\0\x01,,,\n\n,", 9),
                                     std::string (",,,,\n"), std::string (100000, ',') })
    {
        Diagnostics diagnostics;
        CHECK_FALSE (read (text, diagnostics));
        CHECK_FALSE (diagnostics.empty());
    }
    Diagnostics diagnostics;
    CHECK_FALSE (readReadings ("/no/such/readings.csv", shipped(), diagnostics));
    CHECK (diagnostics.size() == 1);
}
}
