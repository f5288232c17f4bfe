#include "Attempt.h"

#include <algorithm>
#include <csignal>
#include <cstdlib>
#include <fstream>
#include <sstream>

#include <fcntl.h>
#include <grp.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

namespace coldiron::support
{
namespace fs = std::filesystem;

namespace
{
constexpr unsigned hangSeconds = 120; // of the clock: no measure, a guard against what would never end
constexpr rlim_t hangCpuSeconds = 20;
constexpr unsigned nobody = 65534;

std::string contents (const fs::path& path)
{
    std::ostringstream text;
    text << std::ifstream (path, std::ios::binary).rdbuf();
    return text.str();
}

void redirect (const fs::path& to, int descriptor)
{
    dup2 (open (to.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_NOCTTY, 0600), descriptor);
}

void becomeNobody()
{
    if (geteuid() == 0 && (setgroups (0, nullptr) != 0 || setgid (nobody) != 0 || setuid (nobody) != 0))
        _exit (126);
}
}

Running::Running (const std::vector<std::string>& arguments, const Circumstances& around)
{
    static int number = 0;
    folder = fs::temp_directory_path() / ("coldiron-said-" + std::to_string (getpid()) + "-" + std::to_string (++number));
    fs::create_directories (folder);
    child = fork();
    if (child != 0)
        return;
    if (around.descriptor >= 0)
        dup2 (around.descriptor, STDOUT_FILENO);
    else
        redirect (around.standardOutput.empty() ? folder / "out" : fs::path (around.standardOutput), STDOUT_FILENO);
    redirect (folder / "err", STDERR_FILENO);
    for (const auto& [name, value] : around.environment)
        setenv (name.c_str(), value.c_str(), 1);
    const rlimit cpu { hangCpuSeconds, hangCpuSeconds };
    setrlimit (RLIMIT_CPU, &cpu);
    if (around.mostFileBytes >= 0)
    {
        const rlimit size { static_cast<rlim_t> (around.mostFileBytes), static_cast<rlim_t> (around.mostFileBytes) };
        setrlimit (RLIMIT_FSIZE, &size);
    }
    if (around.asNobody)
        becomeNobody();
    for (const int ending : { SIGINT, SIGTERM, SIGHUP, SIGPIPE }) // whatever the tests were started under
        std::signal (ending, SIG_DFL);
    alarm (hangSeconds);
    std::vector<char*> argv { const_cast<char*> (COLDIRON_COMMAND) };
    for (const auto& argument : arguments)
        argv.push_back (const_cast<char*> (argument.c_str()));
    argv.push_back (nullptr);
    execv (COLDIRON_COMMAND, argv.data());
    _exit (127);
}

Attempt Running::finish()
{
    int status = 0;
    rusage used {};
    wait4 (child, &status, 0, &used);
    Attempt done;
    done.exitCode = WIFEXITED (status) ? WEXITSTATUS (status) : -1;
    done.signal = WIFSIGNALED (status) ? WTERMSIG (status) : 0;
    done.out = contents (folder / "out");
    done.err = contents (folder / "err");
    const auto seconds = [] (const timeval& t)
    { return static_cast<double> (t.tv_sec) + 1e-6 * static_cast<double> (t.tv_usec); };
    done.cpuSeconds = seconds (used.ru_utime) + seconds (used.ru_stime);
    done.megabytes = static_cast<double> (used.ru_maxrss) / 1024.0;
    fs::remove_all (folder);
    return done;
}

bool Attempt::hung() const { return signal == SIGALRM || signal == SIGXCPU || signal == SIGKILL; }

std::vector<std::string> Attempt::diagnostics() const
{
    std::vector<std::string> lines;
    std::istringstream stream (err);
    for (std::string line; std::getline (stream, line);)
        if (line.rfind ("note: ", 0) != 0)
            lines.push_back (line);
    return lines;
}

Attempt attempt (const std::vector<std::string>& arguments, const Circumstances& around)
{
    return Running (arguments, around).finish();
}

std::vector<std::string> snapshot (const fs::path& folder)
{
    std::vector<std::string> all;
    std::error_code ignored;
    for (const auto& entry : fs::recursive_directory_iterator (folder, ignored))
    {
        struct stat status
        {
        };
        lstat (entry.path().c_str(), &status);
        const bool holds = S_ISREG (status.st_mode);
        all.push_back (entry.path().string() + " " + std::to_string (status.st_mode) + " " + std::to_string (status.st_ino) + " "
                       + (holds ? std::to_string (status.st_size) + " " + std::to_string (status.st_mtim.tv_sec) + "."
                                      + std::to_string (status.st_mtim.tv_nsec)
                                : ""));
    }
    std::sort (all.begin(), all.end());
    return all;
}

bool isPlain (const std::string& text)
{
    for (size_t i = 0; i < text.size(); ++i)
    {
        const auto first = static_cast<unsigned char> (text[i]);
        if ((first < 0x20 && first != '\n') || first == 0x7f)
            return false;
        if (first < 0x80)
            continue;
        const size_t more = first >= 0xf0 ? 3 : first >= 0xe0 ? 2 : 1;
        if (first < 0xc2 || first > 0xf4 || i + more >= text.size()
            || (first == 0xc2 && static_cast<unsigned char> (text[i + 1]) < 0xa0))
            return false;
        for (size_t k = 0; k < more; ++k)
            if ((static_cast<unsigned char> (text[++i]) & 0xc0) != 0x80)
                return false;
    }
    return true;
}

std::string whyNobodyCannotRun()
{
    if (geteuid() != 0)
        return "";
    const auto version = attempt ({ "presets", "tapers" }, { .asNobody = true });
    return version.exitCode == 0 && ! version.out.empty()
               ? ""
               : "run by root, and the command cannot be reached by others where it lies";
}
}
