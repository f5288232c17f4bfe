#pragma once

namespace CLI
{
class App;
}

namespace coldiron::cli
{
/** Every option of every command that takes a number refuses one that is not finite (nan, inf, 1e999): a check for its
    range alone would let nan pass. Called once, when all commands are there. */
void refuseWhatIsNoNumber (CLI::App&);
}
