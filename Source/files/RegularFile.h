#pragma once

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>

namespace coldiron
{
/** A file opened to be read, and surely a file: opening a pipe, a terminal or a tape would wait for ever or wind it on. */
class RegularFile
{
public:
    /** @param what  what it should be, to people: "a take", "a job" */
    RegularFile (const std::filesystem::path&, const std::string& what);
    ~RegularFile();
    RegularFile (const RegularFile&) = delete;
    RegularFile& operator= (const RegularFile&) = delete;

    /** Why it cannot be read, without its name: "this is a pipe, not a take". Empty: it is open. */
    const std::string& why() const { return reason; }
    bool isMissing() const { return missing; } ///< there is nothing of that name

    std::uint64_t size() const { return bytes; } ///< when it was opened

    /** Bytes from a place on. @returns how many were read; fewer at the end or after a fault */
    size_t read (std::uint64_t at, void* to, size_t count) const;

    /** All of it; nothing where it cannot be read or is larger than `most`. */
    std::optional<std::string> text (std::uint64_t most) const;

private:
    int descriptor = -1;
    std::uint64_t bytes = 0;
    std::string reason;
    bool missing = false;
};

/** What tells one state of a file from another without reading it. */
struct FileStamp
{
    std::uint64_t device = 0, node = 0, bytes = 0;
    std::int64_t changedNs = 0; ///< of its contents, since 1970

    bool operator== (const FileStamp&) const = default;

    /** Whether its clock has ticked since the last change: another change now would show. */
    bool isSettled() const;
};

/** Of a regular file, through links; nothing for all else. */
std::optional<FileStamp> stampOf (const std::filesystem::path&);

/** A file named relative to a folder; an empty folder is the one the program runs in. Absolute, without "..". */
std::filesystem::path inFolder (const std::filesystem::path& folder, const std::string& name);

/** Whether something is there at all; a name too long or a folder that may not be searched is no exception. */
bool isThere (const std::filesystem::path&);
bool isFolder (const std::filesystem::path&);

/** Why a folder's files cannot be listed, without its name: "there is no such folder", "you may not read this folder".
    Empty: they can. */
std::string whyNoFolder (const std::filesystem::path&);
}
