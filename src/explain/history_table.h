#pragma once
// A history as a table: the head says what each column holds.
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace wellproof {

enum class HistoryColumn { kind, when, days, hours, minutes, passed };

struct HistoryHead {
  char separator = ',';
  std::vector<HistoryColumn> columns;
};

/// The head of a table, if this line is one: kind (or stop, cause, fault); ago (or since, when, date, time, now); days,
/// hours, minutes. Columns with other names are passed over, if there is a kind and a time.
std::optional<HistoryHead> history_head(std::string_view line);

/// The kind and the time of a row, as a free line would say it.
std::pair<std::string, std::string> history_row(HistoryHead const& head, std::string_view line);

}  // namespace wellproof
