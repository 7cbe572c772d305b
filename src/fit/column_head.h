#pragma once
// The head of a column in a table of levels: its name and unit, as in "t_min", "time (min)", "s [ft]", "q_m3_per_d".
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "quantity/dimension.h"

namespace wellproof {

/// What a column can hold.
enum class ColumnKind {
  time,          // since pumping began
  time_stopped,  // since pumping stopped
  drawdown,      // below the level at rest
  recovered,     // above the level at which pumping stopped
  depth,         // of the water, from the top of the casing
  rate           // pumped
};
bool is_time(ColumnKind kind);
bool is_level(ColumnKind kind);
Dimension dimension_of(ColumnKind kind);

/// A column as its head names it; factor 0: the head names no unit.
struct Head {
  ColumnKind kind = ColumnKind::time;
  double factor = 0;
  std::size_t index = 0;
};

/// What the head says; nothing where its name or its unit is not known.
std::optional<Head> head_of(std::string const& text);

/// What one of the unit is in SI: "min", "m3_per_d", "m3/d".
std::optional<double> factor_of(std::string unit, Dimension dimension);

/// The known name that the head's was probably meant to be, or empty.
std::string nearest_head_name(std::string const& text);

/// Without blanks and quotes around it.
std::string bare(std::string_view text);

}  // namespace wellproof
