// Text that is safe to print. Control characters C0 and C1: ECMA-48; bidirectional formatting characters: Unicode
// Standard Annex 9; UTF-8: RFC 3629.

#include "support/JobFixture.h"

#include "files/Printable.h"

namespace printableTest
{
using namespace coldiron;

TEST_CASE ("What would steer a terminal is written out, and every other character stays")
{
    CHECK (printable ("plain") == "plain");
    CHECK (printable ("Grüße, 日本, 🎸, שלום") == "Grüße, 日本, 🎸, שלום");
    CHECK (printable ("\x1b[31mred") == "\\u001b[31mred");
    CHECK (printable ("two\nlines\r\t") == "two\\u000alines\\u000d\\u0009");
    CHECK (printableLines ("two\n\tlines\r\x1b") == "two\n\tlines\\u000d\\u001b");
    CHECK (printable ("del\x7f") == "del\\u007f");
    CHECK (printable ("csi\xc2\x9b"
                      "1m")
           == "csi\\u009b1m"); // C1 as a character
    CHECK (printable ("a\xe2\x80\xae"
                      "b\xe2\x81\xa6")
           == "a\\u202eb\\u2066");                     // override, isolate
    CHECK (printable ("a\xe2\x80\xa8") == "a\\u2028"); // line separator
    CHECK (printable (std::string ("a\0b", 3)) == "a\\u0000b");
}

TEST_CASE ("Bytes that are no UTF-8 are written out")
{
    CHECK (printable ("\x9b"
                      "1m")
           == "\\u009b1m");                             // C1 as a byte
    CHECK (printable ("a\xc3") == "a\\u00c3");          // cut short
    CHECK (printable ("\xc0\x9b") == "\\u00c0\\u009b"); // an escape coded too long
    CHECK (printable ("\xe0\x80\x9b") == "\\u00e0\\u0080\\u009b");
    CHECK (printable ("\xed\xa0\x80") == "\\u00ed\\u00a0\\u0080");            // half of a surrogate pair
    CHECK (printable ("\xf4\x90\x80\x80") == "\\u00f4\\u0090\\u0080\\u0080"); // above the last character
}

TEST_CASE ("Text is shortened between characters")
{
    CHECK (shortened ("abc", 3) == "abc");
    CHECK (shortened ("abcd", 3) == "abc");
    CHECK (shortened ("ab\xc3\xbc", 3) == "ab");
    CHECK (shortened ("\xf0\x9f\x8e\xb8", 3).empty());
}

TEST_CASE ("A fault is one line, whatever a file's name and its texts hold")
{
    const auto diagnostics = support::faultsOf ("{ \"coldiron\": \"job 1\", \"guitar\": \"\\u001b[2J\\u202e\\n\" }");
    REQUIRE (diagnostics.size() == 1);
    for (const char steering : { '\x1b', '\n' })
        CHECK (diagnostics[0].text().find (steering) == std::string::npos);
    CHECK (Diagnostic { "a\nb.json", 3, "c" }.text() == "a\\u000ab.json:3: c");
}
}
