#pragma once
// A table of levels over time as text: lines of figures under a head that names each column and its unit, such as
// "t_min,s_m". Lines that begin with # are remarks. Comma, semicolon or tab stands between the columns.
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "contract/finding.h"
#include "fit/column_head.h"

namespace wellproof {

/// Units for columns whose name has none, as the user wrote them; empty: none.
struct ColumnUnits {
  std::string time;
  std::string level;
};

/// A line of figures, in SI; what is not in the table is left out. Columns count characters from 1.
struct LevelRow {
  bool complete = false;  // false: the time alone could be read
  int line = 0;
  double time_s = 0;
  int time_column = 0;
  std::string time_text;
  double level_m = 0;
  int level_column = 0;
  std::string level_text;
  std::optional<double> flow_m3_s;
  int flow_column = 0;
  std::string flow_text;
};

struct LevelTable {
  bool since_stop = false;
  ColumnKind level = ColumnKind::drawdown;  // drawdown, recovered or depth
  bool has_rate = false;
  std::vector<LevelRow> rows;
  Findings findings;
};

/// Reads it: the rows that can be read, and findings for what cannot. Whether the figures make sense is the reader's
/// matter.
LevelTable read_level_table(std::string_view text, std::string const& file, ColumnUnits const& units);

/// Leaves out all but the first few findings of each kind, and says how many.
Findings first_of_many(Findings findings, std::string const& file);

}  // namespace wellproof
