#pragma once

#include <ostream>
#include <streambuf>
#include <string>

namespace coldiron::cli
{
/** While it lives, what is written to a stream is made safe to show (files/Printable): names out of a file must not steer
    the terminal of who reads them. */
class SafeOutput : private std::streambuf
{
public:
    explicit SafeOutput (std::ostream&);
    ~SafeOutput() override;
    SafeOutput (const SafeOutput&) = delete;
    SafeOutput& operator= (const SafeOutput&) = delete;

private:
    std::ostream& stream;
    std::streambuf* inner;
    std::string begun; ///< the first bytes of a character whose last ones are to come

    bool pass (bool all);
    int_type overflow (int_type) override;
    std::streamsize xsputn (const char*, std::streamsize) override;
    int sync() override;
};
}
