#pragma once
// The words of the sheet for the visit, shared by its text and its pages.
#include <string>
#include <vector>

#include "sheet/visit_sheet.h"

namespace wellproof {

/// A line with a box to tick; read tells that a figure is to be written behind it.
struct TickLine {
  std::string head;
  std::string says;
  bool read = false;
};

/// A value to enter.
struct EntryLine {
  std::string label;
  std::string where;
  std::string value;
  std::string note;
};

/// A figure to read.
struct ReadLine {
  std::string what;
  std::string meter;
  std::string band;
};

struct TestWords {
  std::string title;
  std::vector<std::string> steps;
  std::vector<ReadLine> readings;
  std::vector<std::string> put_back;  // each with a box: what was changed for the test
  std::string after;                  // what a reading outside its band points to
};

struct VisitWords {
  std::string name;
  std::string site;
  std::string verdict;
  std::string verdict_says;
  std::vector<TickLine> safety;
  std::vector<TickLine> before_power;
  std::string entries_from;  // where the values come from
  std::vector<EntryLine> entries;
  std::vector<std::string> unguarded;  // what the drive does not have
  std::vector<TestWords> tests;
  std::string bands_say;
};

VisitWords visit_words(VisitSheet const& sheet);

/// The tests alone (visit_test_words.cc).
std::vector<TestWords> visit_test_words(VisitSheet const& sheet);

/// What the drive calls one of our settings; without a card our key.
std::string label_of(VisitSheet const& sheet, std::string_view key);
/// A setting's value as it is entered.
std::string entry_text(VisitSheet const& sheet, std::string_view key);

/// A figure as one reads it off a meter: pressures to a whole unit, amperes to a tenth, power in watts.
std::string meter_text(double value, Dimension dimension, UnitSystem units);
/// A band, rounded outwards to what its meter shows: "57.5 to 61 psi"; with only an upper end "at most 3 psi".
std::string band_text(VisitReading const& reading, UnitSystem units);

}  // namespace wellproof
