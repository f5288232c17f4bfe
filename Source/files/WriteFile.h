#pragma once

#include <cstddef>
#include <filesystem>
#include <stdexcept>
#include <string>

namespace coldiron
{
/** A file could not be written: one line for people that begins with its name. */
struct WriteError : std::runtime_error
{
    using std::runtime_error::runtime_error;
};

/** One file being written whole: until finish() the target is as it was, and after a fault or an early end it still is.

    A regular file, or one that is not there yet, is written beside its place, brought to the disk, and renamed; the old
    file's mode is kept, and a symbolic link stays a link to the file it names. What is no regular file (a device, a pipe,
    an open descriptor like /dev/stdout) is written straight into. A file that may not be written is refused, and so is a
    pipe that nobody reads within a second. */
class WholeFile
{
public:
    explicit WholeFile (const std::filesystem::path& target); ///< @throws WriteError
    ~WholeFile();                                             ///< removes what was not finished
    WholeFile (const WholeFile&) = delete;
    WholeFile& operator= (const WholeFile&) = delete;

    int descriptor() const { return file; } ///< open for writing; to be left open
    bool canSeek() const;                   ///< false for pipes and the like

    void write (const void* bytes, std::size_t count); ///< @throws WriteError
    void finish();                                     ///< in place and on the disk. @throws WriteError
    void discard();                                    ///< as if it had never been begun

private:
    std::filesystem::path asked, place, beside; ///< as people know it; where it is in truth; empty: straight through
    int file = -1;

    void openStraight();
    void openBeside (bool isThere, unsigned oldMode, unsigned oldOwner, unsigned oldGroup);
    [[noreturn]] void fail (const std::string& why, int code);
};

/** All at once. @throws WriteError */
void writeFile (const std::filesystem::path& target, const std::string& content);

/** Whether writing there takes the place of a regular file. */
bool wouldReplace (const std::filesystem::path& target);

/** The file that a path names behind its symbolic links, also where it is not there yet.
    @throws std::system_error  where links lead in a circle or the folder cannot be searched */
std::filesystem::path behindLinks (const std::filesystem::path&);
}
