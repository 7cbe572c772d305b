#pragma once
// A pumping test with its result, as a sheet shows it: to a terminal, as JSON, as a page.
#include <string>
#include <vector>

#include "fit/fit_pumping_test.h"
#include "quantity/dimension.h"

namespace wellproof {

struct WellTest {
  PumpingTestFit fit;
  UnitSystem units = UnitSystem::us;
  std::string into;  // the site file that the result was written into; empty: none
};

std::string welltest_sheet(WellTest const& test, bool colour);
std::string welltest_json(WellTest const& test);
std::string welltest_report(WellTest const& test);

/// A row of the result: what it is, its value and the ends of its interval as texts, and how it came about.
struct TestResultLine {
  std::string name;
  std::string sign;  // "T"
  std::string value;
  std::string interval;
  std::string standing;
};
std::vector<TestResultLine> result_lines(WellTest const& test);

/// "TRANSMISSIVITY IS KNOWN" or "THE DATA CANNOT TELL".
std::string verdict_words(WellTest const& test);
/// What stands behind it, in figures.
std::string result_says(WellTest const& test);

/// What was pumped and read, in a sentence.
std::string test_says(WellTest const& test);

/// A record's place: "pumped well", "at 30 m".
std::string place_words(RecordFit const& record, UnitSystem units);

/// What holds for every pumping test.
std::vector<std::string> test_cautions();

}  // namespace wellproof
