#pragma once

namespace coldiron::cli
{
/** Makes the process ready for what may befall it: what ends it by a signal (interrupt, hang-up, terminate) first removes
    the files being written, and the exit status stays that of the signal; a reader that goes away and a file that may not
    grow are faults of writing, told by the write itself. A signal that whoever started us wants ignored stays ignored.
    Standard streams that were closed are made to refuse, so that no file takes their number and their text. */
void prepareProcess();

/** To be called last: whether all that was printed has arrived.
    @param code  what the command came to
    @returns it, or exitBadJob and a line on standard error. Where the reader of a pipe has gone (`| head`) the process
             ends by SIGPIPE as others do, its files being whole by then. */
int afterPrinting (int code);
}
