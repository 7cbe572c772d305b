#pragma once
// Ctrl-C: the program ends at once, with a line and the code that shells expect, and leaves no half of a file.

namespace wellproof {

/// From here on SIGINT and SIGTERM end the program with 130 and 143.
void end_cleanly_when_interrupted();

}  // namespace wellproof
