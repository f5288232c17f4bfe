// The way out: values as text.

#include "files/Json.h"
#include "files/JsonCounts.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <atomic>
#include <charconv>

namespace coldiron
{
namespace
{
/** The shortest digits that are the same number again. */
void appendNumber (std::string& to, double value)
{
    char buffer[40];
    to.append (buffer, std::to_chars (buffer, buffer + sizeof buffer, value).ptr);
}

/** Writes values as text, one behind the other. */
class JsonWriter
{
public:
    enum class Numbers { shortest, asWritten };

    JsonWriter (Numbers how, int blanks) : numbers (how), indent (blanks) {}

    std::string result;

    void write (const Json& value, size_t depth = 0)
    {
        switch (value.kind)
        {
        case Json::Kind::null: result += "null"; break;
        case Json::Kind::boolean: result += value.boolean ? "true" : "false"; break;
        case Json::Kind::number: write (value.number, value.isWhole); break;
        case Json::Kind::text: write (value.text); break;
        case Json::Kind::list:
            result += '[';
            for (size_t i = 0; i < value.items.size(); ++i)
            {
                beginEntry (i, depth);
                write (value.items[i], depth + 1);
            }
            close (']', value.items.empty(), depth);
            break;
        case Json::Kind::object:
            result += '{';
            for (size_t i = 0; i < value.members.size(); ++i)
            {
                beginEntry (i, depth);
                write (value.members[i].first);
                result += indent > 0 ? ": " : ":";
                write (value.members[i].second, depth + 1);
            }
            close ('}', value.members.empty(), depth);
            break;
        }
    }

private:
    Numbers numbers;
    int indent;

    void newLine (size_t depth)
    {
        if (indent > 0)
            result.append (1, '\n').append (depth * static_cast<size_t> (indent), ' ');
    }

    void beginEntry (size_t place, size_t depth)
    {
        if (place > 0)
            result += ',';
        newLine (depth + 1);
    }

    void close (char bracket, bool isEmpty, size_t depth)
    {
        if (! isEmpty)
            newLine (depth);
        result += bracket;
    }

    void write (double value, bool isWhole)
    {
        char buffer[400]; // every digit of a whole number
        if (numbers == Numbers::shortest)
            appendNumber (result, value);
        else if (isWhole)
            result.append (buffer, std::to_chars (buffer, buffer + sizeof buffer, value, std::chars_format::fixed).ptr);
        else
            result += nlohmann::json (value).dump();
    }

    void write (const std::string& text)
    {
        const bool isPlain =
            std::all_of (text.begin(), text.end(), [] (char c) { return c >= ' ' && c < 0x7f && c != '"' && c != '\\'; });
        if (isPlain)
            result.append (1, '"').append (text).append (1, '"');
        else
            result += nlohmann::json (text).dump (-1, ' ', false, nlohmann::json::error_handler_t::replace);
    }
};

std::atomic<uint64_t> writtenTexts { 0 };

std::string writtenAs (const Json& value, JsonWriter::Numbers numbers, int indent)
{
    ++writtenTexts;
    JsonWriter writer (numbers, indent);
    writer.write (value);
    return std::move (writer.result);
}
}

std::string Json::dump() const { return writtenAs (*this, JsonWriter::Numbers::shortest, 0); }

std::string Json::write (int indent) const { return writtenAs (*this, JsonWriter::Numbers::asWritten, indent); }

std::optional<std::string> Json::plain() const
{
    if (isText())
        return text;
    if (! isNumber())
        return std::nullopt;
    std::string digits;
    appendNumber (digits, number);
    return digits;
}

uint64_t textsWritten() { return writtenTexts.load(); }
}
