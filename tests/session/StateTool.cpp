// Prints the plugin's state with a job in it, as a host would keep it. For trying the plugin in a host that has no
// window: scripts/try-in-daw puts it into a session.
// usage: plugin_state JOB.json
#include "session/Session.h"

#include <iostream>

int main (int argc, char** argv)
{
    using namespace coldiron;
    if (argc != 2)
    {
        std::cerr << "usage: plugin_state JOB.json\n";
        return 2;
    }
    Session session;
    session.audio.prepare (48000.0);
    if (! session.jobEditor.open (argv[1]))
    {
        for (const Diagnostic& fault : session.diagnostics())
            std::cerr << fault.text() << "\n";
        return 1;
    }
    std::cout << session.state();
}
