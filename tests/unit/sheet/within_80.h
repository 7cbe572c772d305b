#pragma once
// What every sheet for a terminal must keep to.
#include <sstream>
#include <string>

#include <gtest/gtest.h>

#include "sheet/layout.h"

namespace wellproof {

/// No line is wider than a terminal or ends in blanks.
inline void expect_within_80(std::string const& text) {
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    EXPECT_LE(columns(line), sheet_columns) << line;
    EXPECT_TRUE(line.empty() || line.back() != ' ') << line;
  }
}

}  // namespace wellproof
