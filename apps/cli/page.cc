#include "cli/page.h"

#include <sys/stat.h>

#include <cstdint>
#include <cstdio>
#include <sstream>
#include <string>

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include "cli/book_place.h"
#include "cli/hand_over.h"
#include "cli/interrupt.h"
#include "door/commands.h"
#include "serve/page_server.h"

namespace wellproof {
namespace {

constexpr int usual_port = 8480;
constexpr int most_port = 65535;

struct PageArguments {
  int port = usual_port;
  std::string book;
};

Answer no_pass_phrase() {
  return refused({{{"", 0, 0}, "pass phrase", "none", "that of the book, which is locked", ""}});
}

Answer asked(std::string_view bytes, std::string const& book) {
  auto request = read_book_request(bytes);
  if (!request) {
    return refused(request.error());
  }
  request->book = book;
  request->who = login_name();
  request->at = now_utc();
  if (request->command == "add" && !folders_made(book)) {
    return {exit_code::machine, "", "wellproof: cannot make the folder of " + book + "\n", {}};
  }
  Surroundings with;
  with.read = [](std::string const&) { return std::optional<std::string>(); };
  with.write = [](std::string const&, std::string const&) { return std::optional<Answer>(no_pass_phrase()); };
  with.pass_phrase = [bytes](bool) -> Result<std::string> {
    auto const pass = pass_of(bytes);
    if (pass.empty()) {
      return tl::unexpected(no_pass_phrase().findings);
    }
    return pass;
  };
  return ask_book(*request, with);
}

/// The answer that ends the program, if the words do not ask to serve.
std::optional<Answer> read_words(int count, char const* const* words, PageArguments& into) {
  CLI::App app{"The whole job in a browser of this machine: http://127.0.0.1:PORT/, and nobody else's.",
               "wellproof page"};
  app.set_help_flag("-h,--help", "Say what the command takes");
  app.get_formatter()->column_width(30);
  app.add_option("--port", into.port, "Port of 127.0.0.1; 0 takes any that is free")
      ->check(CLI::Range(0, most_port))
      ->option_text(fmt::format("N  [{}]", usual_port));
  app.add_option("--book", into.book, "The book's file; else the one in your data folder")->option_text("FILE");
  try {
    app.parse(count - 1, words + 1);
  } catch (CLI::ParseError const& error) {
    if (error.get_exit_code() == static_cast<int>(CLI::ExitCodes::Success)) {
      std::ostringstream said;
      app.exit(error, said, said);
      return Answer{exit_code::fine, said.str(), "", {}};
    }
    return Answer{
        exit_code::bad_input, "", fmt::format("wellproof: {}\nSee: wellproof page --help\n", error.what()), {}};
  }
  if (page_assets().empty()) {
    return Answer{exit_code::machine,
                  "",
                  "wellproof: this program was built without the page. With Node 20 or later: scripts/page, and build\n"
                  "it again (docs/page.md).\n",
                  {}};
  }
  return std::nullopt;
}

}  // namespace

bool asks_for_page(int count, char const* const* words) {
  return count > 1 && std::string(words[1]) == "page";
}

int page_carried_out(int count, char const* const* words) {
  PageArguments arguments;
  if (auto const answer = read_words(count, words, arguments)) {
    return given(*answer, false);
  }
  auto const book = arguments.book.empty() ? book_of_the_user() : arguments.book;
  // A new book is for the eyes of its user.
  ::umask(0077);
  PageServer::Book clerk;
  if (!book.empty()) {
    clerk = [book](std::string_view bytes) { return asked(bytes, book); };
  }
  PageServer server(page_assets(), clerk);
  auto const port = server.bind(arguments.port);
  if (!port) {
    return given({exit_code::machine,
                  "",
                  fmt::format("wellproof: port {} of 127.0.0.1 is not to be had; another: --port N\n", arguments.port),
                  {}},
                 false);
  }
  end_cleanly_when_interrupted();
  fmt::print("http://127.0.0.1:{}/\nOnly browsers of this machine reach it. Ctrl-C ends it.\n", *port);
  std::fflush(stdout);
  server.listen();
  return exit_code::fine;
}

}  // namespace wellproof
