#pragma once

#include <cstddef>
#include <initializer_list>
#include <string>
#include <vector>

namespace coldiron
{
/** One fault in a file: what a person needs to mend it. */
struct Diagnostic
{
    std::string file;
    int line = 0;        ///< from 1; 0: the file as a whole
    std::string message; ///< what was found, what was expected, what to do

    std::string text() const; ///< "verse.json:12: ...", in one line that is safe to print
};

/** The faults of one reading, for people: each once, the first fifty, and then one line that says there are more.

    A preset that is broken and used twice is listed once and raised twice. So whoever asks whether what was just read is
    sound compares raised() before and after, never size(). */
class Diagnostics
{
public:
    static constexpr size_t most = 50;

    Diagnostics() = default;
    Diagnostics (std::initializer_list<Diagnostic>);

    void push_back (Diagnostic);
    void again() { ++count; }                          ///< what is at fault was met once more, and is listed already
    size_t raised() const { return count; }            ///< every fault met, those not listed too
    bool isFull() const { return list.size() > most; } ///< nothing more will be listed: reading on serves nobody
    void clear();

    bool empty() const { return count == 0; }
    size_t size() const { return list.size(); }
    std::vector<Diagnostic>::const_iterator begin() const { return list.begin(); }
    std::vector<Diagnostic>::const_iterator end() const { return list.end(); }
    const Diagnostic& operator[] (size_t index) const { return list[index]; }
    const Diagnostic& front() const { return list.front(); }
    const Diagnostic& back() const { return list.back(); }

private:
    std::vector<Diagnostic> list;
    size_t count = 0;
};
}
