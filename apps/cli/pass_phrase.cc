#include "cli/pass_phrase.h"

#include <fcntl.h>
#include <termios.h>
#include <unistd.h>

#include <array>
#include <csignal>
#include <cstddef>
#include <optional>

#include "cli/files.h"

namespace wellproof {
namespace {

constexpr std::size_t longest = 1024;

Findings finding(std::string found, std::string expected) {
  return {{{"", 0, 0}, "pass phrase", std::move(found), std::move(expected), ""}};
}

/// A line without its end, byte by byte, so that what follows it is left to others.
std::optional<std::string> line_from(int descriptor) {
  std::string line;
  char sign = 0;
  while (line.size() < longest) {
    if (::read(descriptor, &sign, 1) != 1) {
      return line.empty() ? std::nullopt : std::optional(line);
    }
    if (sign == '\n') {
      break;
    }
    line += sign;
  }
  if (!line.empty() && line.back() == '\r') {
    line.pop_back();
  }
  return line;
}

// What a signal has to know to give the terminal its voice back before the program ends.
constexpr std::array<int, 4> ends_by{SIGINT, SIGTERM, SIGHUP, SIGQUIT};
int silenced_terminal = -1;                                  // NOLINT: a signal has no other way to it
termios voice_before{};                                      // NOLINT
std::array<struct sigaction, ends_by.size()> ends_before{};  // NOLINT

/// Only what a signal may call: then the signal takes the way that it had before.
void give_voice_back(int signal) {
  ::tcsetattr(silenced_terminal, TCSANOW, &voice_before);
  for (std::size_t i = 0; i < ends_by.size(); ++i) {
    ::sigaction(ends_by[i], &ends_before[i], nullptr);
  }
  [[maybe_unused]] auto const raised = ::raise(signal);
}

/// The terminal of the process, silent while it lives; one at a time.
class SilentTerminal {
 public:
  SilentTerminal() : terminal_(::open("/dev/tty", O_RDWR | O_CLOEXEC)) {
    if (terminal_ >= 0 && ::tcgetattr(terminal_, &before_) == 0) {
      termios silent = before_;
      silent.c_lflag &= ~static_cast<tcflag_t>(ECHO);
      silent.c_lflag |= static_cast<tcflag_t>(ECHONL);
      listen();
      ready_ = ::tcsetattr(terminal_, TCSAFLUSH, &silent) == 0;
    }
  }
  SilentTerminal(SilentTerminal const&) = delete;
  SilentTerminal(SilentTerminal&&) = delete;
  SilentTerminal& operator=(SilentTerminal const&) = delete;
  SilentTerminal& operator=(SilentTerminal&&) = delete;
  ~SilentTerminal() {
    if (ready_) {
      ::tcsetattr(terminal_, TCSAFLUSH, &before_);
    }
    if (listening_) {
      for (std::size_t i = 0; i < ends_by.size(); ++i) {
        ::sigaction(ends_by[i], &ends_before[i], nullptr);
      }
    }
    if (terminal_ >= 0) {
      ::close(terminal_);
    }
  }

  bool ready() const { return ready_; }
  std::optional<std::string> answer_to(std::string const& question) const {
    return ::write(terminal_, question.data(), question.size()) < 0 ? std::nullopt : line_from(terminal_);
  }

 private:
  void listen() {
    silenced_terminal = terminal_;
    voice_before = before_;
    struct sigaction action {};
    action.sa_handler = give_voice_back;
    ::sigemptyset(&action.sa_mask);
    for (std::size_t i = 0; i < ends_by.size(); ++i) {
      ::sigaction(ends_by[i], &action, &ends_before[i]);
    }
    listening_ = true;
  }

  int terminal_;
  bool ready_ = false;
  bool listening_ = false;
  termios before_{};
};

}  // namespace

Result<std::string> pass_phrase_of(std::string const& path) {
  if (path == "-") {
    auto line = line_from(STDIN_FILENO);
    return line ? Result<std::string>(std::move(*line))
                : tl::unexpected(finding("nothing on standard input", "a line with the pass phrase"));
  }
  auto const read = read_file(path, longest);
  if (!read) {
    auto wrong = finding(read.error().why, "a file with the pass phrase in its first line");
    wrong.front().place.file = path;
    return tl::unexpected(wrong);
  }
  auto const end = read->find_first_of("\r\n");
  return read->substr(0, end);
}

Result<std::string> pass_phrase_asked(bool fresh) {
  SilentTerminal const terminal;
  if (!terminal.ready()) {
    return tl::unexpected(finding("no terminal to ask at", "--pass FILE, with the phrase in the file's first line"));
  }
  auto phrase = terminal.answer_to(fresh ? "New pass phrase of the book: " : "Pass phrase of the book: ");
  if (fresh && phrase && terminal.answer_to("Once more: ") != phrase) {
    return tl::unexpected(finding("two that differ", "the same one twice"));
  }
  return phrase ? Result<std::string>(std::move(*phrase)) : tl::unexpected(finding("none", "a line"));
}

}  // namespace wellproof
