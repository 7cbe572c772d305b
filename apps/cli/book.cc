#include "cli/book.h"

#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <set>

#include <fmt/format.h>

#include "book/archive.h"
#include "cli/book_arguments.h"
#include "cli/book_place.h"
#include "cli/files.h"
#include "cli/hand_over.h"
#include "cli/pass_phrase.h"

namespace wellproof {
namespace {

Answer bad_input(std::string place, std::string key, std::string found, std::string expected) {
  return {exit_code::bad_input,
          "",
          text(Finding{{std::move(place), 0, 0}, std::move(key), std::move(found), std::move(expected), ""}) + "\n",
          {}};
}

Answer machine(std::string const& says) {
  return {exit_code::machine, "", "wellproof: " + says + "\n", {}};
}

std::string reason() {
  return std::strerror(errno);  // NOLINT(concurrency-mt-unsafe): one thread
}

/// The texts of the files that an `add` names.
Answer read_texts(BookArguments& arguments) {
  Answer unread;
  auto& request = arguments.request;
  request.site = {arguments.site_path, text_of(arguments.site_path, "a site file", unread)};
  if (unread.exit_code == exit_code::fine) {
    request.beside = files_beside(arguments.site_path, request.site.text);
  }
  for (auto const& [kind, path] : arguments.paths) {
    if (kind == EntryKind::settings) {
      request.files.emplace_back(kind, NamedText{path, text_of(path, "a settings file", unread)});
      continue;
    }
    constexpr std::size_t most_bytes = std::size_t{64} << 20U;
    auto const read = read_file(path, most_bytes);
    if (!read) {
      auto const why = bad_input(path, "", read.error().why, fmt::format("a file of {}", word(kind)));
      unread.err += why.err;
      unread.exit_code = read.error().absent ? exit_code::bad_input : exit_code::machine;
    }
    request.files.emplace_back(kind, NamedText{path, read ? *read : ""});
  }
  return unread;
}

/// Whether an export may be written there: a folder that is new, empty, or has the index of an earlier one.
std::optional<Answer> no_place_for_export(std::string const& folder) {
  std::error_code error;
  auto const is = std::filesystem::status(folder, error);
  if (!std::filesystem::exists(is)) {
    return std::nullopt;
  }
  if (!std::filesystem::is_directory(is)) {
    return bad_input(folder, "", "a file", "a folder");
  }
  bool const empty = std::filesystem::is_empty(folder, error);
  if (!error && !empty && !std::filesystem::exists(folder + "/" + std::string(index_name), error)) {
    return bad_input(folder, "", "a folder with other files", "a new folder, an empty one, or an earlier export");
  }
  return std::nullopt;
}

std::optional<Answer> written_to(std::string const& path, std::string const& bytes, bool may_replace) {
  auto const written = write_file(path, bytes, may_replace);
  if (written) {
    return std::nullopt;
  }
  return written.error().exists ? bad_input(path, "", "a file", "a name that is free")
                                : machine("cannot write " + path + ": " + written.error().why);
}

std::optional<Answer> written_below(std::string const& folder, std::string const& name, std::string const& bytes) {
  std::string const path = folder + "/" + name;
  std::error_code error;
  std::filesystem::create_directories(std::filesystem::path(path).parent_path(), error);
  return error ? machine("cannot make the folder of " + path + ": " + error.message()) : written_to(path, bytes, true);
}

Surroundings surroundings(BookArguments const& arguments) {
  Surroundings with;
  with.read = [&](std::string const& name) -> std::optional<std::string> {
    constexpr std::size_t most_bytes = std::size_t{256} << 20U;
    auto read = read_file(arguments.folder + "/" + name, most_bytes);
    return read ? std::optional(std::move(*read)) : std::nullopt;
  };
  with.write = [&](std::string const& name, std::string const& bytes) {
    return arguments.folder.empty() ? written_to(name, bytes, false) : written_below(arguments.folder, name, bytes);
  };
  with.pass_phrase = [&](bool fresh) {
    return arguments.pass_path.empty() ? pass_phrase_asked(fresh) : pass_phrase_of(arguments.pass_path);
  };
  return with;
}

}  // namespace

bool asks_for_book(int count, char const* const* words) {
  for (int i = 1; i < count; ++i) {
    std::string const word = words[i];
    if (word.rfind('-', 0) != 0) {
      return word == "book";
    }
    i += word == "--units" ? 1 : 0;
  }
  return false;
}

int book_carried_out(int count, char const* const* words, bool colour) {
  auto arguments = read_book_arguments(count, words);
  if (arguments.done) {
    return given(arguments.answer, false);
  }
  auto& request = arguments.request;
  request.colour = colour;
  request.at = now_utc();
  request.who = request.who.empty() ? login_name() : request.who;
  bool const writes = std::set<std::string>{"add", "import", "lock"}.count(request.command) > 0;
  if (request.command == "add") {
    if (auto const unread = read_texts(arguments); unread.exit_code != exit_code::fine) {
      return given(unread, false);
    }
  }
  if (request.book.empty()) {
    request.book = book_of_the_user();
    if (request.book.empty()) {
      return given(bad_input("", "--book", "none, and no HOME to have a data folder in", "--book FILE"), false);
    }
    if (writes && !folders_made(request.book)) {
      return given(machine("cannot make the folder of " + request.book + ": " + reason()), false);
    }
  }
  if (writes) {
    // A new book is for the eyes of its user; SQLite by itself would let all read it.
    ::umask(0077);
  }
  if (request.command == "export") {
    if (auto const no_place = no_place_for_export(arguments.folder)) {
      return given(*no_place, false);
    }
  }
  request.target = arguments.folder.empty() ? request.target : arguments.folder;
  return given(ask_book(request, surroundings(arguments)), false);
}

}  // namespace wellproof
