#pragma once

#include <algorithm>
#include <cstdint>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

namespace coldiron::support
{
/** One note of a Standard MIDI File: key number, start and length in ticks (120 a beat), velocity 1 to 127. */
struct MidiNote
{
    int key, start, length, velocity;
};

/** Writes a MIDI file of format 0 for one channel: header, tempo, program, notes. */
inline void writeMidi (const std::filesystem::path& file, const std::vector<MidiNote>& notes, int program,
                       int microsecondsPerBeat)
{
    struct Event
    {
        int tick;
        std::vector<uint8_t> bytes;
    };
    std::vector<Event> events;
    const auto u8 = [] (int v) { return static_cast<uint8_t> (v); };
    events.push_back (
        { 0, { 0xff, 0x51, 3, u8 (microsecondsPerBeat >> 16), u8 (microsecondsPerBeat >> 8), u8 (microsecondsPerBeat) } });
    events.push_back ({ 0, { 0xc0, u8 (program) } });
    for (const auto& n : notes)
    {
        events.push_back ({ n.start, { 0x90, u8 (n.key), u8 (n.velocity) } });
        events.push_back ({ n.start + n.length, { 0x80, u8 (n.key), 0 } });
    }
    std::stable_sort (events.begin(), events.end(), [] (const Event& a, const Event& b) { return a.tick < b.tick; });
    events.push_back ({ events.back().tick + 240, { 0xff, 0x2f, 0 } });

    std::vector<uint8_t> track;
    int now = 0;
    for (const auto& e : events)
    {
        const int delta = e.tick - now; // below 2^14 here: at most two bytes
        if (delta >= 128)
            track.push_back (u8 (0x80 | (delta >> 7)));
        track.push_back (u8 (delta & 0x7f));
        track.insert (track.end(), e.bytes.begin(), e.bytes.end());
        now = e.tick;
    }
    const auto size = static_cast<int> (track.size());
    std::vector<uint8_t> bytes { 'M',
                                 'T',
                                 'h',
                                 'd',
                                 0,
                                 0,
                                 0,
                                 6,
                                 0,
                                 0,
                                 0,
                                 1,
                                 0,
                                 120,
                                 'M',
                                 'T',
                                 'r',
                                 'k',
                                 u8 (size >> 24),
                                 u8 (size >> 16),
                                 u8 (size >> 8),
                                 u8 (size) };
    bytes.insert (bytes.end(), track.begin(), track.end());
    std::ofstream (file, std::ios::binary)
        .write (reinterpret_cast<const char*> (bytes.data()), static_cast<std::streamsize> (bytes.size()));
}

/** A riff of our own: low strings, a chord, a line up high; about nine seconds. */
inline std::vector<MidiNote> riff()
{
    std::vector<MidiNote> notes;
    int tick = 0;
    for (int key : { 40, 43, 45, 47, 45, 43, 40, 38 })
    {
        notes.push_back ({ key, tick, 58, 100 });
        tick += 60;
    }
    for (int chord : { 0, 5, 3 })
    {
        for (int key : { 40, 47, 52, 56, 59, 64 })
            notes.push_back ({ key + chord, tick, 220, 92 });
        tick += 240;
    }
    for (int key : { 71, 74, 76, 79, 81, 79, 76, 74, 71, 69, 71, 76 })
    {
        notes.push_back ({ key, tick, 66, 105 });
        tick += 60;
    }
    notes.push_back ({ 40, tick, 300, 110 });
    notes.push_back ({ 47, tick, 300, 100 });
    notes.push_back ({ 52, tick, 300, 100 });
    return notes;
}
}
