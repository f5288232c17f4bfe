#include "cli/SafeOutput.h"

#include "files/Printable.h"

namespace coldiron::cli
{
namespace
{
/** Where the last character of a text begins, if it may go on after the text's end; else the text's end. */
size_t wholeCharacters (const std::string& text)
{
    for (size_t back = 1; back <= 3 && back <= text.size(); ++back)
    {
        const auto byte = static_cast<unsigned char> (text[text.size() - back]);
        if (byte >= 0xc2)
            return back < (byte < 0xe0 ? 2u : byte < 0xf0 ? 3u : 4u) ? text.size() - back : text.size();
        if (byte < 0x80)
            break;
    }
    return text.size();
}
}

SafeOutput::SafeOutput (std::ostream& to) : stream (to), inner (to.rdbuf (this)) {}

SafeOutput::~SafeOutput()
{
    SafeOutput::sync();
    stream.rdbuf (inner);
}

bool SafeOutput::pass (bool all)
{
    const auto end = all ? begun.size() : wholeCharacters (begun);
    const auto text = printableLines (begun.substr (0, end));
    begun.erase (0, end);
    return inner->sputn (text.data(), static_cast<std::streamsize> (text.size())) == static_cast<std::streamsize> (text.size());
}

SafeOutput::int_type SafeOutput::overflow (int_type c)
{
    if (! traits_type::eq_int_type (c, traits_type::eof()))
        begun += traits_type::to_char_type (c);
    return pass (false) ? traits_type::not_eof (c) : traits_type::eof();
}

std::streamsize SafeOutput::xsputn (const char* bytes, std::streamsize count)
{
    begun.append (bytes, static_cast<size_t> (count));
    return pass (false) ? count : 0;
}

int SafeOutput::sync() { return pass (true) && inner->pubsync() == 0 ? 0 : -1; }
}
