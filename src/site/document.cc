#include "site/document.h"

#include <algorithm>
#include <cstdint>
#include <optional>
#include <utility>

#include <fmt/format.h>

// The parser promises its compiler some things that a text can break (a header that begins with no letter). Neither an
// abort nor an optimisation may follow from that: without the promise its own error branch is taken.
#undef NDEBUG
#define TOML_ASSERT(expr) static_cast<void>(0)
#define TOML_EXCEPTIONS 0
#define TOML_ENABLE_FORMATTERS 0
#define TOML_MAX_NESTED_VALUES 16  // a site file nests twice
#include <toml++/toml.h>

#include "site/text_gate.h"

namespace wellproof {
namespace {

constexpr int most_syntax_findings = 20;

/// The lines of a text, counted from 1.
class Lines {
 public:
  explicit Lines(std::string_view text) {
    for (std::size_t at = 0; at <= text.size();) {
      auto const end = std::min(text.find('\n', at), text.size());
      lines_.push_back(text.substr(at, end - at));
      at = end + 1;
    }
  }

  std::string_view line(int number) const {
    if (number < 1 || static_cast<std::size_t>(number) > lines_.size()) {
      return {};
    }
    auto const whole = lines_[static_cast<std::size_t>(number) - 1];
    return whole.substr(0, whole.find('\r'));
  }

