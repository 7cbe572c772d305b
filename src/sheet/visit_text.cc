#include <fmt/format.h>

#include "sheet/layout.h"
#include "sheet/visit_words.h"

namespace wellproof {
namespace {

constexpr std::string_view blank_line = "________";

std::string head(std::string_view title) {
  return heading(title, Paint(false));
}

std::string tick(TickLine const& line) {
  return block(line.head + ": " + line.says + (line.read ? " Read: ________" : ""), "  [ ] ", "      ");
}

std::string entries(VisitWords const& words) {
  Table table{
      {{"", false}, {"Value", false}, {"To enter", true}, {"", false}, {"Entered", false}, {"What, where", false}}, {}};
  for (auto const& line : words.entries) {
    table.rows.push_back({"[ ]", visible(line.label), visible(line.value), line.note, "_______", visible(line.where)});
  }
  return text(table, Paint(false));
}

std::string test_text(TestWords const& test, std::size_t number) {
  std::string out = "\n" + block(test.title, fmt::format("{:>3}  ", number), "     ");
  for (auto const& step : test.steps) {
    out += block(visible(step), "     ", "     ");
  }
  for (auto const& line : test.readings) {
    std::string const what = line.what + ", " + line.meter;
    constexpr std::size_t what_columns = 45;
    constexpr std::size_t band_columns = 19;
    auto const lines = wrapped(what, what_columns);
    for (std::size_t i = 0; i < lines.size(); ++i) {
      out += i == 0 ? "     " + left(lines[i], what_columns) + " " + left(line.band, band_columns) + " " +
                          std::string(blank_line) + "\n"
                    : "       " + lines[i] + "\n";
    }
  }
  for (auto const& back : test.put_back) {
    out += block(visible(back), "     [ ] ", "         ");
  }
  if (!test.after.empty()) {
    out += block(test.after, "     ", "     ");
  }
  return out;
}

}  // namespace

std::string visit_text(VisitSheet const& sheet) {
  auto const words = visit_words(sheet);
  std::string out = block("Sheet for the visit: " + visible(words.name), "", "  ");
  out += block(words.site, "", "  ");
  out += "\n" + block(words.verdict + ". " + words.verdict_says, "", "");
  out += head("Safety first");
  for (auto const& line : words.safety) {
    out += tick(line);
  }
  out += head("Before power");
  for (auto const& line : words.before_power) {
    out += tick(line);
  }
  out += head("Values to enter");
  out += block(visible(words.entries_from) + ".", "  ", "  ");
  out += entries(words);
  bool marked = false;
  for (auto const& line : words.entries) {
    marked = marked || !line.note.empty();
  }
  if (marked) {
    out += "  !  cannot be set well on this site, the plan says why;  =  given\n";
  }
  for (auto const& lacking : words.unguarded) {
    out += block("The drive has no " + visible(lacking), "  ", "    ");
  }
  out += head("Acceptance tests, in this order");
  for (std::size_t i = 0; i < words.tests.size(); ++i) {
    out += test_text(words.tests[i], i + 1);
  }
  out += "\n" + block(words.bands_say, "  ", "  ");
  out += head("Handed over");
  out += "  Name ________________________   Date ______________\n\n";
  out += "  Signature ___________________   Next visit ________\n";
  return out;
}

}  // namespace wellproof
