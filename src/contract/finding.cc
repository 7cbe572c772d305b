#include "contract/finding.h"

#include <fmt/format.h>

namespace wellproof {
namespace {

// A person's file may hold anything; one finding stays one line whatever stands in it.
std::string on_one_line(std::string line) {
  for (char& character : line) {
    if (character == '\n' || character == '\r') {
      character = ' ';
    }
  }
  return line;
}

std::string where(Place const& place) {
  std::string at = place.file;
  if (place.line > 0) {
    at += at.empty() ? fmt::format("line {}", place.line) : fmt::format(":{}", place.line);
    if (place.column > 0) {
      at += fmt::format(":{}", place.column);
    }
  }
  return at;
}

void append(std::string& line, char const* separator, std::string const& part) {
  if (part.empty()) {
    return;
  }
  if (!line.empty()) {
    line += separator;
  }
  line += part;
}

}  // namespace

std::string text(Finding const& finding) {
  std::string line = where(finding.place);
  append(line, ": ", finding.key);
  std::string said;
  if (!finding.found.empty()) {
    said = "found " + finding.found;
  }
  if (!finding.expected.empty()) {
    append(said, "; ", "expected " + finding.expected);
  }
  if (!finding.nearest.empty()) {
    append(said, "; ", fmt::format("did you mean \"{}\"?", finding.nearest));
  }
  append(line, ": ", said);
  return on_one_line(line);
}

}  // namespace wellproof
