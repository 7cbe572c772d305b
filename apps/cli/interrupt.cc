#include "cli/interrupt.h"

#include <unistd.h>

#include <csignal>
#include <string_view>

#include "cli/files.h"

namespace wellproof {
namespace {

// Only what a signal may call.
void end(int signal) {
  remove_half_written();
  constexpr std::string_view on_terminal = "\r\x1b[2K";
  constexpr std::string_view says = "wellproof: interrupted; what it was working on is not finished\n";
  if (::isatty(STDERR_FILENO) != 0) {
    [[maybe_unused]] auto const wiped = ::write(STDERR_FILENO, on_terminal.data(), on_terminal.size());
  }
  [[maybe_unused]] auto const said = ::write(STDERR_FILENO, says.data(), says.size());
  ::_exit(128 + signal);
}

}  // namespace

void end_cleanly_when_interrupted() {
  struct sigaction action {};
  action.sa_handler = end;
  ::sigemptyset(&action.sa_mask);
  ::sigaddset(&action.sa_mask, SIGINT);
  ::sigaddset(&action.sa_mask, SIGTERM);
  ::sigaction(SIGINT, &action, nullptr);
  ::sigaction(SIGTERM, &action, nullptr);
}

}  // namespace wellproof
