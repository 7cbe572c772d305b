#pragma once
// Asking on: the leading causes, the check that tells most for its time, its answer, and the causes anew.
#include <functional>
#include <string>

#include "door/door.h"

namespace wellproof {

/// Asks at the terminal, or reads answers line by line from what is no terminal, until q, the end of input or nothing
/// left to ask. Gives the exit code; the last ranking stands on the screen, or as JSON, and in the report asked for.
int asked_on(Request const& request, Door::Progress const& progress, std::function<void()> const& done);

/// The clock's local time: "2026-08-14 18:30".
std::string clock_text();

}  // namespace wellproof
