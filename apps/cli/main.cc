// The program wellproof: words and files to a request, the answer to screen and files.
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <exception>
#include <filesystem>
#include <new>
#include <string>
#include <thread>

#include "cli/arguments.h"
#include "cli/ask.h"
#include "cli/book.h"
#include "cli/hand_over.h"
#include "cli/interrupt.h"
#include "cli/page.h"
#include "cli/progress.h"
#include "door/compared.h"
#include "door/door.h"

namespace wellproof {
namespace {

bool is_terminal(int descriptor) {
  return ::isatty(descriptor) != 0;
}

bool colour_wanted() {
  auto const* const none = std::getenv("NO_COLOR");  // NOLINT(concurrency-mt-unsafe): before any thread
  auto const* const kind = std::getenv("TERM");      // NOLINT(concurrency-mt-unsafe)
  bool const refused = (none != nullptr && *none != '\0') || (kind != nullptr && std::string(kind) == "dumb");
  return is_terminal(STDOUT_FILENO) && !refused;
}

/// Whether a file could be written there at all: known before a proof is computed, not after.
void look_ahead(std::string const& path, Answer& answer) {
  if (path.empty()) {
    return;
  }
  auto const folder = std::filesystem::path(path).parent_path();
  std::string const place = folder.empty() ? "." : folder.string();
  std::error_code error;
  bool const is_folder = std::filesystem::is_directory(path, error);
  if (is_folder || ::access(place.c_str(), W_OK | X_OK) != 0) {
    std::string const why =
        is_folder ? "it is a folder" : std::string(std::strerror(errno));  // NOLINT(concurrency-mt-unsafe)
    answer.err += "wellproof: cannot write " + path + ": " + why + "\n";
    answer.exit_code = exit_code::machine;
  }
}

/// The tables of a pumping test.
void read_levels(Arguments& arguments, Answer& answer) {
  auto& records = arguments.request.test.records;
  auto const add = [&](std::string const& path, std::string const& distance) {
    records.push_back({path, text_of(path, "a table of times and levels", answer), distance});
  };
  add(arguments.level_path, arguments.distance);
  for (auto const& observed : arguments.observed) {
    auto const at = observed.rfind('@');
    if (at == std::string::npos || at + 1 == observed.size()) {
      answer.err += "--observed: found \"" + observed + "\"; expected FILE@DISTANCE, as in b.csv@30m\n";
      answer.exit_code = exit_code::bad_input;
    } else {
      add(observed.substr(0, at), observed.substr(at + 1));
    }
  }
}

/// The two sets that are compared; one that is left out is what was derived, or else what people commonly enter.
void read_sets(Arguments& arguments, Answer& answer) {
  auto paths = arguments.set_paths;
  for (auto const word : {derived_set, common_practice_set}) {
    if (paths.size() < 2 && (paths.empty() || paths.front() != word)) {
      paths.emplace_back(word);
    }
  }
  for (auto const& path : paths) {
    bool const is_word = path == derived_set || path == common_practice_set;
    arguments.request.sets.push_back({path, is_word ? "" : text_of(path, "a settings file", answer)});
  }
}

int carried_out(int count, char const* const* words) {
  if (asks_for_book(count, words)) {
    return book_carried_out(count, words, colour_wanted());
  }
  if (asks_for_page(count, words)) {
    return page_carried_out(count, words);
  }
  auto arguments = read_arguments(count, words, std::thread::hardware_concurrency());
  if (arguments.done) {
    return given(arguments.answer, true);
  }
  auto& request = arguments.request;
  request.colour = colour_wanted();
  Answer unread;
  if (arguments.has_site) {
    request.site = {arguments.site_path, text_of(arguments.site_path, "a site file", unread)};
    if (unread.exit_code == exit_code::fine) {
      request.beside = files_beside(arguments.site_path, request.site.text);
    }
  }
  // Derived settings need no file: the word stands for what would be there without the option.
  if (!arguments.settings_path.empty() && !(request.command == "sheet" && arguments.settings_path == derived_set)) {
    request.settings = NamedText{arguments.settings_path, text_of(arguments.settings_path, "a settings file", unread)};
  }
  if (!arguments.card_path.empty()) {
    request.card = NamedText{arguments.card_path, text_of(arguments.card_path, "a drive card", unread)};
  }
  if (request.command == "compare") {
    read_sets(arguments, unread);
  }
  if (request.command == "fit") {
    request.readings = {arguments.readings_path, text_of(arguments.readings_path, "a file of readings", unread)};
  }
  if (request.command == "explain") {
    request.history = {arguments.history_path, text_of(arguments.history_path, "a list of stops", unread)};
    if (!arguments.readings_path.empty()) {
      request.readings = {arguments.readings_path, text_of(arguments.readings_path, "a file of readings", unread)};
    }
    request.now = request.now.empty() ? clock_text() : request.now;
  }
  if (request.command == "welltest") {
    read_levels(arguments, unread);
  }
  look_ahead(request.report, unread);
  look_ahead(request.csv, unread);
  look_ahead(request.settings_to, unread);
  look_ahead(request.into, unread);
  look_ahead(request.html, unread);
  look_ahead(request.text, unread);
  if (unread.exit_code != exit_code::fine) {
    return given(unread, true);
  }
  end_cleanly_when_interrupted();
  ProgressLine line(is_terminal(STDERR_FILENO) && !request.json);
  if (request.command == "explain" && arguments.ask) {
    return asked_on(
        request, [&](std::size_t done, std::size_t all) { line.tell(done, all); }, [&] { line.wipe(); });
  }
  Door const door([&](std::size_t done, std::size_t all) { line.tell(done, all); });
  auto const answer = door.ask(request_bytes(request));
  line.wipe();
  int const code = given(answer, request.command != "new");
  if (code == exit_code::fine && request.command == "new") {
    put(stdout, request.starter + ": written. Fill it in, then: wellproof check " + request.starter + "\n");
  }
  return code;
}

}  // namespace
}  // namespace wellproof

int main(int count, char** words) {
  try {
    return wellproof::carried_out(count, words);
  } catch (std::bad_alloc const&) {
    std::fputs("wellproof: out of memory\n", stderr);
  } catch (std::exception const& error) {
    std::fprintf(stderr, "wellproof: stopped by a fault of its own: %s\n", error.what());
  }
  return wellproof::exit_code::machine;
}
