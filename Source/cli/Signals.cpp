#include "cli/Signals.h"

#include "cli/Command.h"
#include "files/Temporaries.h"

#include <fcntl.h>
#include <poll.h>
#include <unistd.h>

#include <csignal>
#include <cstdio>
#include <iostream>

namespace coldiron::cli
{
namespace
{
/** Async-signal-safe. The handler is gone by now (SA_RESETHAND), so raising the signal again ends the process. */
void endBy (int signal)
{
    removeAllTemporaries();
    raise (signal);
}

void handle (int signal)
{
    struct sigaction before
    {
    };
    if (sigaction (signal, nullptr, &before) == 0 && before.sa_handler == SIG_IGN)
        return;
    struct sigaction action
    {
    };
    action.sa_handler = endBy;
    action.sa_flags = static_cast<int> (SA_RESETHAND);
    sigfillset (&action.sa_mask);
    sigaction (signal, &action, nullptr);
}

bool readerIsGone()
{
    pollfd out { STDOUT_FILENO, POLLOUT, 0 };
    return poll (&out, 1, 0) == 1 && (out.revents & POLLERR) != 0;
}
}

void prepareProcess()
{
    for (const int stream : { STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO })
        if (fcntl (stream, F_GETFD) < 0)
            (void)! open ("/dev/null", stream == STDIN_FILENO ? O_WRONLY : O_RDONLY); // the lowest free number, and of no use
    for (const int ending : { SIGINT, SIGTERM, SIGHUP, SIGQUIT })
        handle (ending);
    for (const int fault : { SIGPIPE, SIGXFSZ })
        std::signal (fault, SIG_IGN);
}

int afterPrinting (int code)
{
    std::cout.flush();
    if (std::cout && std::fflush (stdout) == 0 && std::ferror (stdout) == 0)
        return code;
    if (readerIsGone())
    {
        std::signal (SIGPIPE, SIG_DFL);
        raise (SIGPIPE);
    }
    if (code == exitOk)
        std::cerr << "standard output could not be written whole; is the disk full?\n";
    return code == exitOk ? exitBadJob : code;
}
}