 private:
  std::vector<std::string_view> lines_;
};

std::string_view trimmed(std::string_view text) {
  auto const first = text.find_first_not_of(" \t\r\n");
  if (first == std::string_view::npos) {
    return {};
  }
  return text.substr(first, text.find_last_not_of(" \t\r\n") - first + 1);
}

Node converted(toml::node const& from, Lines const& lines, std::string key, toml::source_region const& key_source) {
  Node to;
  to.key = std::move(key);
  to.line = static_cast<int>(from.source().begin.line);
  to.column = static_cast<int>(from.source().begin.column);
  to.key_line = static_cast<int>(key_source.begin.line);
  to.key_column = static_cast<int>(key_source.begin.column);
  if (to.line == 0) {
    to.line = to.key_line;
    to.column = to.key_column;
  }
  if (auto const* table = from.as_table()) {
    to.kind = Node::Kind::table;
    to.text = "a table";
    for (auto const& [name, value] : *table) {
      to.items.push_back(converted(value, lines, std::string(name.str()), name.source()));
    }
    std::stable_sort(to.items.begin(), to.items.end(), [](Node const& a, Node const& b) {
      return std::pair(a.key_line, a.key_column) < std::pair(b.key_line, b.key_column);
    });
  } else if (auto const* array = from.as_array()) {
    to.kind = Node::Kind::array;
    to.text = "a list";
    for (auto const& value : *array) {
      to.items.push_back(converted(value, lines, "", value.source()));
    }
  } else if (auto const* string = from.as_string()) {
    to.kind = Node::Kind::text;
    to.text = string->get();
    bool const one_line = from.source().begin.line == from.source().end.line;
    auto const line = lines.line(to.line);
    to.text_column = one_line && line.find("\"\"\"") == line.npos && line.find("'''") == line.npos ? to.column + 1 : 0;
  } else if (from.is_number()) {
    to.kind = Node::Kind::number;
    to.number = from.is_integer() ? static_cast<double>(from.as_integer()->get()) : from.as_floating_point()->get();
    to.text = fmt::format("{}", to.number);
  } else if (auto const* boolean = from.as_boolean()) {
    to.kind = Node::Kind::boolean;
    to.text = boolean->get() ? "true" : "false";
  } else {
    to.kind = Node::Kind::date;
    to.text = "a date or time";
  }
  return to;
}

/// The parser's own sentence, split into what stands there and what would be right.
Finding spelling_finding(toml::parse_error const& error, Lines const& lines, std::string_view file) {
  Finding finding;
  finding.place = {std::string(file), static_cast<int>(error.source().begin.line),
                   static_cast<int>(error.source().begin.column)};
  std::string_view said = error.description();
  if (auto const colon = said.find(": "); said.substr(0, 19) == "Error while parsing" && colon != said.npos) {
    said.remove_prefix(colon + 2);
  }
  auto const line = lines.line(finding.place.line);
  auto const equals = line.find('=');
  auto const saw = said.find(", saw ");
  if (said.substr(0, 15) == "cannot redefine") {
    finding.found = fmt::format("\"{}\" a second time", trimmed(line.substr(0, equals)));
    finding.expected = "each table and each key once";
  } else if (said.find("maximum nested") != said.npos) {
    finding.found = "lists or tables nested very deep";
    finding.expected = "key = \"value\"";
  } else if (said.substr(0, 9) == "expected " && saw != said.npos) {
    finding.found = said.substr(saw + 6);
    finding.expected = said.substr(9, saw - 9);
    bool const bare = equals != line.npos && finding.expected == "a comment or whitespace";
    if (auto const value = bare ? trimmed(line.substr(equals + 1)) : std::string_view{};
        !value.empty() && value.front() != '"' && value.front() != '\'') {
      finding.found = std::string(value.substr(0, value.find('#')));
      finding.found = std::string(trimmed(finding.found));
      finding.expected = fmt::format("quotes around it: \"{}\"", finding.found);
    }
  } else if (said.find("unescaped control characters") != said.npos) {
    finding.found = "the end of the line inside a text";
    finding.expected = "a closing quote";
  } else {
    finding.found = said;
    finding.expected = "key = \"value\"";
  }
  return finding;
}

/// Blanks a line in place, keeping every other line's number.
void blank_line(std::string& text, int line) {
  std::size_t at = 0;
  for (int i = 1; i < line; ++i) {
    at = text.find('\n', at);
    if (at == std::string::npos) {
      return;
    }
    ++at;
  }
  for (; at < text.size() && text[at] != '\n'; ++at) {
    text[at] = ' ';
  }
}

/// The table that a line belongs to: the last header above it. Empty at the top.
std::string table_of(Lines const& lines, int line) {
  for (int i = line - 1; i > 0; --i) {
    auto header = trimmed(lines.line(i));
    if (!header.empty() && header.front() == '[') {
      header = header.substr(std::min(header.find_first_not_of('['), header.size()));
      return std::string(trimmed(header.substr(0, header.find(']'))));
    }
  }
  return {};
}

}  // namespace

Node const* Node::item(std::string_view wanted) const {
  for (auto const& one : items) {
    if (one.key == wanted) {
      return &one;
    }
  }
  return nullptr;
}

std::string in_words(Node const& node) {
  switch (node.kind) {
    case Node::Kind::text:
      return '"' + node.text + '"';
    case Node::Kind::number:
      return "the bare number " + node.text;
    default:
      return node.text;
  }
}

Document read_document(std::string_view text, std::string_view file) {
  Document document;
  if (auto stopper = stopping_finding(text, file)) {
    document.findings.push_back(std::move(*stopper));
    document.complete = false;
    return document;
  }
  std::string left(text);
  for (int tries = 0; tries < most_syntax_findings; ++tries) {
    if (tries > 0 && stopping_finding(left, file)) {
      break;  // a line was left out in which a text began that goes on: what follows is not what it was
    }
    auto const parsed = toml::parse(std::string_view(left), file);
    Lines const lines(left);
    if (parsed.succeeded()) {
      document.root = converted(parsed.table(), lines, "", parsed.table().source());
      return document;
    }
    auto finding = spelling_finding(parsed.error(), lines, file);
    auto const line = std::string(trimmed(lines.line(finding.place.line)));
    auto const equals = line.find('=');
    bool const simple = !line.empty() && line.front() != '[' && (equals != line.npos || finding.expected == "'='");
    if (simple) {
      auto const table = table_of(lines, finding.place.line);
      finding.key = (table.empty() ? "" : table + '.') + std::string(trimmed(std::string_view(line).substr(0, equals)));
      document.skipped.push_back(finding.key);
    }
    int const at = finding.place.line;
    bool const again = finding.found.find("a second time") != std::string::npos;
    document.findings.push_back(std::move(finding));
    if (!simple && !(again && line.substr(0, 1) == "[" && line.substr(0, 2) != "[[")) {
      document.complete = false;  // a broken header or list: what follows it would be taken for something else
      return document;
    }
    blank_line(left, at);
  }
  document.complete = false;
  return document;
}

}  // namespace wellproof
