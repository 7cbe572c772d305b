#include "cli/hand_over.h"

#include <algorithm>
#include <filesystem>

#include "cli/files.h"
#include "contract/finding.h"

namespace wellproof {
namespace {

void add_finding(Answer& answer, Place place, std::string key, std::string found, std::string expected) {
  answer.err += text(Finding{std::move(place), std::move(key), std::move(found), std::move(expected), ""}) + "\n";
  answer.exit_code = std::max(answer.exit_code, exit_code::bad_input);
}

}  // namespace

std::string text_of(std::string const& path, char const* what, Answer& answer) {
  auto const read = read_file(path);
  if (!read && read.error().absent) {
    add_finding(answer, {path, 0, 0}, path.empty() ? "SITE" : "", read.error().why, what);
    return "";
  }
  if (!read) {
    answer.err += "wellproof: cannot read " + path + ": " + read.error().why + "\n";
    answer.exit_code = exit_code::machine;
    return "";
  }
  if (int const line = first_line_not_utf8(*read); line > 0) {
    add_finding(answer, {path, line, 0}, "", "a byte that is not UTF-8", "a text in UTF-8");
  }
  return *read;
}

std::vector<Beside> files_beside(std::string const& site_path, std::string const& site_text) {
  std::vector<Beside> beside;
  auto const folder = std::filesystem::path(site_path).parent_path();
  for (auto const& name : files_named(site_text)) {
    if (auto const read = read_file((folder / name).string()); read && first_line_not_utf8(*read) == 0) {
      beside.push_back({name, *read});
    }
  }
  return beside;
}

bool put(std::FILE* to, std::string const& text) {
  return std::fwrite(text.data(), 1, text.size(), to) == text.size() && std::fflush(to) == 0;
}

int given(Answer const& answer, bool may_replace) {
  int code = answer.exit_code;
  std::string errors = answer.err;
  for (auto const& [name, text] : answer.files) {
    auto const written = write_file(name, text, may_replace);
    if (!written && written.error().exists) {
      errors += name + ": found a file; expected a name that is free\n";
      code = exit_code::bad_input;
    } else if (!written) {
      errors += "wellproof: cannot write " + name + ": " + written.error().why + "\n";
      code = exit_code::machine;
    }
  }
  put(stderr, errors);
  if (!put(stdout, answer.out)) {
    put(stderr, "wellproof: cannot write the answer\n");
    code = exit_code::machine;
  }
  return code;
}

}  // namespace wellproof
